/** How much a word tells, by its rarity in everyday speech, and how near two words are in meaning, by the router's word vectors. */
import { wordBucket } from "../routing/features.ts";
import { hashText } from "../routing/hash.ts";
import { wordModel } from "../routing/route.ts";
import { stem } from "../routing/stem.ts";
import type { Model } from "../routing/model.ts";
import type { Spoken } from "../spoken.ts";
import { synonyms } from "./synonyms.ts";
import { germanRootOf, germanTells } from "./german-words.ts";

/** The rarity of a word among the messages the router was trained on: from nothing told to all. */
const TELLS_NOTHING = 2.5;
const TELLS_ALL = 7.5;
/** the same by rank in everyday English, for words no message had */
const COMMON_RANK = 60;
const RARE_RANK = 3000;
const LEAST = 0.2;
const SMALLEST = 0.08;
/** Words that stand beside any other. They never decide. */
const PLACING: ReadonlySet<string> = new Set(
  ("after at on in to up down off out over by for from with as all any some more most then into onto near before when where while which who what one two once again back way go goes going come comes came " +
    "make made see saw look looks think know say said time thing things lot bit day days like well much many little about only because since until till though even still now new old good very really quite just so too also than here there top bottom side end part left right big small long short place towards " +
    "nach an auf in zu ab aus von mit alle mehr dann bei vor wenn wo wie eins zwei wieder geht kommt macht sehe denke weiss mal sache tag tage gut etwas uber noch jetzt neu alt").split(" "),
);

const model = (): Model => wordModel("en");
let rows: ReadonlyMap<number, number> | null = null;
const MOST_REMEMBERED = 20_000;

/** What is made of a word, made once in each language. */
function ofWords<Made extends string | number>(make: Readonly<Record<Spoken, (word: string) => Made>>): (word: string, language?: Spoken) => Made {
  const remembered: Readonly<Record<Spoken, Map<string, Made>>> = { en: new Map(), de: new Map() };
  return (word, language = "en") => {
    const before = remembered[language];
    const known = before.get(word);
    if (known !== undefined) return known;
    const made = make[language](word);
    if (before.size < MOST_REMEMBERED) before.set(word, made);
    return made;
  };
}

/** 0.08 to 1 */
export const tells = ofWords({ en: weigh, de: germanTells });
function weigh(word: string): number {
  if (PLACING.has(word) || word.length === 1) return SMALLEST;
  const { lexicon, linear } = model();
  rows ??= new Map([...linear.known.buckets].map((bucket, row) => [bucket, row]));
  const { hash, row } = lexicon.entry(word);
  const seen = rows.get(wordBucket(hash));
  const rarity = seen === undefined ? undefined : linear.known.rarity[seen];
  if (rarity !== undefined) return clamp((rarity - TELLS_NOTHING) / (TELLS_ALL - TELLS_NOTHING));
  if (row < 0) return word.length <= 2 ? LEAST : 1;
  return clamp(Math.log((row + 1) / COMMON_RANK) / Math.log(RARE_RANK / COMMON_RANK));
}
const clamp = (weight: number): number => Math.min(1, Math.max(LEAST, weight));

/** The word as a reader of its language takes it: cut to its stem, and mended where neither word nor stem is known. */
export const rootOf = ofWords({ en: englishRootOf, de: germanRootOf });

function englishRootOf(word: string): string {
  const root = mendedRootOf(word);
  alikeRoots ??= synonyms(mendedRootOf);
  return alikeRoots.get(root) ?? root;
}
let alikeRoots: ReadonlyMap<string, string> | null = null;
function mendedRootOf(word: string): string {
  const { lexicon } = model();
  // "bare" is no form of "bars"
  const cut = word.length <= 4 && word.endsWith("e") ? word : stem(word);
  return lexicon.entry(cut).word === cut ? cut : stem(lexicon.entry(word).word);
}

const lengths = new Map<number, number>();
function length(row: number): number {
  const known = lengths.get(row);
  if (known !== undefined) return known;
  const { vectors, dimensions } = model();
  let sum = 0;
  for (let d = 0; d < dimensions; d++) sum += (vectors[row * dimensions + d] as number) ** 2;
  const made = Math.sqrt(sum);
  if (lengths.size < 20_000) lengths.set(row, made);
  return made;
}

/** Cosine of two words' vectors, 0 where either has none, as German words have. */
export function nearness(a: string, b: string, language: Spoken = "en"): number {
  if (language === "de") return rootOf(a, language) === rootOf(b, language) ? 1 : 0;
  const { lexicon, vectors, dimensions } = model();
  const [i, j] = [lexicon.entry(a).row, lexicon.entry(b).row];
  if (i < 0 || j < 0) return 0;
  if (i === j) return 1;
  const norm = length(i) * length(j);
  if (norm === 0) return 0;
  let dot = 0;
  for (let d = 0; d < dimensions; d++) dot += (vectors[i * dimensions + d] as number) * (vectors[j * dimensions + d] as number);
  return dot / norm;
}

/** Senses of the router's lexicon whose words can stand for each other in an answer; many others hold opposites, or words of two meanings. */
const ALIKE: ReadonlySet<string> = new Set(["fans", "furnishings", "tar", "wind", "stuck", "slow", "goes_out", "sparks", "volume", "neighbour", "waste", "insulation", "outdoors"]);
let alike: ReadonlySet<number> | null = null;

/** Numbers of the senses that words standing side by side carry. */
export function sensesOf(words: readonly string[], language: Spoken = "en"): number[] {
  const { lexicon } = wordModel(language);
  alike ??= new Set([...ALIKE].map(hashText));
  const stems = words.map((word) => (language === "de" ? stem(rootOf(word, language)) : lexicon.entry(word).stem));
  const found: number[] = [];
  for (let i = 0; i < stems.length; i++) lexicon.sensesAt(stems, i, found);
  return [...new Set(found)].filter((sense) => alike?.has(lexicon.senseHashes[sense] as number));
}
