import { describe, expect, it } from "vitest";
import { differences, figures, type Kind, type Row } from "./row.ts";
import { type Load, ROWS, evaluate } from "./rows.ts";

const shipped: Load = (path) => import(/* @vite-ignore */ new URL(`../../src/${path}`, import.meta.url).href);
const all = Object.values(ROWS).flat();
const count = (rows: readonly Row[]): number => rows.reduce((sum, row) => sum + figures(row), 0);

describe.each(Object.entries(ROWS))("published values: %s", (_, rows) => {
  it.each(rows.map((row) => [`${row.of} ${JSON.stringify(row.inputs).slice(0, 90)} (${row.source})`, row] as const))(
    "%s",
    async (_name, row) => {
      expect(differences(row, await evaluate(row, shipped))).toEqual([]);
    },
  );
});

describe("the collection", () => {
  it("holds at least 200 values, five for each calculator", () => {
    expect(count(all)).toBeGreaterThanOrEqual(200);
    for (const [calculator, rows] of Object.entries(ROWS)) expect(count(rows), calculator).toBeGreaterThanOrEqual(5);
  });

  it("rests at most half on equilibrium-moisture cells and frozen library results", () => {
    const frozen: readonly Kind[] = ["emc-cell", "library"];
    expect(count(all.filter((row) => frozen.includes(row.kind)))).toBeLessThanOrEqual(count(all) / 2);
  });

  it("names a source and a tolerance at each row", () => {
    for (const row of all) {
      expect(row.source.length, row.of).toBeGreaterThan(10);
      expect(row.abs ?? row.rel, row.source).toBeGreaterThan(0);
    }
  });
});
