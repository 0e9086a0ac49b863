/**
 * `knowledge/said/<trouble>.yaml`: how people answer a question in their own words, by sign and answer, one reply a line. The reader of
 * replies learns from them; English only. Two answers are no answers of the sign: `unknown` (the person cannot say) and `beside` (what
 * answers nothing of the question).
 */
import { existsSync } from "node:fs";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";
import { id, Replies, type Sign, type Trouble } from "./schemas.ts";
import { readFileOf } from "./yaml-file.ts";

export const SaidFile = z.record(id, Replies);
export type SaidFile = z.output<typeof SaidFile>;
export const NO_ANSWERS: readonly string[] = ["unknown", "beside"];

/** The files by trouble; none where there is no such folder. */
export async function readSaid(folder: string): Promise<{ said: ReadonlyMap<string, SaidFile>; problems: string[] }> {
  const said = new Map<string, SaidFile>();
  const problems: string[] = [];
  const place = join(folder, "said");
  for (const file of existsSync(place) ? (await readdir(place)).filter((name) => name.endsWith(".yaml")).sort() : []) {
    const read = readFileOf(`knowledge/said/${file}`, await readFile(join(place, file), "utf8"), SaidFile);
    problems.push(...read.problems);
    if (read.value) said.set(file.replace(/\.yaml$/, ""), read.value);
  }
  return { said, problems };
}

const answersOf = ({ kind, answers }: Sign): string[] => (answers?.length ? answers.map((answer) => answer.id) : kind === "yes-no" ? ["yes", "no"] : []);
/** Asked in the same words with the same answers, it is the same question in every tree. */
const questionOf = (sign: Sign): string => `${sign.ask}\n${answersOf(sign).join(" ")}`;

/**
 * Puts the replies beside the signs they answer.
 * @returns a sentence for each that belongs to no sign or no answer; those are left out
 */
export function addSaid(troubles: ReadonlyMap<string, Trouble>, said: ReadonlyMap<string, SaidFile>): string[] {
  const strays: string[] = [];
  const byQuestion = new Map<string, Record<string, string>>();
  const add = (sign: Sign, replies: Readonly<Record<string, string>>, file: string, at: string): void => {
    const known = [...answersOf(sign), ...NO_ANSWERS];
    const all = byQuestion.get(questionOf(sign)) ?? {};
    byQuestion.set(questionOf(sign), all);
    for (const [answer, lines] of Object.entries(replies)) {
      if (known.includes(answer)) all[answer] = `${all[answer] ?? ""}${lines}\n`;
      else strays.push(`${file}: ${at} > ${answer} is none of its answers: ${known.join(", ")}.`);
    }
  };
  const signs = [...troubles.values()].flatMap((trouble) => Object.entries(trouble.signs).map(([name, sign]) => ({ trouble: trouble.id as string, name, sign })));
  for (const { trouble, name, sign } of signs) if (sign.said) add(sign, sign.said, `knowledge/troubles/${trouble}.yaml`, `signs > ${name} > said`);
  for (const [trouble, file] of said) {
    const place = `knowledge/said/${trouble}.yaml`;
    if (!troubles.has(trouble)) strays.push(`${place}: there is no trouble "${trouble}"; the file has the name of one.`);
    for (const [name, replies] of Object.entries(troubles.has(trouble) ? file : {})) {
      const sign = troubles.get(trouble)?.signs[name];
      if (!sign) strays.push(`${place}: "${name}" is none of the signs of ${trouble}.`);
      else if (!sign.ask) strays.push(`${place}: "${name}" is never asked, so nobody answers it.`);
      else add(sign, replies, place, name);
    }
  }
  for (const { sign } of signs) {
    const replies = byQuestion.get(questionOf(sign));
    if (replies && sign.ask) sign.said = replies;
  }
  return strays;
}

/** The replies one by one. */
export const repliesOf = ({ said = {} }: Pick<Sign, "said">): { readonly answer: string; readonly said: string }[] =>
  Object.entries(said).flatMap(([answer, lines]) => lines.split("\n").flatMap((line) => (line.trim() === "" ? [] : [{ answer, said: line.trim() }])));
