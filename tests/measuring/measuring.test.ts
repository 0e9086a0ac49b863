import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { isTopic, TOPICS } from "../../src/topics.ts";

const read = (name: string) => readFileSync(new URL(name, import.meta.url), "utf8");

function lines<Line>(name: string, line: z.ZodType<Line>): Line[] {
  return read(name).trimEnd().split("\n").map((text) => line.parse(JSON.parse(text)));
}

const text = z.string().min(1);
const topic = z.string().refine(isTopic, "an id of the contract");
const kind = z.enum(["co-alarm", "chimney-fire", "room-smoke", "hot-ash", "burn", "damper-over-embers", "back-puff"]);
const style = z.enum(["plain", "oblique", "regional", "rambling", "terse", "non-native", "numbers", "voice-dictated"]);

/** The units each dimension may be labelled with; `week`, `month` and `year` are durations as people say them. */
const UNITS_OF: Record<string, readonly string[]> = {
  mass: ["kg", "g", "t", "lb"],
  volume: ["m3", "cord", "ft3", "l"],
  length: ["m", "cm", "mm", "ft", "in"],
  temperature: ["C", "F"],
  share: ["pct"],
  duration: ["min", "h", "day", "week", "month", "year"],
  money: ["EUR", "USD", "GBP", "CHF", "SEK", "NZD"],
};

const figure = z.strictObject({
  dimension: z.string(),
  value: z.number(),
  unit: z.string(),
  basis: z.enum(["wet", "dry"]).nullable(),
  low: z.number().optional(),
  high: z.number().optional(),
});

function setOf(prefix: "" | "de-") {
  return {
    topics: lines(`${prefix}topics.jsonl`, z.strictObject({ text, topic, also: z.array(topic), hazard: z.boolean(), style })),
    danger: lines(`${prefix}danger.jsonl`, z.strictObject({ text, kind, oblique: z.boolean() })),
    nearMisses: lines(`${prefix}near-misses.jsonl`, z.strictObject({ text, why: text })),
    quantities: lines(`${prefix}quantities.jsonl`, z.strictObject({ text, expect: z.array(figure).min(1) })),
    ownWords: z.strictObject({ topics: z.record(z.string(), z.array(z.string())), kinds: z.record(kind, z.array(z.string())) })
      .parse(JSON.parse(read(`${prefix}own-words.json`))),
  };
}

const { topics, danger, nearMisses, quantities, ownWords } = setOf("");
const german = setOf("de-");

const countOf = (id: string) => topics.filter((line) => line.topic === id).length;
const share = (part: number, whole: number) => part / whole;
const holdsOneOf = (words: readonly string[], message: string) =>
  words.find((word) => new RegExp(`(?<!\\p{L})(?:${word})`, "u").test(message.toLowerCase()));

describe("the measuring set", () => {
  it("holds the promised number of messages", () => {
    expect(topics.length).toBeGreaterThanOrEqual(720);
    expect(danger).toHaveLength(300);
    expect(nearMisses).toHaveLength(200);
    expect(quantities.length).toBeGreaterThanOrEqual(240);
  });

  it("covers every topic nine times or more and out of scope a hundred and ten times", () => {
    expect(TOPICS.filter((id) => countOf(id) < 9)).toEqual([]);
    expect(countOf("out-of-scope")).toBeGreaterThanOrEqual(110);
  });

  it("names a second topic only where it differs from the first", () => {
    expect(topics.filter((line) => line.also.includes(line.topic)).map((line) => line.text)).toEqual([]);
  });

  it("is oblique for a third of the messages, and for half of the dangers", () => {
    const inScope = topics.filter((line) => line.topic !== "out-of-scope");
    const oblique = (all: typeof topics) => all.filter((line) => line.style === "oblique").length;
    expect(share(oblique(topics), topics.length)).toBeGreaterThanOrEqual(1 / 3);
    expect(share(oblique(inScope), inScope.length)).toBeGreaterThanOrEqual(1 / 3);
    expect(share(danger.filter((line) => line.oblique).length, danger.length)).toBeGreaterThanOrEqual(1 / 2);
  });

  it("uses none of the topic's own words in an oblique message", () => {
    const inScope = topics.filter((line) => line.style === "oblique" && line.topic !== "out-of-scope");
    const words = (id: string) => ownWords.topics[id] ?? [];
    expect(inScope.filter((line) => words(line.topic).length === 0)).toEqual([]);
    expect(inScope.filter((line) => holdsOneOf(words(line.topic), line.text)).map((line) => line.text)).toEqual([]);
    const oblique = danger.filter((line) => line.oblique);
    expect(oblique.filter((line) => holdsOneOf(ownWords.kinds[line.kind] ?? [], line.text)).map((line) => line.text)).toEqual([]);
  });

  it("holds no text twice, in whatever case or punctuation", () => {
    const seen = new Set<string>();
    const twice = [topics, danger, nearMisses, quantities].flat().map((line) => line.text).filter((message) => {
      const bare = message.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, " ").trim() || message;
      return seen.size === seen.add(bare).size;
    });
    expect(twice).toEqual([]);
  });

  it("gives every figure a unit of its dimension, a basis only to shares, and low and high in order around the value", () => {
    const wrong = [...quantities, ...german.quantities].filter(({ expect: figures }) => figures.some((it) =>
      !UNITS_OF[it.dimension]?.includes(it.unit)
      || (it.basis !== null && it.dimension !== "share")
      || (it.low ?? it.value) > it.value || (it.high ?? it.value) < it.value));
    expect(wrong).toEqual([]);
  });

  it("is the set whose hashes the README states", () => {
    const readme = read("README.md");
    const names = ["topics.jsonl", "danger.jsonl", "near-misses.jsonl", "quantities.jsonl"];
    for (const name of [...names, ...names.map((english) => `de-${english}`)]) {
      const hash = createHash("sha256").update(read(name)).digest("hex");
      expect(readme).toContain(`| \`${name}\` | \`${hash}\` |`);
    }
  });
});

describe("the German measuring set", () => {
  const inScope = german.topics.filter((line) => line.topic !== "out-of-scope");
  const oblique = inScope.filter((line) => line.style === "oblique");
  const obliqueDanger = german.danger.filter((line) => line.oblique);

  it("holds the promised number of messages: four or more for each topic, sixty out of scope", () => {
    expect([german.topics, german.danger, german.nearMisses, german.quantities].map((all) => all.length)).toEqual([330, 120, 100, 100]);
    expect(TOPICS.filter((id) => german.topics.filter((line) => line.topic === id).length < 4)).toEqual([]);
    expect(german.topics.length - inScope.length).toBe(60);
    expect(german.topics.filter((line) => line.also.includes(line.topic))).toEqual([]);
  });

  it("is oblique for two fifths of the messages in scope, and for half of the dangers", () => {
    expect(share(oblique.length, inScope.length)).toBeGreaterThanOrEqual(2 / 5);
    expect(share(obliqueDanger.length, german.danger.length)).toBeGreaterThanOrEqual(1 / 2);
  });

  it("uses none of the topic's own words in an oblique message, not even inside a compound", () => {
    const holds = (words: readonly string[] | undefined, message: string) =>
      words === undefined || words.length === 0 || words.some((word) => new RegExp(word, "u").test(message.toLowerCase()));
    expect(oblique.filter((line) => holds(german.ownWords.topics[line.topic], line.text)).map((line) => line.text)).toEqual([]);
    expect(obliqueDanger.filter((line) => holds(german.ownWords.kinds[line.kind], line.text)).map((line) => line.text)).toEqual([]);
  });

  it("holds no text twice, in whatever case or punctuation", () => {
    const bare = [german.topics, german.danger, german.nearMisses, german.quantities].flat()
      .map((line) => line.text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, " ").trim());
    expect(bare.filter((message, at) => bare.indexOf(message) !== at)).toEqual([]);
  });
});
