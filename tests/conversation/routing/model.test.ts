import { readFileSync, statSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { read } from "../../../src/conversation/routing/features.ts";
import { loadModel, VECTORS_FILE, WEIGHTS_FILE, type WeightsHeader } from "../../../src/conversation/routing/model.ts";
import { unpack } from "../../../src/conversation/routing/pack.ts";
import { TOPICS } from "../../../src/conversation/topics.ts";
import { loadMessages, loadWords } from "../../training/data.ts";

describe("the shipped model", () => {
  const { header } = unpack<WeightsHeader>(readFileSync(WEIGHTS_FILE));

  it("was trained for the topics of today", () => expect(header.topics).toEqual(TOPICS));

  it("was trained from the words file of today (else: npm run train)", () => {
    const { senses, spellings } = loadWords();
    expect(header.lexicon.senses).toEqual(Object.fromEntries(senses));
    expect(header.lexicon.spellings).toEqual(Object.fromEntries(spellings));
  });

  it("is small enough to ship", () => {
    expect(statSync(WEIGHTS_FILE).size + statSync(VECTORS_FILE).size).toBeLessThan(3_000_000);
  });

  it("knows what is meant by slips and regional words", () => {
    const { lexicon } = loadModel();
    expect(lexicon.entry("chimny").word).toBe("chimney");
    expect(lexicon.entry("dampper").word).toBe("damper");
    expect(lexicon.entry("glass").word).toBe("glass");
    expect(lexicon.entry("piano").word).toBe("piano");
    const senses = (text: string): number[] => {
      const found: number[] = [];
      lexicon.sensesAt(text.split(" ").map((word) => lexicon.entry(word).stem), 0, found);
      return found;
    };
    expect(senses("pane")[0]).toBe(senses("glass")[0]);
    expect(senses("spjall")[0]).toBe(senses("damper")[0]);
    expect(senses("lum")[0]).toBe(senses("chimney")[0]);
    expect(read("", lexicon).wordCount).toBe(0);
  });
});

describe("the training messages", () => {
  const messages = loadMessages();

  it("are many, of every topic, half of them oblique, and none twice", () => {
    expect(messages.length).toBeGreaterThanOrEqual(2500);
    for (const topic of TOPICS) {
      const own = messages.filter((message) => message.topic === topic);
      expect(own.length, topic).toBeGreaterThanOrEqual(40);
    }
    const inScope = messages.filter(({ topic }) => topic !== "out-of-scope");
    expect(inScope.filter(({ style }) => style === "oblique").length / inScope.length).toBeGreaterThan(0.5);
    expect(messages.length - inScope.length).toBeGreaterThanOrEqual(350);
    expect(new Set(messages.map(({ text }) => text.toLowerCase())).size).toBe(messages.length);
  });
});
