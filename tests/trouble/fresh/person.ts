/** The people of the fresh cases: what each said to each question (answers.jsonl), read as the conversation reads a typed answer. */
import { readFileSync } from "node:fs";
import type { Context } from "../../../src/conversation/context.ts";
import { hear } from "../../../src/conversation/hear.ts";
import type { Sign, Trouble } from "../../../src/knowledge/schemas.ts";
import { play, type Played, type Reads, type Stage } from "../play-case.ts";

export interface FreshCase {
  readonly n: number;
  readonly trouble: string;
  readonly now: string;
  readonly records: Readonly<Record<string, unknown>>;
  readonly story: string;
  /** all that the person could say, in their words */
  readonly knows: string;
  readonly cause: string;
  readonly unsafe: string;
  readonly needs: readonly string[];
}
export interface Answered {
  readonly n: number;
  readonly sign: string;
  readonly said: string;
}

const lines = <T>(name: string): readonly T[] =>
  readFileSync(new URL(name, import.meta.url), "utf8").split("\n").filter(Boolean).map((line) => JSON.parse(line) as T);
export const freshCases = (): readonly FreshCase[] => lines("cases.jsonl");
export const freshAnswers = (): readonly Answered[] => lines("answers.jsonl");
/** to questions that the mended trees ask and the first ones did not; typed by whoever mended them, from `story` and `knows` */
export const laterAnswers = (): readonly Answered[] => lines("answers-later.jsonl");
/** case number to the causes that its cause words mean */
export const freshMap = (): Readonly<Record<string, readonly string[]>> =>
  JSON.parse(readFileSync(new URL("map.json", import.meta.url), "utf8"));

/** longest message that the conversation takes for an answer to an open question */
const LONGEST_ANSWER_chars = 120;

/** A bare number picks a choice, as on every network; what does not answer the question may answer another of the tree's. */
export const readAnswer: Reads = (trouble: Trouble, id: string, heard: Context) => {
  const sign = trouble.signs[id];
  if (!sign || heard.text.length > LONGEST_ANSWER_chars) return { [id]: null };
  const picked = pickedByNumber(sign, heard.text);
  if (picked !== undefined) return { [id]: picked };
  const hearing = hear(heard);
  return { [id]: null, ...hearing.signs(trouble) };
};

function pickedByNumber(sign: Sign, text: string): string | null | undefined {
  const number = /^\s*(\d{1,2})\s*$/.exec(text)?.[1];
  if (number === undefined) return undefined;
  const choices = [...(sign.kind === "yes-no" ? ["yes", "no"] : (sign.answers ?? []).map(({ id }) => id)), null];
  return choices[Number(number) - 1];
}

/** @param said by `${n} ${sign}` */
export const playFresh = (stage: Stage, written: FreshCase, said: ReadonlyMap<string, string>): Played =>
  play(stage, written, (sign) => said.get(`${written.n} ${sign}`), readAnswer);
export const byQuestion = (answers: readonly Answered[]): ReadonlyMap<string, string> =>
  new Map(answers.map(({ n, sign, said }) => [`${n} ${sign}`, said]));
