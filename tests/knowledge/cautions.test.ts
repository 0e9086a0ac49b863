/** Every caution in every language that is spoken: none missing, none with other figures, none cut short. */
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { loadKnowledge } from "../../src/knowledge/load.ts";
import { loadCatalogues } from "../../src/text/catalogues.ts";
import { cautionsTable } from "./cautions-table.ts";
import { figuresOf } from "./figures-of.ts";

const knowledge = await loadKnowledge(fileURLToPath(new URL("../../knowledge", import.meta.url)));
const catalogues = await loadCatalogues();
const languages = [...knowledge.texts.keys()].filter((language) => language !== "en");
const ids = Object.keys(knowledge.cautionEntries);
const EVERY = languages.flatMap((language) => ids.map((id) => [language, id] as const));

/** What a caution forbids, in English and German: as many prohibitions there as here. */
const PROHIBITS: Readonly<Record<string, RegExp>> = {
  en: /\b(never|no|not|nobody|nothing|do not|don't|without|stays open|off)\b/gi,
  de: /(?<!\p{L})(nie|niemals|kein|keine|keinen|keinem|keiner|nicht|niemand|nichts|ohne|bleibt offen|aus)(?!\p{L})/giu,
};

it("German is spoken", () => expect(languages).toContain("de"));

describe.each(EVERY)("%s: %s", (language, id) => {
  const english = knowledge.cautionEntries[id]?.say ?? "";
  const own = knowledge.texts.get(language)?.get(`caution.${id}`) ?? "";
  it("is there", () => expect(own.length).toBeGreaterThan(10));
  it("has the same figures and units", () => expect(figuresOf(own)).toEqual(figuresOf(english)));
  it("is not cut short", () => expect(own.length).toBeGreaterThan(english.length * 0.75));
  it("forbids what English forbids", () => {
    if ((english.match(PROHIBITS.en as RegExp) ?? []).length > 0) expect((own.match(PROHIBITS[language] as RegExp) ?? []).length).toBeGreaterThan(0);
  });
});

it("the label that stands before every caution is there too", () => {
  for (const language of languages) for (const id of ["adapter.caution", "adapter.caution-continued"]) expect(catalogues.get(language)?.has(id), `${id} in ${language}`).toBe(true);
});

it("can be read side by side, none missing", () => {
  for (const language of languages) {
    const table = cautionsTable(knowledge, language);
    expect(table.split("\n").filter((line) => line.startsWith("| ")).length).toBe(ids.length + 1);
    expect(table).not.toContain("(missing)");
  }
});

describe("figures of a sentence", () => {
  it.each([
    ["no flame for ten minutes, 3 metres away", "zehn Minuten keine Flamme, drei Meter entfernt"],
    ["150 to 350 °C, a metre away", "150 bis 350 °C, einen Meter entfernt"],
    ["four days, 0.5 hours, a half", "vier Tage, 0,5 Stunden, die Hälfte"],
  ])("%s = %s", (english, german) => expect(figuresOf(german)).toEqual(figuresOf(english)));
  it("tells a wrong figure", () => expect(figuresOf("zehn Minuten")).not.toEqual(figuresOf("two minutes")));
});
