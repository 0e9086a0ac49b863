/** Every way a person can answer their way through a tree, "I don't know" included. A wide tree is thinned by a fixed stride. */
import type { Trouble } from "../knowledge/schemas.ts";
import type { HeaterFacts } from "../records/schemas.ts";
import { walk, type Observations, type Walk } from "./walk.ts";

export interface Path {
  readonly asked: readonly string[];
  readonly seen: Observations;
  readonly end: Walk;
  /** the cause that leads at the end; null where the path ends in an emergency card */
  readonly leads: string | null;
}

/** Further questions than this mean that the walker does not come to an end. */
const DEEPEST = 12;

/** @param most nodes visited before the tree is thinned: from then on each question takes one answer only, in turn */
export function everyPath(trouble: Trouble, heater: HeaterFacts = {}, known: Observations = {}, most = 6000): Path[] {
  const ends: Path[] = [];
  let visited = 0;
  const go = (seen: Observations, asked: readonly string[]): void => {
    visited++;
    const end = walk(trouble, heater, seen, asked);
    if (end.ask === null || end.stop !== null || asked.length >= DEEPEST) {
      ends.push({ asked, seen, end, leads: end.stop?.emergency ? null : (end.stop?.cause ?? end.ranked[0]?.id ?? null) });
      return;
    }
    const sign = end.ask;
    const answers = answersOf(trouble, sign);
    const chosen = visited <= most ? answers : [answers[visited % answers.length] ?? null];
    for (const answer of chosen) go({ ...seen, [sign]: { answer, from: "person" } }, [...asked, sign]);
  };
  go(known, []);
  return ends;
}

/** What can be said to a sign; null is "I don't know". */
export function answersOf(trouble: Trouble, sign: string): (string | null)[] {
  const { kind, answers } = trouble.signs[sign] ?? { kind: "yes-no" as const };
  return [...(kind === "yes-no" ? ["yes", "no"] : (answers ?? []).map((answer) => answer.id)), null];
}
