/** The page of the whole knowledge, walked in a real headless Chromium: search, every tree, a phone's width, no script, print. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadKnowledge, type Knowledge } from "../../../src/knowledge/load.ts";
import { STYLE } from "../../../src/pages/knowledge/style.ts";
import { ems, wrap } from "../../../src/pages/wrap.ts";
import { writePages } from "../../../src/pages/knowledge/write.ts";
import { chromium, openBrowser, type Browser, type Page } from "./browser.ts";

const SHIPPED = fileURLToPath(new URL("../../../knowledge", import.meta.url));
let folder: string;
let knowledge: Knowledge;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "gleed-page-"));
  knowledge = await loadKnowledge(SHIPPED);
  await writePages(knowledge, SHIPPED, folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const html = (name = "index.html"): string => readFileSync(join(folder, name), "utf8");
const address = (name = "index.html", rest = ""): string => `${pathToFileURL(join(folder, name)).href}${rest}`;

describe("the files", () => {
  it("one for each language, of a size to send on", () => {
    expect(readdirSync(folder).sort()).toEqual(["index.html", ...[...knowledge.texts.keys()].filter((one) => one !== "en").map((one) => `${one}.html`)].sort());
    for (const name of readdirSync(folder)) expect(statSync(join(folder, name)).size, name).toBeLessThan(2_000_000);
  });
  it("asks for nothing from elsewhere and lets no other script run", () => {
    for (const name of readdirSync(folder)) {
      expect(html(name)).toMatch(/default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-/);
      expect(html(name).replaceAll("http://www.w3.org/2000/svg", "")).not.toMatch(/\b(?:src|href|action)="(?:https?:)?\/\//);
    }
  });
  it("holds every caution, before everything else", () => {
    const words = html();
    for (const { say } of Object.values(knowledge.cautionEntries)) expect(words).toContain(say.replaceAll("'", "&#39;").replaceAll('"', "&quot;"));
    expect(words.indexOf('id="part-cautions"')).toBeLessThan(words.indexOf('id="part-troubles"'));
    for (const { id, cautions } of knowledge.troubles.values()) {
      const entry = words.slice(words.indexOf(`id="trouble-${id}"`), words.indexOf("<h4>", words.indexOf(`id="trouble-${id}"`)));
      for (const caution of cautions) expect(entry, id).toContain((knowledge.cautionEntries[caution]?.say ?? "?").replaceAll("'", "&#39;").replaceAll('"', "&quot;"));
    }
  });
  it("leaves no message pattern unfilled", () => {
    for (const name of readdirSync(folder)) expect(html(name).replace(/<(style|script)>[\s\S]*?<\/\1>/g, "").match(/\{[^}]*\}/g) ?? []).toEqual([]);
  });
});

/** Relative luminance and contrast of WCAG 2.2, 1.4.3. */
function contrast(a: string, b: string): number {
  const light = (colour: string): number => {
    const hex = colour.length === 4 ? [...colour.slice(1)].map((one) => one + one).join("") : colour.slice(1);
    const [r = 0, g = 0, blue = 0] = [0, 2, 4].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [more = 0, less = 0] = [light(a), light(b)].sort((x, y) => y - x);
  return (more + 0.05) / (less + 0.05);
}

describe("colours", () => {
  const sets = [...STYLE.matchAll(/:root \{[^}]*\}/g)].map(([block]) => Object.fromEntries([...block.matchAll(/--([\w-]+): (#[0-9a-f]{3,6})/g)].map(([, name, value]) => [name, value] as [string, string])));
  it.each(sets.map((set, i) => [["light", "dark", "print"][i] ?? "", set] as const))("%s: text by WCAG AA, lines of drawings at 3 to 1", (_, set) => {
    for (const ink of ["ink", "soft", "clay", "danger"]) for (const ground of ["paper", "card", "danger-back"]) expect(contrast(set[ink] ?? "", set[ground] ?? ""), `${ink} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    for (const line of Object.keys(set).filter((name) => /^c\d$/.test(name))) expect(contrast(set[line] ?? "", set.paper ?? ""), line).toBeGreaterThanOrEqual(3);
  });
  it("the measure itself: black on white is 21 to 1, equal colours 1", () => {
    expect(contrast("#000", "#ffffff")).toBeCloseTo(21);
    expect(contrast("#8f3d12", "#8f3d12")).toBe(1);
  });
});

describe("lines in drawings", () => {
  it("no line is wider than allowed, and no word is lost", () => {
    const words = "A fire that is short of air makes soot, and Sweepingregulationsinspectorate besides";
    const lines = wrap(words, 12);
    for (const line of lines) expect(ems(line)).toBeLessThanOrEqual(12);
    expect(lines.join("").replaceAll(/[\s-]/g, "")).toBe(words.replaceAll(/[\s-]/g, ""));
  });
});

describe.skipIf(!chromium)(chromium ? "in Chromium" : "in Chromium (none is installed here: apt-get install chromium, or name one in GLEED_TEST_CHROMIUM)", { timeout: 60_000 }, () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
    page = await browser.page();
  }, 60_000);
  afterAll(() => browser?.close());

  it("search finds by words, by misspelt ones, and leads to the entry, opened", async () => {
    await page.size(1000, 900);
    await page.open(address());
    await page.value(`document.getElementById("search").focus()`);
    await page.write("black glass");
    expect(await page.value(`document.querySelector("#found a").textContent`)).toBe("Black glass");
    await page.value(`(() => { const i = document.getElementById("search"); i.value = ""; })()`);
    await page.write("crekosote tarr");
    expect(await page.value<number>(`document.querySelectorAll("#found li").length`)).toBeGreaterThan(0);
    await page.value(`(() => { const i = document.getElementById("search"); i.value = ""; })()`);
    await page.write("zzzzqqqq");
    expect(await page.value(`document.getElementById("count").textContent`)).toBe("0 found");
    await page.value(`(() => { const i = document.getElementById("search"); i.value = ""; })()`);
    await page.write("stuck damper");
    await page.press("Tab");
    await page.press("Enter");
    expect(await page.value(`location.hash`)).toBe("#trouble-stuck-damper");
    expect(await page.value(`new Promise((done) => setTimeout(() => done(document.getElementById("trouble-stuck-damper").closest("details").open), 50))`)).toBe(true);
    expect(page.complaints).toEqual([]);
  });

  const languages = (): string[] => readdirSync(folder);
  it("every tree, opened at a phone's width: drawn, named, inside its box, and the page never wider than the screen", async () => {
    for (const name of languages()) {
      await page.size(360, 740, true);
      await page.open(address(name));
      const seen = await page.value<{ id: string; overflow: number; box: string; inBox: boolean; named: boolean; size: number; clipped: string[]; shares: number }[]>(`
        [...document.querySelectorAll("#part-troubles ~ details.entry")].map((entry) => {
          entry.open = true;
          const svg = entry.querySelector("svg.tree");
          const box = svg.closest(".scroll");
          const edge = svg.getBoundingClientRect();
          const texts = [...svg.querySelectorAll("text")];
          const frames = [...svg.querySelectorAll("rect.box")].map((one) => one.getBoundingClientRect());
          const clipped = texts.filter((one) => { const r = one.getBoundingClientRect(); return !frames.some((f) => r.left >= f.left && r.right <= f.right + 0.5 && r.top >= f.top - 1 && r.bottom <= f.bottom + 1); }).map((one) => one.textContent);
          return {
            id: entry.querySelector(".body").id, overflow: document.documentElement.scrollWidth - innerWidth, box: getComputedStyle(box).overflowX, inBox: box.getBoundingClientRect().right <= innerWidth && edge.width > box.clientWidth,
            named: document.getElementById(svg.getAttribute("aria-labelledby").split(" ")[0]).textContent.length > 5, size: Math.min(...texts.map((one) => parseFloat(getComputedStyle(one).fontSize) * edge.width / svg.viewBox.baseVal.width)), clipped,
            shares: [...svg.querySelectorAll("rect.bar + text")].reduce((sum, one) => sum + parseFloat(one.textContent), 0),
          };
        })`);
      expect(seen.map(({ id }) => id).sort(), name).toEqual([...knowledge.troubles.keys()].map((id) => `trouble-${id}`).sort());
      for (const tree of seen) {
        expect(tree, `${name}#${tree.id}`).toMatchObject({ overflow: 0, box: "auto", inBox: true, named: true, clipped: [] });
        expect(tree.size, tree.id).toBeGreaterThanOrEqual(12);
        expect(Math.abs(tree.shares - 100), `shares of ${tree.id}`).toBeLessThanOrEqual(5);
      }
      await page.value(`document.querySelectorAll("details").forEach((one) => { one.open = true; })`);
      expect(await page.value<number>(`document.documentElement.scrollWidth`), name).toBe(360);
    }
    expect(page.complaints).toEqual([]);
  });

  it("is read without script: everything there, the search away, a link opens its entry", async () => {
    await page.size(390, 844, true);
    await page.scripts(false);
    try {
      await page.open(address("index.html", "?plain#howto-close-down"));
      expect(await page.value(`document.documentElement.classList.contains("js")`)).toBe(false);
      expect(await page.value(`getComputedStyle(document.querySelector(".search")).display`)).toBe("none");
      expect(await page.value(`document.querySelectorAll("details.entry svg.tree").length`)).toBe(knowledge.troubles.size);
      expect(await page.value(`document.getElementById("howto-close-down").closest("details").open`)).toBe(true);
      expect(await page.value<string>(`document.body.textContent`)).toContain("Carbon monoxide has no smell");
    } finally {
      await page.scripts(true);
    }
  });

  it("headings in order, one first heading, everything that can be pressed is named and shows where the keyboard is", async () => {
    await page.open(address("index.html", "?headings"));
    const levels = await page.value<number[]>(`[...document.querySelectorAll("h1, h2, h3, h4, h5")].map((one) => Number(one.tagName[1]))`);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels.every((level, i) => i === 0 || level <= (levels[i - 1] ?? 0) + 2)).toBe(true);
    expect(await page.value(`[...document.querySelectorAll("a, summary, input, [tabindex]")].filter((one) => !(one.textContent.trim() || one.getAttribute("aria-label") || (one.labels && one.labels.length))).length`)).toBe(0);
    expect(await page.value(`[...document.querySelectorAll("[id]")].length - new Set([...document.querySelectorAll("[id]")].map((one) => one.id)).size`)).toBe(0);
    await page.press("Tab");
    expect(await page.value(`document.activeElement.className`)).toBe("skip");
    await page.press("Tab");
    expect(await page.value<string>(`getComputedStyle(document.activeElement).outlineStyle`)).toBe("solid");
  });

  it("dark where the reader wants it dark; printed on white with every entry open", async () => {
    await page.scheme("dark");
    await page.open(address("index.html", "?dark"));
    expect(await page.value(`getComputedStyle(document.body).backgroundColor`)).toBe("rgb(25, 22, 20)");
    await page.scheme("light");
    await page.media("print");
    expect(await page.value(`getComputedStyle(document.body).backgroundColor`)).toBe("rgb(255, 255, 255)");
    expect(await page.value(`getComputedStyle(document.querySelector("nav")).display`)).toBe("none");
    const sheets = (await page.pdf()).toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(sheets).toBeGreaterThan(knowledge.troubles.size);
    await page.media("screen");
    expect(page.complaints).toEqual([]);
  });
});
