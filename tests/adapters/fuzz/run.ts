/** Talks of a few messages with hostile people, decided and laid out for every network in both languages; what is wrong, and what it took. */
import { fileURLToPath } from "node:url";
import { write } from "../../../adapters/lines/render.ts";
import type { Options } from "../../../adapters/outline.ts";
import type { Answer } from "../../../src/answer.ts";
import { decide, decideDue, type Deciding } from "../../../src/conversation/decide.ts";
import { loadTimes } from "../../../src/conversation/reading/times.ts";
import { loadKnowledge } from "../../../src/knowledge/load.ts";
import type { Message } from "../../../src/message.ts";
import { loadCatalogues } from "../../../src/text/catalogues.ts";
import { renderer, type Reader, type Renderer } from "../../../src/text/render.ts";
import { random, type Random } from "../../simulation/random.ts";
import { after, household, message, NOW_MS } from "./household.ts";
import { said } from "./messages.ts";
import { MOUTHS } from "./mouths.ts";

export interface Stage extends Deciding {
  readonly render: Renderer;
}
export interface Slow {
  readonly what: string;
  readonly ms: number;
  readonly message: unknown;
}
export interface Report {
  readonly messages: number;
  readonly answers: number;
  readonly layouts: number;
  readonly wrong: readonly string[];
  /** the slowest of each step, processor time */
  readonly slowest: ReadonlyMap<string, Slow>;
}

const READERS: readonly Reader[] = [{ locale: "en-GB", system: "metric", timezone: "Europe/London" }, { locale: "de-DE", system: "metric", timezone: "Europe/Berlin" }];
/** Every single step of the way must stay below; a wall longer than any usual message takes in proportion, up to twice that. */
export const LIMIT_MS = 50;
const USUAL = 4_000;
const limitOf = (told: unknown): number => (((told as { text?: string }).text?.length ?? 0) > USUAL ? 2 * LIMIT_MS : LIMIT_MS);
/** What takes longer is tried again: a busy machine is no reason to fail, a hang stays one. */
const TRIES = 20;
const MOST_REPORTED = 20;

export async function openStage(): Promise<Stage> {
  const [knowledge, own] = await Promise.all([loadKnowledge(fileURLToPath(new URL("../../../knowledge", import.meta.url))), loadCatalogues(), loadTimes()]);
  const languages = new Set([...own.keys(), ...knowledge.texts.keys()]);
  const texts = new Map([...languages].map((language) => [language, new Map([...(own.get(language) ?? []), ...(knowledge.texts.get(language) ?? [])])]));
  return { knowledge, settings: { timezone: "UTC", locale: "en-GB" }, render: renderer(texts) };
}

const taken_ms = (work: () => unknown): number => {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
};

export function fuzz(stage: Stage, seed: number, messages: number, seen: (html: readonly string[]) => void = () => {}): Report {
  const wrong: string[] = [];
  const slowest = new Map<string, Slow>();
  let answers = 0;
  let layouts = 0;
  let number = 0;

  function timed<T>(what: string, told: unknown, work: () => T): T {
    let made: T | undefined;
    let ms = taken_ms(() => { made = work(); });
    const limit = limitOf(told);
    for (let tries = 1; ms > limit && tries < TRIES; tries++) ms = Math.min(ms, taken_ms(work));
    if (ms > (slowest.get(what)?.ms ?? 0)) slowest.set(what, { what, ms, message: told });
    if (ms > limit) wrong.push(`${what} took ${ms.toFixed(0)} ms: ${JSON.stringify(told).slice(0, 300)}`);
    return made as T;
  }

  function layOut(answer: Answer, told: unknown, dice: Random): void {
    answers++;
    const screen = { columns: dice.of([16, 40, 80, 160]), colour: dice.chance(0.5) };
    for (const reader of READERS) {
      const options: Options = { render: stage.render, reader, maybe_repeat: dice.chance(0.1) };
      for (const [name, mouth] of Object.entries(MOUTHS)) {
        layouts++;
        try {
          const { wrong: found, html = [] } = timed(name, told, () => mouth(answer, options, screen)).look();
          seen(html);
          for (const one of found) wrong.push(`seed ${seed}, message ${number}, ${reader.locale}: ${one} | ${JSON.stringify(told).slice(0, 300)}`);
        } catch (error) {
          wrong.push(`seed ${seed}, message ${number}, ${reader.locale}, ${name}: ${(error as Error).stack} | ${JSON.stringify(told).slice(0, 300)}`);
        }
      }
    }
  }

  for (let talk = 0; number < messages && wrong.length < MOST_REPORTED; talk++) {
    const dice = random(seed * 1_000_003 + talk);
    let snapshot = household(dice);
    let offered: string[] = [];
    let now_ms = NOW_MS;
    for (let turns = dice.from(1, 6); turns > 0 && number < messages; turns--) {
      number++;
      const told = said(dice, offered);
      const heard: Message = message(snapshot, `${seed}-${number}`, now_ms, told);
      try {
        const decided = timed("decide", told, () => decide(stage, snapshot, heard, now_ms));
        layOut(decided.answer, told, dice);
        for (const other of decided.also_tell ?? []) layOut(other.answer, told, dice);
        snapshot = after(snapshot, decided);
        for (const row of decided.due) {
          const fallen = timed("decide what fell due", told, () => decideDue(stage, snapshot, row, row.due_at_ms));
          if (fallen?.answer) layOut(fallen.answer, row, dice);
        }
        offered = write(decided.answer, stage.render, READERS[0] as Reader).choices.map(({ id }) => id);
      } catch (error) {
        wrong.push(`seed ${seed}, message ${number}, decide: ${(error as Error).stack} | ${JSON.stringify(told).slice(0, 300)}`);
      }
      now_ms += dice.from(1, 90) * 60_000;
    }
  }
  return { messages: number, answers, layouts, wrong, slowest };
}
