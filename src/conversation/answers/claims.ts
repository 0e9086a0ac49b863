/** A reply cut into clauses, each word of which is affirmed or denied: "no fan, hood off, but the dryer ran" affirms the dryer alone. */
import { stem } from "../routing/stem.ts";
import { scan, type Token } from "../reading/tokens.ts";

export interface Claim {
  readonly word: string;
  readonly stem: string;
  readonly denied: boolean;
}
export interface Clause {
  readonly claims: readonly Claim[];
  /** it takes back or narrows what went before: "..., but ..." */
  readonly turns: boolean;
  readonly text: string;
}

const set = (words: string): ReadonlySet<string> => new Set(words.split(" "));
/** deny what comes after them in their clause */
const NEGATORS = set(
  "no not never none nobody nothing neither nor without cannot cant dont doesnt didnt isnt arent wasnt werent wont wouldnt couldnt hasnt havent hadnt aint noone nowhere nah nope nil zero " +
  "nein nicht nie niemals niemand niemandem nichts ohne kein keine keinen keiner keinem keins keinerlei weder",
);
const TURNS = set("but except however though although yet aber jedoch ausser allerdings obwohl");
/** a no that stands alone before what a person says of people: "no we feel dizzy" affirms the dizziness */
const PLAIN_NO = set("no nope nah nein");
const PEOPLE = set("i we he she they it im its were hes shes theyre my our wife husband kids everyone everybody both all one wir ich er sie es alle");
const JOINTS = set("and then so because since while when und dann weil da denn");
/** what runs or sounds, and how it is said to be still */
const DEVICES = set(
  "alarm alarms detector detectors sensor meter monitor fan fans hood hoods dryer dryers ventilation extractor extractors mvhr pump heating radiators radiator boiler " +
  "melder comelder warner haube abzugshaube dunstabzug trockner luftung abluft ventilator heizung heizkorper warmepumpe",
);
const STILL = set("off quiet silent zero green dead fine ok okay normal clear idle unplugged aus still stumm ruhig null grun normal ab");
const GOES = set("go goes going went gone set gehen geht ging losgegangen los");
const ALARMS = set("alarm alarms detector detectors sensor meter monitor melder comelder warner");

/** Words that say next to nothing beside others; kept where a whole reply is made of them. */
export const SLIGHT = set(
  "a an the of it its is are was were be been being i we he she they you my our your his her their this that these those " +
  "have has had do does did will would can could get gets got ive im were its thats theres weve oh well um hm yes yeah ja " +
  "der die das den dem des ein eine einen einem einer ist sind war waren es er sie wir ich ihr mein meine unser unsere hat haben wird",
);

/** "rain or no rain", "with or without a fire": no matter which */
const EITHER_WAY = /\b(\p{L}+) or (?:no|not) \1\b|\bwith or without (?:an? |the )?\p{L}+|\b(\p{L}+) oder kein\w* \2\b/giu;
/** said last, they deny what stands before them: "on embers nothing" */
const LAST = set("not nothing none no never nicht nichts keine keins");
const CUTS = new Set([",", ".", ";", "!", "?", "–", "…", ":", "(", ")", "\n"]);

export function clausesOf(text: string): Clause[] {
  const tokens = scan(text.slice(0, 2000).replace(EITHER_WAY, " "));
  const out: Clause[] = [];
  let words: string[] = [];
  let from = 0;
  let turns = false;
  let deniedBefore: Opens = false;
  const close = (to: number): void => {
    if (words.length > 0) {
      const { claims, opensDenied } = judged(words, deniedBefore);
      out.push({ claims, turns, text: text.slice(from, to) });
      deniedBefore = opensDenied;
    }
    words = [];
    turns = false;
    from = to;
  };
  for (const [i, token] of tokens.entries()) {
    if (token.kind === "sign") {
      if (CUTS.has(token.sign) || (token.sign === "-" && token.gap && tokens[i + 1]?.gap === true)) close(token.at[0]);
      continue;
    }
    const word = token.kind === "word" ? token.word : figureWord(token);
    if (PLAIN_NO.has(word) && PEOPLE.has(wordOf(tokens[i + 1])) && !(word === "no" && wordOf(tokens[i + 1]) === "one")) {
      words.push(word);
      close(token.at[1]);
      deniedBefore = false;
      continue;
    }
    if (TURNS.has(word) || ((word === "just" || word === "only") && PLAIN_NO.has(words.at(-1) ?? ""))) {
      close(token.at[0]);
      turns = true;
      deniedBefore = false;
      continue;
    }
    words.push(word);
  }
  close(text.length);
  return out;
}

/** whether a denial reaches into what follows; only behind "weder" does "noch" deny, elsewhere it is "still" */
type Opens = false | "denied" | "neither";

const wordOf = (token: Token | undefined): string => (token?.kind === "word" ? token.word : "");
const figureWord = (token: Token): string => (token.kind === "number" ? String(token.value) : "");

/**
 * "no smoke, smell or soot": a short further part with "or" in it is still under the denial; an "and" ends it. The joint words themselves
 * are left out, but for "since", by which people say when.
 */
function judged(words: readonly string[], before: Opens): { claims: Claim[]; opensDenied: Opens } {
  const parts: string[][] = [[]];
  for (const word of words) {
    if (JOINTS.has(word) && (parts.at(-1)?.length ?? 0) > 1) parts.push(word === "since" ? [word] : []);
    else if (!JOINTS.has(word) || word === "since") parts.at(-1)?.push(word);
  }
  let open = before;
  const claims = parts.flatMap((part) => {
    const one = judgedPart(part, open);
    open = one.opensDenied;
    return one.claims;
  });
  return { claims, opensDenied: open };
}
function judgedPart(words: readonly string[], before: Opens): { claims: Claim[]; opensDenied: Opens } {
  let denying = before !== false && words.length <= 5 && words.some((word) => word === "or" || word === "nor" || word === "oder" || (before === "neither" && word === "noch"));
  const out = fireOut(words);
  const quiet = stillDevice(words) || out === "out" || goneGerman(words) || (out !== "burns" && words.some((word) => word === "nicht")) || (words.length > 1 && words.length <= 6 && LAST.has(words.at(-1) ?? ""));
  const not = words.indexOf("nicht");
  let opens: Opens = denying && before;
  const claims = words.map((word, i): Claim => {
    const root = stem(word);
    if (NEGATORS.has(word) && !(word === "not" && words[i + 1] === "only") && !(word === "no" && (words[i + 1] === "longer" || words[i + 1] === "doubt"))) {
      denying = true;
      opens = word === "weder" ? "neither" : (opens || "denied");
      return { word, stem: root, denied: false };
    }
    return { word, stem: root, denied: (denying && !(out === "burns" && FIRES.has(word))) || (quiet && !(i < not && SPANS.has(word))) };
  });
  return { claims, opensDenied: opens };
}

/** "Feuer ist aus" denies the fire, "noch nicht aus" affirms it; German alone. */
function fireOut(words: readonly string[]): "out" | "burns" | null {
  if (!words.some((word) => FIRES.has(word)) || !words.some((word) => OUT.has(word))) return null;
  return words.some((word) => NEGATORS.has(word) || DOUBTS_OUT.has(word)) ? "burns" : "out";
}
const FIRES = set("feuer flammen glut");
const OUT = set("aus erloschen ausgegangen");
const DOUBTS_OUT = set("fast beinahe bald gleich halb kaum vielleicht wohl");

/** "Glut ist keine mehr da", "Flammen sehe ich keine" */
const goneGerman = (words: readonly string[]): boolean =>
  words.some((word, i) => i > 0 && KEINE.has(word) && (i === words.length - 1 || words[i + 1] === "mehr" || words[i + 1] === "da"));
/** how long something was not done is affirmed: "den ganzen Sommer nicht geheizt" */
const SPANS = set("seit ganzen ganze lange langem sommer winter herbst fruhjahr saison woche wochen monat monate monaten jahr jahre jahren tage tagen");
const KEINE = set("keine keinen keiner keins");

/** "hood off", "alarm quiet", "CO alarm 0"; an alarm that "went off" sounded, though. */
function stillDevice(words: readonly string[]): boolean {
  if (!words.some((word) => DEVICES.has(word))) return false;
  return words.some((word, i) => {
    if (word === "0") return true;
    // English "still on" is no stillness; German "ist still" ends its clause
    if (!STILL.has(word) || (word === "still" && i < words.length - 1)) return false;
    return !((word === "off" || word === "los") && words.some((one) => ALARMS.has(one)) && words.slice(Math.max(0, i - 2), i).some((one) => GOES.has(one)));
  });
}

/** Whether anything in the text denies. */
export const denies = (clauses: readonly Clause[]): boolean => clauses.some(({ claims }) => claims.some(({ word, denied }) => denied || NEGATORS.has(word)));
export const isNegator = (word: string): boolean => NEGATORS.has(word);
