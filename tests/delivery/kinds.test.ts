import { expect, test } from "vitest";
import { fullJitter } from "../../src/delivery/backoff.ts";
import { KINDS } from "../../src/delivery/kinds.ts";
import { random } from "../simulation/random.ts";

test("every kind says why it is as it is", () => {
  for (const [kind, { why }] of Object.entries(KINDS)) expect(why.length, kind).toBeGreaterThan(30);
});

test("a check-in is never dropped: not for its fate, not for its age", () => {
  expect(KINDS["guide-check-in"]).toMatchObject({ unknown: "resend", late: "decide-again", spoils: true });
});

test("full jitter: between nothing and a ceiling that doubles up to the longest wait", () => {
  const { next } = random(7);
  for (let attempts = 1; attempts < 60; attempts++) {
    const ceiling = Math.min(300_000, 2000 * 2 ** (attempts - 1));
    const waits = Array.from({ length: 400 }, () => fullJitter(attempts, next, 300_000));
    expect(Math.min(...waits)).toBeGreaterThanOrEqual(1);
    expect(Math.max(...waits)).toBeLessThanOrEqual(ceiling);
    const mean = waits.reduce((sum, wait) => sum + wait, 0) / waits.length;
    expect(Math.abs(mean / ceiling - 0.5)).toBeLessThan(0.08);
  }
});
