/** Trees by any of their names, one slip of spelling repaired. Names are common practice, no source. */
import { Speller } from "./spelling.ts";
import { fold, isWord, scan, wordAt, type Span, type Token } from "./tokens.ts";

export interface SpeciesName {
  readonly id: string;
  readonly names: readonly string[];
}

export interface SpeciesFound {
  readonly id: string;
  /** the words it was read from */
  readonly words: string;
  readonly at: Span;
  readonly repaired: boolean;
  /** the word has another everyday sense ("ash", "box", "beach") and nothing beside it says wood */
  readonly weak: boolean;
}

const names = (id: string, others: string): SpeciesName => ({ id,
  names: [id, ...others.split(" ").filter(Boolean).map((name) => name.replaceAll("_", " "))] });

/** Stands in until a list made from the knowledge is given. */
export const COMMON_SPECIES: readonly SpeciesName[] = [
  names("birch", "koivu bjork björk bjørk birke bouleau betulla abedul brzoza береза"),
    names("oak", "eiche ek tammi chene chêne quercia roble dab dąb дуб"),
  names("beech", "buche rotbuche pyokki bok hetre hêtre faggio haya buk бук beach"),
    names("ash", "esche saarni frene frêne frassino fresno jesion ясень"),
  names("hornbeam", "hainbuche charme carpino grab граб"), names("maple", "ahorn vaahtera lonn lönn erable érable acero arce klon клен"),
    names("sycamore", "sycamore_maple"),
  names("alder", "erle leppa leppä aulne ontano aliso olcha olsza ольха"),
    names("aspen", "haapa asp espe osika осина quaking_aspen trembling_aspen"),
  names("poplar", "pappel peuplier pioppo chopo topola тополь cottonwood"),
    names("willow", "weide paju salix saule salice sauce wierzba ива sallow"),
  names("elm", "ulme jalava alm orme olmo wiaz вяз"), names("lime", "linde linden lehmus tilleul tiglio tilo lipa липа basswood"),
    names("black locust", "robinia robinie acacia robinier akacja false_acacia locust"),
  names("sweet chestnut", "edelkastanie kastanie chestnut chataignier châtaignier castagno castano"),
    names("horse chestnut", "rosskastanie conker"),
  names("cherry", "kirsche wild_cherry kirsikka merisier ciliegio cerezo czeresnia вишня"),
    names("apple", "apfel apple_wood applewood omenapuu pommier melo manzano jablon яблоня"),
  names("pear", "birne pearwood poirier pero peral grusza"), names("plum", "pflaume prunier susino"),
    names("walnut", "nussbaum noyer noce nogal orzech"), names("hazel", "hasel noisetier nocciolo avellano leszczyna"),
  names("rowan", "eberesche pihlaja mountain_ash"), names("hawthorn", "weissdorn"), names("holly", ""),
    names("box", "boxwood buchsbaum buis"), names("olive", "olivier ulivo olivo"),
  names("spruce", "fichte kuusi gran epicea épicéa abete_rosso picea swierk świerk ель norway_spruce whitewood"),
    names("pine", "kiefer fohre föhre manty mänty fura tall pin_sylvestre pino sosna сосна scots_pine scotch_pine redwood_pine radiata"),
  names("fir", "tanne weisstanne jodla пихта silver_fir"), names("larch",
    "larche lärche lehtikuusi lark lärk meleze mélèze larice alerce modrzew лиственница tamarack"),
    names("douglas fir", "douglas douglasie doug_fir oregon"),
  names("hemlock", "tsuga"), names("cedar", "red_cedar redcedar zeder cedre cedro cedr"), names("cypress", "macrocarpa zypresse"),
    names("hickory", "shagbark"), names("honey locust", "honeylocust"),
  names("osage orange", "hedge_apple hedgewood"), names("mesquite", ""), names("madrone", "madrona"),
    names("eucalyptus", "gum bluegum blue_gum eucalypt eukalyptus"), names("red gum", "river_red_gum redgum"),
  names("ironbark", "red_ironbark"), names("jarrah", ""), names("yellow box", "yellowbox"), names("manuka", "mānuka"),
    names("kanuka", "kānuka"), names("wattle", "black_wattle"),
  names("red oak", "northern_red_oak"), names("white oak", ""), names("sugar maple", "rock_maple hard_maple"),
    names("red maple", "soft_maple"), names("yellow birch", ""), names("paper birch", "white_birch"),
  names("white ash", ""), names("yew", "eibe tasso"), names("juniper", "wacholder kataja"),
    names("softwood", "soft_wood nadelholz conifer"), names("hardwood", "hard_wood laubholz lehtipuu"),
];

/** Names worth a repair: the English ones people mistype. A slip of a word of eight languages would find trees everywhere. */
const REPAIRED = new Set([
  "birch", "beech", "hornbeam", "maple", "sycamore", "alder", "aspen", "poplar", "willow", "locust", "robinia", "chestnut", "cherry",
  "apple", "walnut", "hazel", "rowan", "hawthorn", "holly", "olive", "spruce", "larch", "tamarack", "hemlock", "cedar", "cypress",
  "hickory", "mesquite", "madrone", "eucalyptus", "ironbark", "jarrah", "manuka", "kanuka", "wattle", "juniper", "softwood", "hardwood",
  "linden", "cottonwood", "basswood", "macrocarpa",
]);

/** Everyday words one letter from a tree. */
const NO_SLIPS = [
  "bench", "birth", "older", "elder", "alter", "adder", "popular", "pillow", "billow", "march", "lurch", "larger", "haze", "ample",
    "apply", "applied", "staple", "maples", "cellar",
  "fire", "fires", "pinch", "bitch", "bunch", "beach", "batch", "leech", "breech", "pines", "point", "oats", "peach", "sherry", "merry",
    "berry", "carry", "wallow", "locus", "focus", "aspect",
  "olives", "holy", "hollow", "jolly", "plumb", "lump", "lines", "limes", "timer", "douglas", "oregon", "orange", "hazard", "hassle",
    "walnut", "bark", "large", "latch", "lark", "cheery", "cheer",
  "spruced", "sprue", "sauce", "tally", "tall", "taller", "grand", "grant", "grade", "sosna", "linen", "linden", "linked", "carpal",
    "charm", "charms", "charming", "pinot", "weird", "booked", "ceder", "crack", "cracks",
];

/** Names that mean something else as well: taken only beside a word of wood, or in a record that expects a tree. */
const TWO_SENSES = new Set(["ash", "box", "lime", "beach", "apple", "pear", "plum", "olive", "orange", "gum", "oregon", "holly", "hazel",
  "charme", "sauce", "bok", "ek", "gran", "tall", "asp", "alm", "dab", "buk", "weide", "linde", "lark", "hedge", "grab", "pero", "tasso",
  "melo", "acacia", "pino", "cherry", "fura", "klon", "lipa", "haya", "arce", "lehmus", "birne"]);
/** Beside "ash" these speak of what a fire leaves. */
const ASH_LEFT = new Set([
  "empty", "emptied", "emptying", "remove", "removal", "removing", "take", "taking", "out", "bin", "bucket", "drawer", "door", "pan",
    "pit", "box", "vacuum", "layer", "fly", "hot", "cold", "grey", "wood", "fine", "bed",
  "clean", "cleaning", "full", "compost", "garden", "dump", "shovel", "lot", "much", "heap", "pile", "port", "dust", "cm",
]);
const WOOD_WORDS = new Set(["wood", "logs", "log", "splits", "split", "rounds", "firewood", "tree", "trees", "chunks", "stack", "stacked",
  "pieces", "cordwood", "billets", "sticks", "kindling", "kg", "lb", "lbs", "kilos", "pounds", "cord", "cords", "m3"]);
const COLOURS = new Set(["white", "green", "black", "european", "mountain", "seasoned", "dry", "split"]);

const SIBILANT_PLURAL = /(?:ch|sh|x)es$/;

export interface SpeciesReader {
  readonly list: readonly SpeciesName[];
  readonly read: (tokens: readonly Token[]) => (SpeciesFound & { readonly from: number; readonly to: number })[];
}

/** Makes a reader for a list of trees; `readSpecies` keeps one for each list it is given. */
export function speciesReader(list: readonly SpeciesName[]): SpeciesReader {
  const single: [string, string][] = [];
  const many = new Map<string, string>();
  let longest = 1;
  for (const { id, names: all } of list) {
    for (const name of all) {
      const words = name.split(/[ -]/).map(fold).filter(Boolean);
      longest = Math.max(longest, words.length);
      if (words.length === 1) single.push([words[0] as string, id]);
      else many.set(words.join(" "), id);
    }
  }
  const speller = new Speller(single, { from: 5, never: NO_SLIPS, repaired: REPAIRED });
  const known = (word: string): { id: string; repaired: boolean } | null => {
    const found = speller.find(word);
    if (found) return { id: found.value, repaired: found.repaired };
    const stem = SIBILANT_PLURAL.test(word) && speller.exact(word.slice(0, -2)) !== undefined ? word.slice(0, -2) : word.endsWith("s")
      ? word.slice(0, -1) : "";
    const id = stem.length > 2 ? speller.exact(stem) : undefined;
    return id === undefined ? null : { id, repaired: false };
  };
  const read: SpeciesReader["read"] = (tokens) => {
    const out: (SpeciesFound & { from: number; to: number })[] = [];
    for (let i = 0; i < tokens.length; i += 1) {
      if (tokens[i]?.kind !== "word") continue;
      const hit = phraseAt(tokens, i, many, longest) ?? singleAt(tokens, i, known);
      if (!hit) continue;
      const first = tokens[i] as Token;
      const last = tokens[hit.to - 1] as Token;
      const word = wordAt(first);
      const weak = hit.to === i + 1 && (TWO_SENSES.has(word) || TWO_SENSES.has(word.replace(/s$/, ""))) && !saysWood(tokens, i);
      const words = tokens.slice(i, hit.to).map(wordAt).filter(Boolean).join(" ");
      out.push({ id: hit.id, words, at: [first.at[0], last.at[1]], repaired: hit.repaired, weak, from: i, to: hit.to });
      i = hit.to - 1;
    }
    return out;
  };
  return { list, read };
}

function phraseAt(tokens: readonly Token[], i: number, many: ReadonlyMap<string, string>,
  longest: number): { id: string; repaired: boolean; to: number } | null {
  let phrase = wordAt(tokens[i]);
  let best: { id: string; repaired: boolean; to: number } | null = null;
  let at = i + 1;
  for (let n = 1; n < longest; n += 1) {
    if (tokens[at]?.kind === "sign" && (tokens[at] as { sign: string }).sign === "-") at += 1;
    const word = wordAt(tokens[at]);
    if (!word) break;
    phrase += ` ${word}`;
    at += 1;
    const id = many.get(phrase) ?? (phrase.endsWith("s") ? many.get(phrase.slice(0, -1)) : undefined);
    if (id !== undefined) best = { id, repaired: false, to: at };
  }
  return best;
}

function singleAt(tokens: readonly Token[], i: number, known: (word: string) =>
  { id: string; repaired: boolean } | null): { id: string; repaired: boolean; to: number } | null {
  const word = wordAt(tokens[i]);
  if (word.length < 2) return null;
  const hit = known(word);
  if (!hit) return null;
  if (word === "ash" || word === "ashes" || word === "ashs") {
    for (let n = i - 4; n <= i + 3; n += 1) {
      if (n === i || !ASH_LEFT.has(wordAt(tokens[n]))) continue;
      const touching = n === i + 1 && isWord(tokens[n], "wood");
      if (!touching) return null;
    }
    if (word !== "ash") return null;
  }
  return { ...hit, to: i + 1 };
}

const saysWood = (tokens: readonly Token[], i: number): boolean =>
  WOOD_WORDS.has(wordAt(tokens[i + 1])) || COLOURS.has(wordAt(tokens[i - 1])) || WOOD_WORDS.has(wordAt(tokens[i - 1])) ||
  (isWord(tokens[i - 1], "of") && WOOD_WORDS.has(wordAt(tokens[i - 2])));

const readers = new WeakMap<readonly SpeciesName[], SpeciesReader>();
export function readerFor(list: readonly SpeciesName[]): SpeciesReader {
  let reader = readers.get(list);
  if (!reader) {
    reader = speciesReader(list);
    readers.set(list, reader);
  }
  return reader;
}

/** Every tree named in a text, in order. */
export const readSpecies = (text: string, list: readonly SpeciesName[] = COMMON_SPECIES): SpeciesFound[] =>
  readerFor(list).read(scan(text)).map(({ from: _from, to: _to, ...found }) => found);

/** The list from the knowledge of trees: each under its own name, bare names under themselves. */
export function speciesNames(knowledge: {
  readonly short_names?: Readonly<Record<string, string>>;
  readonly species: readonly { readonly botanical: string; readonly name: string; readonly also?: Readonly<Record<string,
    readonly string[]>> }[];
}): SpeciesName[] {
  const short = Object.entries(knowledge.short_names ?? {});
  return [
    ...short.map(([id]) => ({ id, names: [id] })),
    ...knowledge.species.map(({ botanical, name, also }) => ({ id: name, names: [name, botanical, ...Object.values(also ?? {}).flat()] })),
  ];
}
