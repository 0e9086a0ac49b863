/** The specifications and what is written on the pictures: valid, big enough to read, in the reader's units, never off the sheet. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Resvg } from "@resvg/resvg-js";
import { Ajv } from "ajv";
import addFormats from "ajv-formats";
import { compile, type TopLevelSpec } from "vega-lite";
import { beforeAll, describe, expect, it } from "vitest";
import { SMALLEST_PX, WIDTH_PX } from "../../src/pictures/look.ts";
import { pictureOf } from "../../src/pictures/charts.ts";
import { PLATES } from "../../src/pictures/plates/index.ts";
import { FONTS, svgOf } from "../../src/pictures/worker.ts";
import { loadCatalogues } from "../../src/text/catalogues.ts";
import { renderer, type Reader, type Renderer } from "../../src/text/render.ts";
import { NAMES, SAMPLES } from "./charts.ts";

const METRIC: Reader = { locale: "en-GB", system: "metric", timezone: "Europe/Helsinki" };
const US: Reader = { locale: "en-US", system: "us", timezone: "America/New_York" };
const schema = JSON.parse(readFileSync(createRequire(import.meta.url).resolve("vega-lite/vega-lite-schema.json"), "utf8")) as object;
const ajv = new Ajv({ strict: false, allErrors: false });
(addFormats as unknown as (to: Ajv) => void)(ajv);
ajv.addFormat("color-hex", /^#[0-9a-f]{3,8}$/i);
const valid = ajv.compile(schema);

let render: Renderer;
beforeAll(async () => {
  render = renderer(await loadCatalogues());
});
const svg = (name: (typeof NAMES)[number], reader: Reader) => svgOf(pictureOf(name, SAMPLES[name] as never), reader, render);
const words = (drawn: string): string => [...drawn.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text).join(" | ");

describe.each(NAMES)("the plate of %s", (name) => {
  it("is a valid Vega-Lite specification that compiles without a warning", () => {
    expect(valid(PLATES[name].spec), ajv.errorsText(valid.errors?.slice(0, 3))).toBe(true);
    const said: string[] = [];
    const note = (...parts: unknown[]) => {
      said.push(parts.join(" "));
      return logger;
    };
    const logger = { level: () => logger, error: note, warn: note, info: () => logger, debug: () => logger } as never;
    compile(PLATES[name].spec as TopLevelSpec, { logger });
    expect(said).toEqual([]);
  });

  it.each([METRIC, US])("writes nothing smaller than can be read at 400 pixels ($locale)", async (reader) => {
    const drawn = await svg(name, reader);
    const sizes = [...drawn.matchAll(/font-size="([\d.]+)px"/g)].map(([, size]) => Number(size));
    expect(sizes.length).toBeGreaterThan(5);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(SMALLEST_PX);
    expect(drawn).toMatch(new RegExp(`<svg[^>]* width="${WIDTH_PX}"`));
    const box = new Resvg(drawn, { font: FONTS }).getBBox();
    expect(box).toMatchObject({ x: 0, y: 0, width: WIDTH_PX });
    expect(drawn).not.toMatch(/NaN|undefined|Infinity|>−0</);
  });
});

it("writes temperatures and loads in the reader's units", async () => {
  expect(words(await svg("heat-curve", METRIC))).toMatch(/face, mean 57 °C.*in °C/);
  expect(words(await svg("heat-curve", US))).toMatch(/face, mean 135 °F.*in °F/);
  expect(words(await svg("fire-plan", METRIC))).toMatch(/74 kg of wood/);
  expect(words(await svg("fire-plan", US))).toMatch(/163 lb of wood/);
});

it("says the same in words as the picture shows", () => {
  const alt = (name: (typeof NAMES)[number], reader: Reader) => render(pictureOf(name, SAMPLES[name] as never).alt, reader);
  expect(alt("heat-curve", METRIC)).toMatch(/3\.4 kW, comes 5 h \(3\.8–6\.3\) after lighting.*57 °C.*19\.7 °C and 21\.2 °C.*2\.8 h \(2\.2–4\.4\)/);
  expect(alt("heat-curve", US)).toMatch(/135 °F/);
  expect(alt("fire-plan", METRIC)).toMatch(/7 days with −15 °C to 7 °C outside: .*25 Nov, 20:00 12 kg.*74 kg.*19\.8 °C to 22\.9 °C/);
  expect(alt("drying", METRIC)).toMatch(/45 % water on 10 May 2026; down to 20 % about 28 Apr 2027, as early as 10 Sept 2026, as late as 24 Jun 2027.*10 %/);
  expect(alt("pile", METRIC)).toMatch(/1,400 kg on 25 Nov 2026.*10 Mar 2027, between 17 Feb 2027 and 31 Mar 2027/);
  expect(alt("season", US)).toMatch(/924 lb in 35 fires over 9 weeks; most in the week from Nov 29, 2026: 216 lb/);
  const never = { ...SAMPLES.drying, ready: { early_ms: null, at_ms: null, late_ms: null } };
  expect(render(pictureOf("drying", never).alt, METRIC)).toMatch(/20 % is not reached/);
  const lasts = { ...SAMPLES.pile, ends: { early_ms: null, at_ms: null, late_ms: null } };
  expect(render(pictureOf("pile", lasts).alt, METRIC)).toMatch(/remain on/);
  const maybe = { ...SAMPLES.pile, ends: { early_ms: SAMPLES.pile.ends.early_ms, at_ms: null, late_ms: null } };
  expect(render(pictureOf("pile", maybe).alt, METRIC)).toMatch(/remain on .*; in the worst case it is gone by 17 Feb 2027/);
});

it("never titles a forecast with a bare date", async () => {
  expect(words(await svg("drying", METRIC))).toMatch(/Dry enough between 10 Sept 2026 and 24 Jun 2027/);
  expect(words(await svg("pile", METRIC))).toMatch(/Gone between 17 Feb 2027 and 31 Mar 2027/);
});

it("writes in inks that stand out from the paper", async () => {
  const { INK } = await import("../../src/pictures/look.ts");
  const [paper, ...inks] = [INK.paper, INK.text, INK.quiet, INK.face, INK.room, INK.heatText, INK.fire, INK.limit, INK.outsideText];
  for (const ink of inks) expect(contrast(paper, ink)).toBeGreaterThan(4.5);
});

/** WCAG 2.1 contrast ratio; 4.5 is its least for text. */
function contrast(a: string, b: string): number {
  const light = (hex: string): number => {
    const [r = 0, g = 0, blue = 0] = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [high = 0, low = 0] = [light(a), light(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}
