/** What the bench judges by. */
import { expect, it } from "vitest";
import { holds, type Line, median, taken } from "./measure.ts";

const line = (measured: number | null, is: Line["is"]): Line => ({ what: "x", measured, limit: 20, is, unit: "x" });

it("a limit is met from its own side; what could not be measured is no failure, and no success either", () => {
  expect([19, 20, 21].map((measured) => holds(line(measured, "at most")))).toEqual([true, true, false]);
  expect([19, 20, 21].map((measured) => holds(line(measured, "at least")))).toEqual([false, true, true]);
  expect(holds(line(Number.NaN, "at most"))).toBe(false);
  expect(holds(line(null, "at least"))).toBe(true);
});

it("takes the middle, whatever a busy moment added to one of the turns", async () => {
  expect(median([3, 1, 2])).toBe(2);
  expect(median([4, 1, 2, 3])).toBe(2.5);
  const [slow, fast] = [[10, 10, 90, 10, 10], [2, 2, 2, 50, 2]].map((list) => () => list.shift()!) as [() => number, () => number];
  expect(await taken(5, slow, fast, 0)).toEqual({ first_ms: 10, second_ms: 2, ratio: 0.2 });
});
