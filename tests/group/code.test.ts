import { expect, test } from "vitest";
import { codeFor, codesIn, isCode, linkCode, linkCodesIn, linkShown } from "../../src/group/code.ts";
import { sumOf } from "../../src/group/order.ts";

test("codes hold no sign that is mistaken for another, and are found however they are written", () => {
  const codes = Array.from({ length: 3000 }, (_, n) => codeFor(`cause ${n}`, []));
  for (const code of codes) expect(code).toMatch(/^[A-Z]\d[A-Z]\d$/);
  expect(codes.join("")).not.toMatch(/[0158BILOQSUVZ]/);
  expect(codes.every(isCode)).toBe(true);
  expect(new Set(codes).size).toBeGreaterThan(2000);
  expect(codesIn("K7M2 on my heater, and k7m3? not XK7M2, K7M2X, 12 kg, M25 or B8B8")).toEqual(["K7M2", "K7M3"]);
  expect(codesIn("K7M2 ".repeat(500))).toEqual(["K7M2"]);
});

test("the same cause makes the same code; one in use is passed over, until none is left", () => {
  expect(codeFor("x", [])).toBe(codeFor("x", []));
  const used: string[] = [];
  for (let n = 0; n < 300; n++) used.push(codeFor("x", used));
  expect(new Set(used).size).toBe(300);
  const all = [..."ACDEFGHJKMNPRTWXY"].flatMap((a) => [..."234679"].flatMap((b) => [..."ACDEFGHJKMNPRTWXY"].flatMap((c) => [..."234679"].map((d) => a + b + c + d))));
  const last = all.pop() ?? "";
  expect(codeFor("x", all)).toBe(last);
  expect(() => codeFor("x", [...all, last])).toThrow(RangeError);
});

test("a linking code is read with and without its hyphen, and spreads over all there are", () => {
  const code = linkCode("00ff17aa93bc44d15ee2");
  expect(linkShown(code)).toMatch(/^[A-Z]\d[A-Z]\d-[A-Z]\d[A-Z]\d$/);
  for (const written of [`link ${linkShown(code)}`, `link ${code.toLowerCase()}`]) expect(linkCodesIn(written)).toEqual([code]);
  expect(linkCodesIn(`X${code} ${code}X`)).toEqual([]);
  expect(new Set(Array.from({ length: 500 }, (_, n) => linkCode(`${n}9e3779b97f4a7c15`))).size).toBe(500);
});

test("an order is summed line by line; one without a weight is counted", () => {
  const line = { volume_m3_solid: 0.62, volume_m3_stacked: 1, dry_kg: 325.5, low_kg: 258, high_kg: 421 };
  expect(sumOf([line, { ...line, dry_kg: null, low_kg: null, high_kg: null }, line])).toEqual({ volume_m3_solid: expect.closeTo(1.86, 9), volume_m3_stacked: 3, dry_kg: 651, low_kg: 516, high_kg: 842, unweighed: 1 });
  expect(sumOf([])).toMatchObject({ volume_m3_solid: 0, unweighed: 0 });
});
