/**
 * Troubles that came in with a file of knowledge and that the trained router has never heard of. A message means one when it holds one of
 * the file's own phrases whole; half a phrase is enough only where the router is unsure.
 */
import { distance } from "../../knowledge/spelling.ts";
import type { Knowledge } from "../../knowledge/load.ts";
import type { Trouble } from "../../knowledge/schemas.ts";
import { isTopic } from "../../topics.ts";
import { normalise } from "./normalise.ts";
import { stem } from "./stem.ts";

export interface ExtraMatch {
  readonly trouble: Trouble;
  /** a whole phrase of at least two telling words, or one long and rare one */
  readonly strong: boolean;
}
interface Entry {
  readonly trouble: Trouble;
  readonly phrases: readonly (readonly string[])[];
  /** title and symptom: only ever a hint */
  readonly hints: readonly (readonly string[])[];
}

/** Part of a phrase from which on it counts as half said. */
const HALF = 0.6;
const LONG_WORD = 7;
const SMALL = new Set(
  ("a an the is are was were be been am i you it its my our your me we they he she his her of in on at to from for with and or but not no so very too as by up out off down do does did has have had this that these those there here when while what why how " +
    "der die das ein eine einen dem den des ist sind war im in an auf aus zu mit und oder nicht kein keine mein meine ich wir es er sie bei beim vom von sehr so wenn was warum wie").split(" "),
);

const wordsOf = (text: string): string[] => normalise(text).split(/[^\p{L}\p{N}]+/u).filter((word) => word.length > 1 && !SMALL.has(word)).map(stem);

const known = new WeakMap<Knowledge, readonly Entry[]>();
function entries(knowledge: Knowledge): readonly Entry[] {
  const there = known.get(knowledge);
  if (there) return there;
  const made = [...knowledge.troubles.values()].filter(({ id }) => !isTopic(id)).map((trouble): Entry => {
    const said = [...knowledge.heard.values()].flatMap((heard) => heard.get(`troubles.${trouble.id}.words`) ?? []);
    const translated = [...knowledge.texts.values()].flatMap((texts) => ["title", "symptom"].flatMap((part) => texts.get(`troubles.${trouble.id}.${part}`) ?? []));
    return { trouble, phrases: [...trouble.words, ...said].map(wordsOf).filter((words) => words.length > 0), hints: translated.map(wordsOf).filter((words) => words.length > 1) };
  });
  known.set(knowledge, made);
  return made;
}

/** The trouble among those the router does not know that the message is most about; null when none is. */
export function extraTopic(knowledge: Knowledge, text: string): ExtraMatch | null {
  const all = entries(knowledge);
  if (all.length === 0) return null;
  const said = wordsOf(text);
  const isSaid = (word: string): boolean => said.some((one) => one === word || (word.length >= 5 && one.length >= 5 && distance(word, one) <= 1));
  let best: { match: ExtraMatch; score: number } | null = null;
  for (const { trouble, phrases, hints } of all) {
    for (const [list, own] of [[phrases, true], [hints, false]] as const) {
      for (const phrase of list) {
        const heard = phrase.filter(isSaid);
        const share = heard.length / phrase.length;
        const telling = heard.length >= 2 || (heard[0]?.length ?? 0) >= LONG_WORD;
        if (share < HALF || !telling) continue;
        const strong = own && share === 1;
        const score = (strong ? 10 : 0) + share + heard.length / 10;
        if (!best || score > best.score) best = { match: { trouble, strong }, score };
      }
    }
  }
  return best?.match ?? null;
}

export const extraTroubles = (knowledge: Knowledge): readonly Trouble[] => entries(knowledge).map(({ trouble }) => trouble);
