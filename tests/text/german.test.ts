/** The German catalogues against the English ones: the same ids, the same values taken, and every message renders. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readAlarms, readFire, readHeater, readHouse, readUnits, readWeather, readWood } from "../../src/conversation/reading/records.ts";
import { placeholders } from "../../src/knowledge/translation.ts";
import { readRecords } from "../../src/records/read.ts";
import { sentencesIn } from "../../src/text/sentences.ts";
import { q } from "../../src/quantities.ts";
import { loadCatalogues, SENTENCE } from "../../src/text/catalogues.ts";
import { renderer, type Reader } from "../../src/text/render.ts";

const FOLDER = fileURLToPath(new URL("../../src/text/", import.meta.url));
const catalogues = await loadCatalogues();
const english = catalogues.get("en") ?? new Map<string, string>();
const all = catalogues.get("de") ?? new Map<string, string>();
const german = new Map([...all].filter(([id]) => !id.startsWith(SENTENCE)));
const GERMAN: Reader = { locale: "de-DE", system: "metric", timezone: "Europe/Berlin" };

describe("the German catalogues", () => {
  it("have a file for each English one", () => {
    const files = readdirSync(FOLDER).filter((name) => name.endsWith(".yaml"));
    const wanted = files.filter((name) => /(^|\.)en\.yaml$/.test(name)).map((name) => name.replace(/en\.yaml$/, "de.yaml"));
    expect(wanted.filter((name) => !files.includes(name))).toEqual([]);
  });
  it("say everything in German; what is missing is said in English", () => {
    // a sentence just written may wait a little; a whole file may not
    const missing = [...english.keys()].filter((id) => !german.has(id));
    expect(missing.length / english.size, missing.join(", ")).toBeLessThan(0.02);
  });
  it("say nothing that English does not", () => expect([...german.keys()].filter((id) => !english.has(id))).toEqual([]));
  it("take the same values", () => {
    expect([...german].filter(([id, words]) => english.has(id) && placeholders(words) !== placeholders(english.get(id) ?? "")).map(([id]) => id)).toEqual([]);
  });
  it("are German: hardly a sentence stands there in English", () => {
    const same = [...german].filter(([id, words]) => words === english.get(id) && words.replace(/\{[^}]*\}/g, " ").split(/[^\p{L}]+/u).filter((word) => word.length > 2).length > 2);
    expect(same.map(([id]) => id)).toEqual([]);
  });
});

it("no id stands in two files of a language: the later one would silently take its place", () => {
  for (const language of ["en", "de"]) {
    const seen = new Map<string, string>();
    for (const file of readdirSync(FOLDER).filter((name) => name === `${language}.yaml` || name.endsWith(`.${language}.yaml`))) {
      for (const id of Object.keys(parse(readFileSync(`${FOLDER}${file}`, "utf8")) as Record<string, string>)) {
        expect(seen.get(id) ?? file, `${id} in ${file}`).toBe(file);
        seen.set(id, file);
      }
    }
  }
});

describe("sentences made in code", () => {
  const said = sentencesIn(all);
  const german_of = (sentence: string): string => said(sentence, "de-DE");
  const HERE = { now_ms: Date.parse("2026-11-25T18:00:00Z"), timezone: "UTC" };
  const made = [
    ...["floor 3000 m2", "house built 2090", "want 60 C", "loss 9000 W/K", "5 kW heat loss", "heat loss 5 kW at 18 C", "heat loss 5 kW at -15", "house 100 m2, no insulation"].flatMap((text) => everything(readHouse(text, HERE))),
    ...["max 30", "max 400 kg", "heater weighs 20 kg", "min 500 kg", "max 10 kg min 12 kg", "400 kg a day", "heater weighs 99 t", "90 kW output", "0 kg max", "heater 40 kg", "with an oven"].flatMap((text) => everything(readHeater(text, HERE))),
    ...["birch 140 % wet basis", "birch 500 %", "birch 22 %", "3 m3 birch", "5 srm beech", "2 festmeter oak", "2000 m3 stacked", "a face cord of maple", "basket is 400 kg", "birch measured 2027-05-05", "birch 18 % and 20 % wet basis", "split in 2019"].flatMap((text) => everything(readWood(text, HERE))),
    ...["tested yesterday", "co alarm battery is dead", "co alarm good until 2019", "co alarm good until 2031"].flatMap((text) => everything(readAlarms(text, HERE))),
    ...["log: 900 kg lit 18:00", "log: 12 lit 18:00", "log: 12 kg lit 2027-01-01 18:00", "log: 12 kg lit 2020-01-01 18:00", "log: 12 kg", "log: 12 kg lit 18:00 closed at 22:00", "log: 12 kg lit 17:00 damper 17:50", "log: 0 kg lit 17:00", "log: 8 kg or 12 kg lit 17:00"].flatMap((text) => everything(readFire(text, HERE.now_ms, "UTC"))),
    ...["-300 tonight", "-12 tonight", "Mon -4"].flatMap((text) => everything(readWeather(text, HERE))),
    ...everything(readUnits("pounds and celsius")),
    ...readRecords({ heater: { max_load_kg: 900, colour: 1, kind: "x" }, wood: {}, fires: [{ load_kg: 3 }] }).problems,
  ];
  it("are many", () => expect(new Set(made).size).toBeGreaterThan(45));
  it.each([...new Set(made)])("%s", (sentence) => expect(german_of(sentence)).not.toBe(sentence));
  it("keep figures, in German digits, and dates", () => {
    expect(german_of("12.5 was taken as kilograms.")).toBe("12,5 wurde als Kilogramm genommen.");
    expect(german_of("That alarm's life ended on 2019-05-31: it may stay silent in carbon monoxide or smoke. Replace it before the next fire.")).toContain("am 31.05.2019 abgelaufen");
  });
  it("stay as they are when nobody has put them into German, and in English", () => {
    expect(german_of("Never heard of it.")).toBe("Never heard of it.");
    expect(renderer(catalogues)({ id: "ours", args: { words: "birch" } }, { ...GERMAN, locale: "en-GB" })).toBe("birch");
    expect(renderer(catalogues)({ id: "ours", args: { words: "birch" } }, GERMAN)).toBe("Birke");
  });
});

function everything(read: { readonly problems: readonly string[]; readonly assumed?: readonly string[]; readonly questions?: readonly { readonly text: string; readonly choices?: readonly { readonly label: string }[] }[]; readonly estimate?: { readonly because: string } | undefined }): string[] {
  return [...read.problems, ...(read.assumed ?? []), ...(read.questions ?? []).flatMap(({ text, choices }) => [text, ...(choices ?? []).map(({ label }) => label)]), ...(read.estimate ? [read.estimate.because] : [])];
}

describe("a German reader", () => {
  const render = renderer(catalogues);
  it("reads figures with a decimal comma, and lists with und", () => {
    expect(render({ id: "load.between", args: { load: q(12.5, "kg", { digits: 1 }), low: q(7.5, "kg", { digits: 1 }), high: q(15, "kg", { digits: 1 }) } }, GERMAN)).toBe("Etwa 12,5 kg; alles von 7,5 kg bis 15 kg passt zu diesem Ofen.");
    expect(render({ id: "sharpen", args: { what: [{ id: "sharpen.weather" }, { id: "sharpen.moisture" }] } }, GERMAN)).toContain(" und die Feuchte");
  });
  it("reads days and times as German writes them", () => {
    const at_ms = Date.parse("2026-11-25T17:05:00Z");
    expect(render({ id: "light-by.late", args: { bedtime: { at_ms, show: "time" }, hours: "4 h", latest: { at_ms, show: "time" } } }, GERMAN)).toContain("18:05");
    expect(render({ id: "care.next", args: { date: { at_ms, show: "date" } } }, GERMAN)).toBe("Wieder bis 25. Nov. 2026.");
  });
});
