import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { recogniseDanger } from "../../src/emergency/index.ts";
import { DANGER, KINDS, NEAR_MISSES } from "./messages.ts";

const texts = DANGER.map(({ text }) => text);
/** A cry of a word or two ("smoke!!!") is read as one only while it stands alone. */
const sentences = texts.filter((text) => text.split(" ").length > 3);

function fullWidth(char: string): string {
  return char > " " && char < "~" ? String.fromCharCode(char.charCodeAt(0) + 0xfee0) : char;
}

function missed(messages: readonly string[]): string[] {
  return messages.filter((text) => recogniseDanger(text) === null);
}

describe("the development set", () => {
  test("is large enough to mean something and holds every kind", () => {
    expect(DANGER.length).toBeGreaterThanOrEqual(400);
    expect(NEAR_MISSES.length).toBeGreaterThanOrEqual(300);
    for (const kind of KINDS) expect(DANGER.filter((each) => each.kind === kind).length, kind).toBeGreaterThanOrEqual(20);
  });

  test("no danger now is missed", () => {
    expect(missed(texts)).toEqual([]);
  });

  test("the emergency itself is answered, first or among others, in 98 of 100", () => {
    const other = DANGER.filter(({ text, kind }) => {
      const danger = recogniseDanger(text);
      return danger && danger.kind !== kind && !danger.also.includes(kind);
    });
    expect(other.length / DANGER.length, JSON.stringify(other)).toBeLessThanOrEqual(0.02);
  });

  test("at most 2 % of near misses raise an alarm", () => {
    const raised = NEAR_MISSES.filter(({ text }) => recogniseDanger(text) !== null);
    expect(raised.length / NEAR_MISSES.length, JSON.stringify(raised)).toBeLessThanOrEqual(0.02);
  });
});

describe("however it is written", () => {
  test.each([
    ["shouted", (text: string) => text.toUpperCase()],
    ["without marks", (text: string) => text.normalize("NFD").replaceAll(/\p{M}/gu, "")],
    ["zero-width characters between letters", (text: string) => [...text].join("\u200b")],
    ["right-to-left marks around", (text: string) => `\u202e${text}\u202c`],
    ["full-width letters", (text: string) => [...text].map(fullWidth).join("")],
    ["a laugh behind it", (text: string) => `${text} lol`],
    ["an emoji behind it", (text: string) => `${text} 😅🔥`],
    ["no closing marks, spaces doubled", (text: string) => text.replaceAll(" ", "  ").replace(/[.!?]+$/, "")],
  ])("%s", (_name, change) => {
    expect(missed(sentences.map(change))).toEqual([]);
  });

  test("a greeting before, and a rambling tail after, hide nothing", () => {
    expect(missed(sentences.map((text) => `Hi all. ${text}`))).toEqual([]);
    expect(missed(sentences.map((text) => `${text}. The wood is birch, split in spring and stacked under the roof.`))).toEqual([]);
  });

  test("letters for digits", () => {
    expect(missed(["the c0 al4rm is b33ping", "$moke is f1lling the r00m", "ch1mney f1re", "we all feel d1zzy"])).toEqual([]);
  });

  test("two neighbouring letters swapped in one long word: 95 of 100 still read", () => {
    const swapped = texts.map((text) => {
      const words = text.split(" ");
      const long = words.findIndex((word) => /^[a-z]{6,}$/.test(word));
      const word = words[long];
      if (word === undefined) return text;
      words[long] = word.slice(0, 2) + word.charAt(3) + word.charAt(2) + word.slice(4);
      return words.join(" ");
    });
    expect(missed(swapped).length / swapped.length).toBeLessThanOrEqual(0.05);
  });
});

describe("what it is told apart from", () => {
  test.each([
    ["CO alarm beeping, nobody feels ill", "sure", "co-alarm"],
    ["everyone has a headache, no alarm", "possible", "co-alarm"],
    ["shut the damper last night and now we feel ill", "sure", "co-alarm"],
    ["I shut the slide while it still glowed", "sure", "damper-over-embers"],
    ["alarm chirps every minute", "possible", "co-alarm"],
    ["the damper is stuck shut and the fire is lit", "sure", "damper-over-embers"],
  ] as const)("%s", (text, certainty, kind) => {
    const danger = recogniseDanger(text);
    expect(danger?.kind).toBe(kind);
    if (certainty === "sure") expect(danger?.certainty).toBe("sure");
  });

  test("a chirp a minute with everyone well is a battery", () => {
    expect(recogniseDanger("alarm chirps once every minute, nobody feels ill")).toBeNull();
  });

  test("a stuck damper over a fire keeps its topic", () => {
    expect(recogniseDanger("damper stuck shut and the fire is lit")?.topic).toBe("stuck-damper");
  });

  test("old news is not danger, the same words now are", () => {
    expect(recogniseDanger("last winter we had a chimney fire")).toBeNull();
    expect(recogniseDanger("last winter we had a chimney fire. Now it roars like a train in the flue and sparks come out of the top"))
      .toMatchObject({ kind: "chimney-fire" });
  });
});

describe("a circumstance does not hide what is told of now", () => {
  test.each([
    "I tested the alarm last week and now it's going off",
    "the alarm is not a test, it's sounding",
    "battery is new and it still beeps four times",
    "should I test the co alarm, it's going off",
    "what if it's a chimney fire, there are sparks coming out of the top and it roars",
    "last year we had CO, and tonight everyone has a headache again",
    "it usually draws well but today the room is full of smoke",
    "I never had this before, the chimney is roaring like a jet",
    "it's probably a false alarm but the CO detector is beeping",
    "no smoke but the CO alarm is screaming",
    "which number do I call, the chimney is on fire",
    "what's the emergency number, our chimney is burning",
    "how do I turn off the co alarm, it won't stop",
    "if I close the damper the alarm goes off",
    "kids were ill last week and today they're dizzy by the stove",
    "I closed the damper with embers as always, but now my head hurts",
    "can I close the damper? the room is full of smoke",
    "I'm not kidding the chimney is on fire",
    "just wondering, the co alarm has been sounding for an hour",
  ])("%s", (text) => {
    expect(recogniseDanger(text)).not.toBeNull();
  });
});

test("never throws, and says only what it may", () => {
  const words = fc.constantFrom(...texts.join(" ").split(" "), "\u0000", "\ud800", "<@123>", "![](x)", "\u202e", "💀");
  const anything = fc.oneof(fc.string({ unit: "binary" }), fc.string({ unit: "grapheme" }), fc.array(words).map((each) => each.join(" ")));
  fc.assert(fc.property(anything, (text) => {
    const danger = recogniseDanger(text);
    if (danger === null) return;
    expect(KINDS).toContain(danger.kind);
    expect(danger.also).not.toContain(danger.kind);
    expect(new Set(danger.also).size).toBe(danger.also.length);
  }), { numRuns: 3000, seed: 20261125 });
});
