/** A page as a picture: every word of it there, inside its width, black on white. */
import { Resvg } from "@resvg/resvg-js";
import { beforeAll, describe, expect, it } from "vitest";
import { text, type PageBlock, type Text } from "../../src/answer.ts";
import { limits } from "../../src/limits.ts";
import { guestPage } from "../../src/pages/guest-page.ts";
import { WIDTH_PX } from "../../src/pictures/look.ts";
import { pagePicture } from "../../src/pictures/page.ts";
import { FONTS, pngOf, svgOf } from "../../src/pictures/worker.ts";
import { loadCatalogues } from "../../src/text/catalogues.ts";
import { renderer, type Renderer } from "../../src/text/render.ts";

let render: Renderer;
beforeAll(async () => {
  render = renderer(await loadCatalogues());
});

const facts = { name: "The long named heater of grandmother's kitchen <downstairs>", max_load_kg: 12, max_load_source: "sheet" as const, shut_off_damper: true, bypass_damper: true, grate: true, gas_exit: "top" as const };
const rules = [{ from: "builder" as const, said_by: "b", said_at_ms: 0, words: "Only birch, split to a wrist's thickness & dry.", lighting: "top" as const, call: "Ana, 0123 4567" }];
const document = guestPage({ heater: facts, house: {}, alarms: { co: { room: "hall" } }, limits: limits(facts, rules), rules, basket_kg: 6, emergency_number: "112", now_ms: Date.parse("2026-11-25T18:00:00Z") });

describe.each(["en-GB", "de-DE", "en-US"])("in %s", (locale) => {
  const reader = { locale, system: locale === "en-US" ? ("us" as const) : ("metric" as const), timezone: "UTC" };
  const say = (one: Text): string => render(one, reader);
  const svg = (): Promise<string> => svgOf(pagePicture(document), reader, render);
  const plain = (words: string): string => words.replace(/&amp;/g, "&").replace(/&lt;/g, "<").replace(/&gt;/g, ">").replace(/&#39;/g, "'").replace(/&quot;/g, '"').replace(/[\s-]+/g, "");

  it("holds every word of the page, in its order", async () => {
    const words = plain([...(await svg()).matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, line]) => line).join(" "));
    const of = (block: PageBlock): string[] =>
      block.kind === "text" ? [say(block.text)] : block.kind === "steps" ? [...(block.title ? [say(block.title)] : []), ...block.steps.map(say)] : block.kind === "quote" ? [say(block.words)] : block.kind === "table" ? block.rows.flat().map(say) : [];
    let at = 0;
    for (const sentence of [say(document.title), ...document.body.filter((block) => block.kind !== "table").flatMap(of)]) {
      const found = words.indexOf(plain(sentence), at);
      expect(found, sentence).toBeGreaterThanOrEqual(at);
      at = found;
    }
    for (const cell of document.body.filter((block) => block.kind === "table").flatMap(of)) expect(words).toContain(plain(cell));
  });
  it("stays inside its width as it is really drawn, is black, white and one grey, and never smaller than 12 px", async () => {
    const drawn = await svg();
    const box = new Resvg(drawn.replace(/<rect width="100%"[^>]*>/, ""), { font: FONTS }).innerBBox();
    expect(box).toBeDefined();
    expect(box?.x).toBeGreaterThanOrEqual(8);
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(WIDTH_PX - 8);
    expect([...new Set(drawn.match(/#[0-9a-f]{3,6}/g))].sort()).toEqual(["#000", "#111", "#e6e6e6", "#fff"]);
    for (const [, size] of drawn.matchAll(/font-size="([\d.]+)"/g)) expect(Number(size)).toBeGreaterThanOrEqual(12);
    expect(drawn.indexOf('stroke-width="3"')).toBeLessThan(drawn.indexOf("<ellipse"));
  });
  it("is a PNG of twice a phone's width", async () => {
    const png = Buffer.from(pngOf(await svg()));
    expect(png.toString("latin1", 1, 4)).toBe("PNG");
    expect(png.readUInt32BE(16)).toBe(2 * WIDTH_PX);
    expect(png.length).toBeLessThan(800_000);
  });
});

it("what is no page is said plainly", async () => {
  await expect(svgOf({ chart: "page", data: {} }, { locale: "en", system: "metric", timezone: "UTC" }, render)).rejects.toThrow("a page has a title and a body.");
  expect(pagePicture(document).alt).toEqual(text("picture.page.alt", { title: document.title }));
});
