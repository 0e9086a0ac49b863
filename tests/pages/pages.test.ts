/** The files themselves: whole by themselves, escaped, in the reader's units, with nothing left out that keeps people alive. */
import { readFileSync } from "node:fs";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { keepIn } from "../../adapters/terminal/documents.ts";
import { text, verbatim, type Document } from "../../src/answer.ts";
import { loadKnowledge } from "../../src/knowledge/load.ts";
import { limits } from "../../src/limits.ts";
import { brief } from "../../src/pages/brief.ts";
import { guestPage, type GuestFacts } from "../../src/pages/guest-page.ts";
import { seasonReport, seasonTable } from "../../src/pages/season-report.ts";
import { writeDocument } from "../../src/pages/write.ts";
import type { Fire } from "../../src/records/types.ts";
import { FireRecord, type HeaterFacts } from "../../src/records/schemas.ts";
import { loadCatalogues } from "../../src/text/catalogues.ts";
import { renderer, type Reader } from "../../src/text/render.ts";
import { HOSTILE } from "../adapters/any-answer.ts";

const own = await loadCatalogues();
const knowledge = await loadKnowledge(new URL("../../knowledge", import.meta.url).pathname);
const render = renderer(new Map([["en", new Map([...(own.get("en") ?? []), ...(knowledge.texts.get("en") ?? [])])]]));
const METRIC: Reader = { locale: "en-GB", system: "metric", timezone: "Europe/Helsinki" };
const US: Reader = { locale: "en-US", system: "us", timezone: "America/New_York" };
const NOW = Date.parse("2026-11-25T18:00:00Z");
const written = (document: Document, reader = METRIC) => writeDocument(document, render, reader);

const facts = (heater: HeaterFacts, more: Partial<GuestFacts> = {}): GuestFacts => ({ heater, house: {}, alarms: {}, limits: limits(heater), rules: [], emergency_number: "112", now_ms: NOW, ...more });
const fire = (lit_at: string, more: object = {}): Fire => ({ id: lit_at, heater_id: "h", person_id: "p", lit_at_ms: Date.parse(lit_at), facts: { lit_at, ...more } });

/** Tags left open or crossed; a small reader of its own, independent of what writes. */
function unbalanced(html: string): string[] {
  const VOID = new Set(["meta", "br", "hr", "!doctype"]);
  const wrong: string[] = [];
  const open: string[] = [];
  for (const [, close, tag = "", , selfClosed] of html.matchAll(/<(\/?)([!a-z][a-z0-9]*)((?:\s[^>]*?)?)(\/?)>/gi)) {
    const name = tag.toLowerCase();
    if (VOID.has(name) || selfClosed) continue;
    if (!close) open.push(name);
    else if (open.pop() !== name) wrong.push(name);
  }
  return [...wrong, ...open];
}

describe("the guests' page", () => {
  const full: HeaterFacts = { name: "Old one", max_load_kg: 15, max_load_source: "sheet", gas_exit: "top", shut_off_damper: true, bypass_damper: true, grate: true };
  test("is one HTML file that needs nothing else", () => {
    const { content, name, media_type } = written(guestPage(facts(full)));
    expect([name, media_type]).toEqual(["for-guests.html", "text/html"]);
    expect(content).toMatch(/^<!doctype html>\n<html lang="en-GB">/);
    expect(unbalanced(content)).toEqual([]);
    expect(content).not.toMatch(/<script|<link|<img|https?:(?!\/\/www\.w3\.org\/2000\/svg)|@import|url\(/i);
    expect(content).toMatch(/@media print/);
  });
  test("fits one side of paper: at most 60 lines of 90 characters", () => {
    const { words } = written(guestPage(facts(full, { rules: [{ from: "builder", said_by: "b", said_at_ms: NOW, words: "Only birch in this one.", call: "Kalle, 040 000" }] })));
    const lines = words.split("\n").filter(Boolean).reduce((sum, line) => sum + Math.ceil(line.length / 90), 0);
    expect(lines).toBeLessThanOrEqual(60);
  });
  test("says first what to do when somebody feels ill, and never lets a guest close the flue in the evening", () => {
    const { content, words } = written(guestPage(facts(full)));
    expect(content.indexOf("everyone out at once")).toBeGreaterThan(0);
    expect(content.indexOf("everyone out at once")).toBeLessThan(content.indexOf("At most 15 kg"));
    expect(words).toMatch(/Damper in the flue \| OPEN \| OPEN \| OPEN \| may be shut/);
    expect(words).toMatch(/Never close the damper in the flue in the evening/);
  });
  test("speaks of a damper also where nobody said whether there is one, and not where there is none", () => {
    expect(written(guestPage(facts({}))).words).toMatch(/slide or plate in the flue\? Fully open/);
    expect(written(guestPage(facts({ shut_off_damper: false }))).words).not.toMatch(/Damper in the flue/);
  });
  test("in the reader's units; without a known limit half of the firebox and no kilograms", () => {
    expect(written(guestPage(facts(full)), US).words).toMatch(/At most 33 lb/);
    const unknown = written(guestPage(facts({}))).words;
    expect(unknown).toMatch(/half of the firebox/);
    expect(unknown).not.toMatch(/\d kg/);
  });
  test("a burn ban stands on it", () => {
    const ban = { from: "law" as const, said_by: "a", said_at_ms: NOW, no_fire: { from: "2026-11-25T00:00:00Z", to: "2026-11-28T00:00:00Z" } };
    expect(written(guestPage(facts(full, { rules: [ban] }))).words).toMatch(/No fire at all until/);
  });
  test("no word of a person becomes markup", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...HOSTILE), { minLength: 1, maxLength: 4 }), (parts) => {
        const words = parts.join(" ");
        const { content } = written(guestPage(facts({ ...full, name: words }, { rules: [{ from: "builder", said_by: "b", said_at_ms: NOW, words, call: words }], alarms: { co: { room: words } } })));
        expect(unbalanced(content)).toEqual([]);
        expect(content).not.toMatch(/<script|<img|<a |onerror=alert\(1\)>|<font/i);
        expect(content.isWellFormed()).toBe(true);
      }),
      { numRuns: 200, seed: 7 },
    );
  });
});

describe("the season's report", () => {
  const fires = [
    fire("2026-11-20T17:00:00Z", { load_kg: 12, moisture_pct_wet: 16, damper_closed_at: "2026-11-20T21:00:00Z", bed_at_close: "red", note: '=HYPERLINK("x"), said "hi"' }),
    fire("2026-11-10T17:00:00Z", { load_kg: 16, moisture_pct_wet: 20 }),
    fire("2026-10-31T23:30:00Z", { load_kg: 8 }),
    fire("2026-10-01T17:00:00Z"),
  ];
  const heater: HeaterFacts = { max_load_kg: 15, max_load_source: "sheet" };
  const report = () => seasonReport({ heater, upkeep: { swept_on: "2026-09-01" }, limits: limits(heater), fires, since_sweep: { fires: 4, load_kg: 36 }, troubles: [{ title: verbatim("Black glass"), at_ms: NOW }], timezone: "Europe/Helsinki", now_ms: NOW });

  test("sums, counts by the person's own months, weighs the moisture", () => {
    const { words } = written(report());
    expect(words).toMatch(/Wood burnt: 36 kg/);
    // 12 kg at 16 % and 16 kg at 20 %: (192 + 320) / 28 = 18.3 %
    expect(words).toMatch(/Moisture[^:]*: 18 %/);
    // half past eleven at night in UTC on 31 October is 1 November in Helsinki
    expect(words).toMatch(/2026-10 \| 1 \| 0 kg/);
    expect(words).toMatch(/2026-11 \| 3 \| 36 kg \| 16 kg/);
    expect(words).toMatch(/Loads above the limit on record: 1/);
    expect(words).toMatch(/closed over flame or glow, as logged: 1/);
    expect(words).toMatch(/without a weight: 1/);
  });
  test("the table: RFC 4180, keys of the records, and no cell that a spreadsheet would run", () => {
    const { content } = written(seasonTable({ fires }));
    const lines = content.split("\r\n");
    expect(lines[0]).toBe("lit_at,load_kg,species,moisture_pct_wet,lit,stack,air,flame_out_at,air_closed_at,damper_closed_at,bed_at_close,outside_C,note");
    for (const key of lines[0]?.split(",") ?? []) expect(Object.keys(FireRecord.shape)).toContain(key);
    expect(lines[1]).toBe("2026-10-01T17:00:00Z,,,,,,,,,,,,");
    expect(lines[4]).toContain(`"'=HYPERLINK(""x""), said ""hi"""`);
    expect(lines.at(-1)).toBe("");
  });
  test("a temperature below zero stays a number", () => {
    expect(written(seasonTable({ fires: [fire("2026-11-20T17:00:00Z", { outside_C: -12 })] })).content).toMatch(/,-12,/);
  });
});

test("a brief holds the facts and the question of whoever is called", () => {
  const { content } = written(
    brief({
      to: "sweep", heater: {}, heater_lines: [], upkeep: {}, alarms: {}, limits: limits({}), fires: [fire("2026-11-20T17:00:00Z", { load_kg: 12 })], since_sweep: { fires: 1, load_kg: 12 },
      trouble: { title: verbatim("Smoke at lighting"), at_ms: NOW, said: [[verbatim("Does the match lean in?"), text("no")]], causes: [verbatim("A nest")] }, album: [], now_ms: NOW,
    }),
  );
  for (const words of ["For the chimney sweep", "Smoke at lighting", "Does the match lean in? No", "A nest", "12 kg"]) expect(content).toContain(words);
});

test("the terminal keeps a file under its own folder only, and reads it out where it cannot", () => {
  const folder = mkdtempSync(join(tmpdir(), "gleed-pages-"));
  const one = { name: "for-guests.html", media_type: "text/html", content: "x" };
  expect(readFileSync(keepIn(join(folder, "documents"))(one) ?? "", "utf8")).toBe("x");
  expect(keepIn(folder)({ ...one, name: "../escape.html" })).toBeNull();
  expect(keepIn("/dev/null/no")(one)).toBeNull();
  rmSync(folder, { recursive: true });
});
