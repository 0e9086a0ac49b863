/**
 * A folder of written cases replayed with what their people said, beside a floor that was once reached. Asked of the trees: first cause
 * right in 85 %, among the first two in 95 %, at the median no more than two questions with full records and four with none, no unsafe
 * remedy, every needed caution.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { openStage, type Played } from "./play-case.ts";
import { byQuestion, LONGEST_ANSWER_chars, playWritten, writtenSet, type WrittenCase } from "./written-person.ts";

/** nothing may get worse than this: cases right, answers judged unsafe, needed cautions that are missing */
export interface Floor {
  readonly first: number;
  readonly among_two: number;
  readonly unsafe: number;
  readonly cautions_missing: number;
}
interface Row {
  readonly written: WrittenCase;
  readonly played: Played;
  /** place of a right cause among those shown, from 0; -1 when none is */
  readonly place: number;
  readonly full: boolean;
}

/** in a map: somebody is in danger at that moment, and the emergency card is right in place of a cause */
const CARD = "card";
const MOST_QUESTIONS = { full: 2, empty: 4 } as const;

function median(figures: readonly number[]): number {
  const sorted = [...figures].sort((a, b) => a - b);
  return ((sorted[Math.floor((sorted.length - 1) / 2)] ?? 0) + (sorted[Math.ceil((sorted.length - 1) / 2)] ?? 0)) / 2;
}
const told = ({ written, played }: Row): string =>
  `${written.n} ${written.trouble}: meant "${written.cause}", shown ${played.causes.map(({ id }) => id).join(", ") || played.emergency}`;

/** @param folder beside this file: cases, map, answers, needs, unsafe, and README.md with the sums of cases.jsonl and map.json */
export async function replay(folder: string, reached: Floor): Promise<void> {
  const file = (name: string): string => readFileSync(new URL(`${folder}/${name}`, import.meta.url), "utf8");
  const sha256 = (name: string): string => createHash("sha256").update(file(name)).digest("hex");

  const { cases, answers, map } = writtenSet(folder);
  const stage = await openStage();
  const said = byQuestion(answers);
  const rows: readonly Row[] = cases.map((written) => {
    const played = playWritten(stage, written, said);
    const right = map[String(written.n)] ?? [];
    const place = played.emergency !== null && right.includes(CARD) ? 0 : played.causes.findIndex(({ id }) => right.includes(id));
    return { written, played, place, full: Object.keys(written.records).length > 0 };
  });
  const first = rows.filter(({ place }) => place === 0);
  const amongTwo = rows.filter(({ place }) => place === 0 || place === 1);
  const questions = (full: boolean): number => median(rows.filter((row) => row.full === full).map(({ played }) => played.asked.length));

  /** by a need's own words: caution ids, "no-fire", "card" (emergency), or a pattern over what the answer tells; one of them is enough */
  const evidence: Readonly<Record<string, readonly string[]>> = JSON.parse(file("needs.json"));
  const carries = ({ played }: Row, need: string): boolean => {
    const words = [...played.told, played.headline].join("\n").toLowerCase();
    return (evidence[need] ?? []).some((one) =>
      one === "no-fire" ? played.forbids_fire
      : one === "card" ? played.emergency !== null
      : one.startsWith("/") ? new RegExp(one.slice(1, -1)).test(words)
      : played.cautions.includes(one));
  };
  const missing = rows.flatMap((row) => row.written.needs.filter((need) => !carries(row, need)).map((need) => `${told(row)}: ${need}`));

  /** answers read by a person and found to break the case's `unsafe`; they stand as long as the same cause is shown first */
  const judged: readonly { readonly n: number; readonly shown: string; readonly why: string }[] = JSON.parse(file("unsafe.json"));
  const unsafe = rows.filter(({ written, played }) => judged.some(({ n, shown }) => n === written.n && played.causes[0]?.id === shown));

  describe(`the ${folder} cases`, () => {
    it("are those whose sums were set down before the first play", () => {
      for (const name of ["cases.jsonl", "map.json"]) expect(file("README.md")).toContain(sha256(name));
    });

    it("are mapped to causes of their trees, and their people answer questions that exist, shortly", () => {
      for (const { n, trouble } of cases) {
        const tree = stage.knowledge.troubles.get(trouble as never);
        expect([CARD, ...Object.keys(tree?.causes ?? {})], `case ${n}`).toEqual(expect.arrayContaining([...(map[String(n)] ?? [])]));
        for (const { sign, said } of answers.filter((one) => one.n === n)) {
          expect(Object.keys(tree?.signs ?? {}), `case ${n}`).toContain(sign);
          expect(said.length, `case ${n}: ${said}`).toBeLessThanOrEqual(LONGEST_ANSWER_chars);
        }
      }
    });

    it("name the right cause first, or among two, no seldomer than once reached", () => {
      const lost = rows.filter(({ place }) => place !== 0).map(told).join("\n");
      expect(first.length, lost).toBeGreaterThanOrEqual(reached.first);
      expect(amongTwo.length, lost).toBeGreaterThanOrEqual(reached.among_two);
    });

    it("take few questions", () => {
      expect(questions(true)).toBeLessThanOrEqual(MOST_QUESTIONS.full);
      expect(questions(false)).toBeLessThanOrEqual(MOST_QUESTIONS.empty);
    });

    it("tell nothing that was judged unsafe", () => {
      expect(unsafe.length, unsafe.map(told).join("\n")).toBeLessThanOrEqual(reached.unsafe);
    });

    it("carry the needed cautions, no fewer than once reached", () => {
      expect(cases.flatMap(({ needs }) => needs).filter((need) => !evidence[need])).toEqual([]);
      expect(missing.length, missing.join("\n")).toBeLessThanOrEqual(reached.cautions_missing);
    });
  });

  afterAll(() => {
    const of = (some: readonly Row[], all: number): string => `${some.length} of ${all} (${((100 * some.length) / all).toFixed(1)} %)`;
    console.info(
      `${folder} cases: first ${of(first, rows.length)}, among two ${of(amongTwo, rows.length)}, questions ${questions(true)} full, ` +
        `${questions(false)} empty, unsafe ${unsafe.length}, cautions missing ${missing.length}`,
    );
  });
}
