import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyText } from "./any-text.ts";
import { readAmounts } from "../../../src/conversation/reading/amounts.ts";
import { readCorrection } from "../../../src/conversation/reading/corrections.ts";
import { readYesNo } from "../../../src/conversation/reading/yes-no.ts";

describe("yes, no, don't know", () => {
  test.each(["yes", "Yes.", "y", "yep", "yup!", "yeah", "aye", "sure thing", "of course", "correct", "ok", "👍", "👍🏽", "✅", "yes please",
    "yes since Tuesday", "ja", "Jawohl", "joo", "kyllä", "japp", "oui", "bien sûr", "sì", "sí", "claro", "tak", "да", "конечно", "uh huh",
    "it has", "ye\u200bs"])("yes: %s", (text) => expect(readYesNo(text)).toBe("yes"));
  test.each(["no", "No!", "nope", "nah", "not yet", "not really", "no way", "👎", "❌", "never", "it isn't", "I don't think so",
    "no thanks", "nein", "noch nicht", "ei", "ei ole", "nej", "inte", "non", "pas encore", "todavía no", "nie", "jeszcze nie", "нет",
    "неа", "no, it is a bell"])("no: %s", (text) => expect(readYesNo(text)).toBe("no"));
  test.each(["don't know", "dunno", "idk", "no idea", "not sure", "I'm not sure", "maybe", "can't tell", "hard to say", "🤷", "🤷‍♀️", "?",
    "weiß nicht", "keine Ahnung", "en tiedä", "vet inte", "je ne sais pas", "non lo so", "no sé", "quizás", "nie wiem", "не знаю",
    "yes but not yet", "yes?", "almost yes", "yes and no", "yes, I mean no", "да, но не сейчас"])("unknown: %s", (text) =>
    expect(readYesNo(text)).toBe("unknown"));
  test.each(["the glass is black", "12 kg", "how much wood tonight", "", "   ", "birch", "why no flames", "log 12 kg", "the yes man",
    "18:10"])("no answer: %s", (text) => expect(readYesNo(text)).toBeNull());
});

describe("corrections", () => {
  test.each([
    ["no, 14 not 40", "14", "40"], ["14 not 40", "14", "40"], ["no, 14 kg, not 40", "14 kg", "40"], ["not 40 but 14", "14", "40"],
      ["not birch, oak", "oak", "birch"], ["it's birch not oak", "birch", "oak"], ["14 instead of 40", "14", "40"],
    ["sorry I meant spruce", "spruce", undefined], ["Sorry, I meant spruce.", "spruce", undefined],
      ["I meant yesterday", "yesterday", undefined], ["make that 12 kg", "12 kg", undefined], ["actually 15", "15", undefined],
      ["oops 18:30", "18:30", undefined],
    ["no -12", "-12", undefined], ["correction: 13,5 kg", "13,5 kg", undefined], ["no wait, fourteen", "fourteen", undefined],
      ["typo, 17 %", "17 %", undefined], ["that should be lb", "lb", undefined],
  ] as const)("%s", (text, to, from) => expect(readCorrection(text)).toMatchObject({ kind: "correction", to,
    ...(from === undefined ? {} : { from }) }));
  test.each(["no", "no thanks", "no, the glass is black", "the fire is not hot", "why does it smoke", "glass not clear", "",
    "12 kg birch", "not yet", "no fire today", "actually how much wood do I need for tonight", "the damper is not closed"])("none: %s",
    (text) => expect(readCorrection(text)).toBeNull());
  test("where the right words stand", () => {
    const text = "no, 14 not 40";
    expect(text.slice(...readCorrection(text)!.to_at)).toBe("14");
  });
});

describe("measures of the hand", () => {
  test.each([
    ["one basket", 1, "basket"], ["a basket", 1, "basket"], ["two baskets", 2, "basket"], ["2.5 baskets", 2.5, "basket"],
      ["half a basket", 0.5, "basket"], ["a basket and a half", 1.5, "basket"], ["two big baskets of birch", 2, "basket"],
      ["twelve splits", 12, "split"], ["12 logs", 12, "split"],
    ["six big pieces", 6, "split"], ["to the mark", 1, "mark"], ["filled up to the line", 1, "mark"],
      ["halfway to the mark", 0.5, "mark"], ["two armfuls", 2, "armful"], ["an armload", 1, "armful"], ["a dozen splits", 12, "split"],
      ["3 baskets full", 3, "basket"],
  ] as const)("%s", (text, count, measure) => expect(readAmounts(text)).toMatchObject([{ count, measure }]));
  test("a range keeps both ends", () => expect(readAmounts("3 or 4 logs")).toMatchObject([{ count: 3.5, low: 3, high: 4,
    measure: "split" }]));
  test.each(["16 in logs", "a log entry", "12 kg", "from 6 to the evening", "to the chimney"])("none in: %s", (text) =>
    expect(readAmounts(text)).toEqual([]));
});

test("never throws", () => {
  const piece = fc.constantFrom("no", "not", "14", "40", ",", "sorry", "I meant", "yes", "but", "-", "👍", "\ud83d", "half", "a", "basket",
    "to the mark", "instead of", "?", "\u200b");
  fc.assert(
    fc.property(fc.oneof(anyText(60), fc.array(piece, { maxLength: 15 }).map((parts) => parts.join(" "))), (text) => {
      readYesNo(text);
      readAmounts(text);
      const correction = readCorrection(text);
      if (correction) expect(text.slice(...correction.to_at)).toBe(correction.to);
    }),
    { seed: 10, numRuns: 1000 },
  );
});
