/** The people of a folder of written cases: what each said to each question, read as the conversation reads a typed answer. */
import { existsSync, readFileSync } from "node:fs";
import type { Context } from "../../src/conversation/context.ts";
import { hear } from "../../src/conversation/hear.ts";
import type { Sign, Trouble } from "../../src/knowledge/schemas.ts";
import { play, type Played, type Reads, type Stage } from "./play-case.ts";

export interface WrittenCase {
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

/** A folder of written cases beside this file, and what their people answered. */
export interface WrittenSet {
  readonly cases: readonly WrittenCase[];
  /** what was typed; `answers-later.jsonl`, where there is one, holds what was typed to the questions of trees mended since */
  readonly answers: readonly Answered[];
  /** case number to the causes that its cause words mean */
  readonly map: Readonly<Record<string, readonly string[]>>;
}
export function writtenSet(folder: string): WrittenSet {
  const at = (name: string): URL => new URL(`${folder}/${name}`, import.meta.url);
  const lines = <T>(name: string): readonly T[] =>
    existsSync(at(name)) ? readFileSync(at(name), "utf8").split("\n").filter(Boolean).map((line) => JSON.parse(line) as T) : [];
  return {
    cases: lines("cases.jsonl"),
    answers: [...lines<Answered>("answers-later.jsonl"), ...lines<Answered>("answers.jsonl")],
    map: JSON.parse(readFileSync(at("map.json"), "utf8")),
  };
}

/** longest message that the conversation takes for an answer to an open question */
export const LONGEST_ANSWER_chars = 120;

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
export const playWritten = (stage: Stage, written: WrittenCase, said: ReadonlyMap<string, string>): Played =>
  play(stage, written, (sign) => said.get(`${written.n} ${sign}`), readAnswer);
export const byQuestion = (answers: readonly Answered[]): ReadonlyMap<string, string> =>
  new Map(answers.map(({ n, sign, said }) => [`${n} ${sign}`, said]));
