import { describe, expect, test } from "vitest";
import { type Danger, emergencyCard, emergencyNumbers, emergencyText } from "../../src/emergency/index.ts";
import { KNOWN_COUNTRIES } from "../../src/emergency/numbers.ts";
import { KINDS } from "./messages.ts";

const SEVERAL = "112 in Europe and on most mobiles, 911 in North America, 999 in the UK, 000 in Australia, 111 in New Zealand";
const LANGUAGES = ["en", "de", "fi", "sv", "fr", "it", "es", "pl", "ru"];
const WORDS_PER_MINUTE = 150;
const SECONDS = 20;

const dangers: Danger[] = KINDS.flatMap((kind) =>
  (["sure", "possible"] as const).flatMap((certainty) =>
    [[], ...KINDS.filter((other) => other !== kind).map((other) => [other]), KINDS.filter((other) => other !== kind)].map((also) => ({
      kind, certainty, topic: "co-alarm", also,
    }))));

describe.each(LANGUAGES)("cards in %s", (language) => {
  const cards = dangers.map((danger) => ({ danger, card: emergencyCard(danger, { language }) }));

  test("what to do this minute is read aloud in under 20 seconds", () => {
    for (const { card } of cards) {
      const words = card.now.join(" ").split(/\s+/).length;
      expect((words / WORDS_PER_MINUTE) * 60, `${card.kind}: ${card.now.join(" ")}`).toBeLessThanOrEqual(SECONDS);
    }
  });

  test("the text begins with what to do; the question, if any, comes after", () => {
    for (const { card, danger } of cards) {
      const text = emergencyText(card);
      expect(text.startsWith(card.headline)).toBe(true);
      expect(text.indexOf(card.now[0] ?? "?")).toBeGreaterThan(0);
      expect(card.headline.includes("?")).toBe(false);
      if (danger.certainty === "sure") expect(card.question).toBeNull();
      else expect(text.indexOf(card.question ?? "?")).toBeGreaterThan(text.indexOf(card.now.at(-1) ?? "?"));
      expect(text).toContain(card.numbers);
      const cautions = card.cautions.map((caution) => caution.text);
      for (const part of [...card.now, ...card.never, ...card.afterwards, ...cautions]) expect(text).toContain(part);
    }
  });

  test("no card is without its caution", () => {
    for (const { card } of cards) {
      expect(card.cautions.length).toBeGreaterThan(0);
      for (const { id, text } of card.cautions) expect(text).not.toBe(id);
    }
  });

  test("no card tells anyone to shut a flue damper, open a fire door or use water on a fire", () => {
    for (const { card } of cards) {
      for (const sentence of [card.headline, ...card.now, ...card.afterwards, card.question ?? ""].join(". ").split(/[.:;]/)) {
        expect(sentence).not.toMatch(/\b(shut|close|push in)\b.*\b(damper|flue|slide|plate)\b/i);
        expect(sentence).not.toMatch(/(Abgas|Schieber).*(schließen|zuschieben)|(schließe|schiebe).*(Abgas|Schieber)/i);
        expect(sentence).not.toMatch(/^(?!.*\b(not|never|nicht|nie)\b).*\bopen the (fire|heater's) door\b/i);
        expect(sentence).not.toMatch(/^(?!.*\b(not|never|no|keine?|nicht)\b).*\b(pour|throw) water\b/i);
      }
    }
  });

  test("says which language it is in", () => {
    for (const { card } of cards) expect(card.language).toBe(language);
  });
});

describe("orders that must not change", () => {
  const order = (kind: Danger["kind"], ...steps: RegExp[]): void => {
    const now = emergencyCard({ kind, certainty: "sure", topic: "", also: [] }, {}).now.join(" ");
    const places = steps.map((step) => now.search(step));
    expect(places.every((place) => place >= 0), now).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  };

  test("gas: out, the door left open, the call from outside, no way back", () => {
    order("co-alarm", /out/, /door open/, /call from outside/, /Stay out/);
  });
  test("chimney fire: the call, out, only then and only if safe the door and air; the damper left", () => {
    order("chimney-fire", /Call the fire service/, /people and pets out/, /Only if safe/, /Leave the flue damper as it is/);
  });
  test("flue shut over embers: ill or alarm out; room empty, window, flue, wait, air", () => {
    order("damper-over-embers",
      /ill: everyone out/, /out of the room/, /window open/, /damper first/, /Wait two minutes/, /then open the air/);
  });
  test("burn: cool running water for 20 minutes", () => {
    order("burn", /Cool running water/, /20 minutes/);
  });
  test("back-puff: clear, the door left, the air slowly", () => {
    order("back-puff", /clear/, /Do not open it/, /air slowly/);
  });
});

describe("numbers", () => {
  test("the country's, else the setting's, else several together", () => {
    const danger: Danger = { kind: "co-alarm", certainty: "sure", topic: "co-alarm", also: [] };
    expect(emergencyCard(danger, { country: "FI", fallback_country: "US" }).numbers).toContain("112");
    expect(emergencyCard(danger, { country: null, fallback_country: "us" }).numbers).toContain("911");
    expect(emergencyCard(danger, { country: "XX", fallback_country: "NZ" }).numbers).toContain("111");
    expect(emergencyCard(danger, {}).numbers).toContain(SEVERAL);
    expect(emergencyNumbers()).toBe(SEVERAL);
    expect(emergencyNumbers("??")).toBe(SEVERAL);
  });

  // Public numbers as in the handbook: 112 EU, 999/112 UK and Ireland, 911 North America, 111 New Zealand, 000 Australia,
  // 101/112 Russia, 119 Japan and Korea (from memory of public numbers).
  test.each([
    ["DE", "112"], ["GB", "999"], ["IE", "999"], ["US", "911"], ["CA", "911"], ["NZ", "111"], ["AU", "000"], ["RU", "101"], ["JP", "119"],
    ["KR", "119"],
    ["NO", "110"], ["CH", "118"],
  ])("%s", (country, number) => {
    expect(emergencyNumbers(country)).toContain(number);
  });

  test("at least 60 countries, each of two letters, each once", () => {
    expect(KNOWN_COUNTRIES.length).toBeGreaterThanOrEqual(60);
    for (const country of KNOWN_COUNTRIES) expect(country).toMatch(/^[A-Z]{2}$/);
  });
});
