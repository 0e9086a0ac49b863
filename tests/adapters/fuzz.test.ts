/**
 * Messages that mean no good, through every adapter's rendering: nothing falls over, nobody is called, no link or control character of theirs
 * works, every caution comes whole, nothing takes long. `GLEED_FUZZ` says how many; FUZZ.md says what was run and found.
 */
import { beforeAll, describe, expect, test } from "vitest";
import { answer, say, verbatim } from "../../src/answer.ts";
import { decide } from "../../src/conversation/decide.ts";
import { route } from "../../src/conversation/routing/route.ts";
import { least_ms, routed_ms, strung } from "../bench/routing.ts";
import { random } from "../simulation/random.ts";
import { loadMessages } from "../training/data.ts";
import { household, message, NOW_MS } from "./fuzz/household.ts";
import { LONGEST, PIECES } from "./fuzz/messages.ts";
import { fuzz, LIMIT_MS, openStage, type Stage } from "./fuzz/run.ts";
import { MOUTHS, unclean } from "./fuzz/mouths.ts";

const MESSAGES = Number(process.env.GLEED_FUZZ ?? 2_000);
const SEED = 1;
const READER = { locale: "en-GB", system: "metric", timezone: "UTC" } as const;

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});

test(`${MESSAGES} messages`, { timeout: 1_200_000 }, () => {
  const { messages, answers, wrong } = fuzz(stage, SEED, MESSAGES);
  expect(wrong).toEqual([]);
  expect(messages).toBe(MESSAGES);
  expect(answers).toBeGreaterThanOrEqual(messages);
});

test("every piece by itself, at every place of words, and as long as can be", { timeout: 120_000 }, () => {
  const long = random(2);
  for (const one of [...PIECES, ...Array.from({ length: 8 }, () => `${long.of(PIECES)} `.repeat(LONGEST).slice(0, LONGEST))]) {
    const shown = answer({
      topic: "help", headline: verbatim(one), cautions: ["co"],
      blocks: [
        say(verbatim(one)), say(verbatim(`a${one}b ${one} c`)), { kind: "quote", cautions: [], who: verbatim(one), words: verbatim(one) }, { kind: "steps", ordered: true, cautions: [], steps: [verbatim(one)] },
        { kind: "table", cautions: [], columns: [verbatim(one.slice(0, 60)), verbatim("b")], rows: [[verbatim(one.slice(0, 200)), verbatim(one)]] }, { kind: "choices", cautions: [], choices: [{ id: "x", label: verbatim(one) }] },
        { kind: "form", id: "set-heater", title: verbatim(one), cautions: [], fields: [{ key: "name", label: verbatim(one.slice(0, 200)), kind: "text", value: one.slice(0, 1_000).toWellFormed() }] },
      ],
    }, new Map([["co", { id: "co", text: verbatim("Carbon monoxide kills.") }]]));
    for (const columns of [16, 80]) {
      for (const mouth of Object.values(MOUTHS)) expect(mouth(shown, { render: stage.render, reader: READER }, { columns, colour: true }).look().wrong, JSON.stringify(one.slice(0, 80))).toEqual([]);
    }
  }
});

test("what was found once: a forged press writes nothing unchecked, and words that every object knows are words", () => {
  const owner = Array.from({ length: 50 }, (_, at) => household(random(at))).find(({ heaters }) => heaters.length > 0);
  if (!owner) throw new Error("nobody owns a heater");
  const press = (choice: string) => decide(stage, owner, message(owner, choice, NOW_MS, { choice }), NOW_MS).writes.filter(({ write }) => write === "heater");
  for (const forged of ["max_load_kg=900", "kind=castle", "toString=1", "__proto__=1"]) expect(press(`fact:${forged}`), forged).toEqual([]);
  expect(press("fact:gas_exit=low")).toHaveLength(1);
  expect(() => decide(stage, owner, message(owner, "x", NOW_MS, { text: "is constructor dry enough at 17 %? 3 constructor ago" }), NOW_MS)).not.toThrow();
});

test("what is looked for is found", () => {
  expect(unclean("a\u202Eb", "x")).toHaveLength(1);
  expect(unclean("a\u0007", "x")).toHaveLength(1);
  expect(unclean("\uD800", "x")).not.toEqual([]);
  expect(unclean(`a${"\u0301".repeat(9)}`, "x")).toHaveLength(1);
  expect(unclean("ä 👨‍👩‍👧 שלום\nx", "x")).toEqual([]);
});

describe("time grows no faster than the text", () => {
  const sentences = loadMessages().map(({ text }) => text);
  test("a message of 200 characters is routed in less than a millisecond, 99 times in 100", () => {
    expect(routed_ms(sentences, 300).p99).toBeLessThan(1);
  });

  test("ten times the text takes at most some fifteen times as long, to route it and to decide", () => {
    const nobody = household(random(4));
    const works = { route: (words: string) => route(words), decide: (words: string) => decide(stage, nobody, message(nobody, "x", NOW_MS, { text: words }), NOW_MS) };
    for (const work of Object.values(works)) {
      const [short, middle, long] = [200, 2_000, LONGEST].map((length) => least_ms(() => work(strung(sentences, 11, length)), 10)) as [number, number, number];
      expect(middle).toBeLessThan(15 * short + 2);
      expect(long).toBeLessThan(15 * middle + 2);
      expect(long).toBeLessThan(2 * LIMIT_MS);
    }
  });
});
