/**
 * Written cases, played through the conversation's own reading and walk. Figures asked of the trees: first cause right in 85 % of the
 * cases, among the first two in 95 %, at the median no more than two questions with full records and four with none; no unsafe remedy;
 * every needed caution. Which half is blind, and what it measured first, stands in CASES.md.
 */
import { readFileSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { onSheet, saidTo, type Case } from "./case-person.ts";
import { openStage, play, type Played } from "./play-case.ts";

const here = (name: string): string => readFileSync(new URL(name, import.meta.url), "utf8");
const cases = here("cases.jsonl").trim().split("\n").map((line) => JSON.parse(line) as Case);
const meant = JSON.parse(here("cases-map.json")) as Record<string, string[]>;
const stage = await openStage();

/** trees that the writer of the cases had not read */
const BLIND: ReadonlySet<string> = new Set([
  "smoke-at-lighting", "smoke-on-opening", "smoke-mid-burn", "hazy-glass", "slow-ignition", "fire-dies", "over-firing", "cold-morning",
  "hot-surface", "room-too-warm", "uneven-heat", "cracks", "co-alarm", "chimney-fire",
]);

interface Row {
  readonly number: number;
  readonly written: Case;
  readonly played: Played;
  /** place of a right cause among those shown, from 0; -1 when none is */
  readonly place: number;
  readonly full: boolean;
}
const rows: readonly Row[] = cases.map((written, i) => {
  const played = play(stage, written);
  const right = meant[String(i + 1)] ?? [];
  return { number: i + 1, written, played, place: played.causes.findIndex(({ id }) => right.includes(id)), full: Object.keys(written.records).length > 0 };
});
const blind = rows.filter(({ written }) => BLIND.has(written.trouble));
const consistency = rows.filter(({ written }) => !BLIND.has(written.trouble));

const share = (some: readonly Row[], good: (row: Row) => boolean): number => some.filter(good).length / some.length;
const isFirst = ({ place }: Row): boolean => place === 0;
const inTwo = ({ place }: Row): boolean => place === 0 || place === 1;
const questions = (some: readonly Row[], full: boolean): number => median(some.filter((row) => row.full === full).map(({ played }) => played.asked.length));
function median(figures: readonly number[]): number {
  const sorted = [...figures].sort((a, b) => a - b);
  return ((sorted[Math.floor((sorted.length - 1) / 2)] ?? 0) + (sorted[Math.ceil((sorted.length - 1) / 2)] ?? 0)) / 2;
}
const told = ({ number, written, played }: Row): string =>
  `case ${number}, ${written.trouble}, meant "${written.cause}", shown ${played.causes.map(({ id }) => id).join(", ") || played.emergency}`;

describe("the written cases", () => {
  it("are each mapped to causes of their tree, and their people know every question they answer", () => {
    for (const { number, written } of rows) {
      const causes = Object.keys(stage.knowledge.troubles.get(written.trouble as never)?.causes ?? {});
      expect(meant[String(number)]?.length, `case ${number}`).toBeGreaterThan(0);
      expect(causes, `case ${number}`).toEqual(expect.arrayContaining(meant[String(number)] ?? []));
    }
    const unread = rows.flatMap(({ number, written, played }) =>
      played.asked.filter(({ sign, read }) => read === null && onSheet(written.trouble, sign) && saidTo(written, sign) !== undefined).map(({ sign, said }) => `${number} ${sign}: ${said}`));
    expect(unread.length, unread.join("\n")).toBeLessThanOrEqual(0.1 * rows.flatMap(({ played }) => played.asked).length);
  });

  it("name the right cause first, or among two", () => {
    expect(share(rows, isFirst), rows.filter((row) => !isFirst(row)).map(told).join("\n")).toBeGreaterThanOrEqual(0.85);
    expect(share(rows, inTwo), rows.filter((row) => !inTwo(row)).map(told).join("\n")).toBeGreaterThanOrEqual(0.95);
  });

  it("take few questions", () => {
    expect(questions(rows, true)).toBeLessThanOrEqual(2);
    expect(questions(rows, false)).toBeLessThanOrEqual(4);
  });
});

describe("the last answer of every case", () => {
  const opened = /\bflue damper (stays?|stands|is)? ?(fully?)? ?open\b/gi;
  const closes = /\b(clos|shut)\w*\b[^.]*\bflue damper\b|\bflue damper\b[^.]*\b(clos|shut)\w*\b/i;
  const unsafe = (line: string): string | null =>
    closes.test(line.replace(opened, "")) && !/\b(never|not|nobody|black|cold|leave it open|was|had been)\b/i.test(line) ? "closes the damper over fire"
    : /\b(climb|go up|get on)\b[^.]*\b(roof|chimney)\b/i.test(line) && !/\b(nobody|never|not?)\b/i.test(line) ? "sends somebody up the roof"
    : /\bwater (on|onto|into|over) (the )?(fire|ember|flame|heater|flue)|\b(pour|throw|spray)\w*\b[^.]*\bwater\b/i.test(line) && !/\b(no|never)\b[^.]*\bwater\b/i.test(line) ? "water on a fire"
    : null;

  it("holds no unsafe remedy", () => {
    const found = rows.flatMap((row) => row.played.told.flatMap((line) => (unsafe(line) ? [`${told(row)}: ${unsafe(line)}: ${line}`] : [])));
    expect(found).toEqual([]);
    expect(unsafe("Close the flue damper while it glows."), "the check sees nothing").not.toBeNull();
  });

  it("allows no fire where the case forbids one", () => {
    const allowed = rows.filter(({ written, played }) => NO_FIRE.test(written.cause) && !played.forbids_fire);
    expect(allowed.map(told)).toEqual([]);
    expect(rows.filter(({ written }) => NO_FIRE.test(written.cause)).length).toBeGreaterThan(30);
  });

  it("carries every caution the case needs", () => {
    const missing = rows.flatMap((row) =>
      NEEDED.filter(([cause]) => cause.test(row.written.cause)).filter(([, ids]) => !row.played.emergency && !ids.some((id) => row.played.cautions.includes(id))).map(([, ids]) => `${told(row)}: ${ids.join(" or ")}`));
    expect(missing).toEqual([]);
    expect(NEEDED.filter(([cause]) => !rows.some(({ written }) => cause.test(written.cause))).map(([cause]) => cause.source)).toEqual([]);
  });
});

/** By the case's own words: no fire until somebody has looked. Common practice, no source. */
const NO_FIRE =
  /blocked flue|way out is nearly blocked|nest|cracked (core|joint)|crack, joint|crack or leak|foundation|embers$|pulled flue gas|another source|battery low|tar in the flue|dirty flue|sparked it|another appliance|shared flue|hidden timber|smoke leaking|bird|animal|squirrel|wasps|bats|brick|debris|unnoticed chimney fire|stands too near/;
/** By the case's own words: one of these cautions stands with the answer. Common practice, no source. */
const NEEDED: readonly (readonly [RegExp, readonly string[]])[] = [
  [/fan|hood/, ["extractor"]],
  [/blocked flue|nest\b|way out is nearly blocked/, ["blocked-flue"]],
  [/closed over (glowing coals|embers)/, ["close-flue"]],
  [/overload|over-fir|too much wood/, ["over-firing"]],
  [/tar in the flue|shiny/, ["tar"]],
  [/cracked core|masonry cracked/, ["cracked"]],
  [/crack or leak into a white oven/, ["oven-smoke"]],
  [/gasket (flat|come)|door gasket|gasket leaking|door seal leaks/, ["asbestos"]],
  [/must not be burnt|fuel that makes soot|burning paper/, ["never-burn"]],
  [/stands too near|hidden timber|near the heater/, ["hot-surroundings"]],
  [/opened too fast/, ["opening-door"]],
  [/air (shut|turned down|closed)/, ["close-air", "opening-door"]],
  [/liquid/, ["no-liquids"]],
  [/wood put on/, ["more-wood", "close-air", "opening-door"]],
  [/weak draught|warm mild weather/, ["weak-draught"]],
  [/ash (at the bottom|has filled)|too much ash/, ["hot-ash"]],
  [/smoke|flue gas/, ["smoke-in-room", "carbon-monoxide", "oven-smoke"]],
];

afterAll(() => {
  const line = (name: string, some: readonly Row[]): string =>
    `${name.padEnd(22)}${String(some.length).padStart(4)}${pct(share(some, isFirst))}${pct(share(some, inTwo))}${String(questions(some, true)).padStart(8)}${String(questions(some, false)).padStart(8)}`;
  const pct = (part: number): string => `${(100 * part).toFixed(1)} %`.padStart(9);
  const trees = (some: readonly Row[]): string[] =>
    [...new Set(some.map(({ written }) => written.trouble))].map((tree) => line(`  ${tree}`, some.filter(({ written }) => written.trouble === tree)));
  console.info([
    `${"".padEnd(22)}${"n".padStart(4)}${"first".padStart(9)}${"two".padStart(9)}${"full".padStart(8)}${"empty".padStart(8)}`,
    line("blind", blind), ...trees(blind), line("consistency", consistency), ...trees(consistency), line("all", rows),
    "blind, as first measured on 2026-11-25 before anything was mended: first 70.5 %, two 76.8 %, questions 2 full, 2 empty",
  ].join("\n"));
});
