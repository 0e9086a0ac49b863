/** The whole knowledge as one HTML file a language: nothing is fetched, and without script everything is still there to read. */
import { createHash } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { IntlMessageFormat } from "intl-messageformat";
import { parse } from "yaml";
import { emergencyNumbers } from "../../emergency/index.ts";
import type { Knowledge } from "../../knowledge/load.ts";
import { loadCatalogues } from "../../text/catalogues.ts";
import { escapeHtml as e, pageHead } from "../html.ts";
import { callsPart, cautionsPart, dangerBox, firingsPart, howtosPart, lawPart, speciesPart, troublesPart, upkeepPart, wordsPart, type Say, type Species } from "./sections.ts";
import { SCRIPT } from "./script.ts";
import { STYLE } from "./style.ts";

export interface PageFile {
  readonly name: string;
  readonly bytes: number;
}

/** @param folder the knowledge folder, for the trees; @param to where the files go, which is there */
export async function writePages(knowledge: Knowledge, folder: string, to: string): Promise<PageFile[]> {
  const species = parse(await readFile(join(folder, "species.yaml"), "utf8")) as Species;
  const own = await loadCatalogues();
  const languages = [...knowledge.texts.keys()];
  return Promise.all(languages.map(async (language) => {
    const name = fileName(language);
    const html = knowledgePage(knowledge, species, sayer([knowledge.texts, own], language), languages.filter((other) => other !== language).map((other) => ({ language: other, say: sayer([own], other) })));
    await writeFile(join(to, name), html);
    return { name, bytes: Buffer.byteLength(html) };
  }));
}

const fileName = (language: string): string => (language === "en" ? "index.html" : `${language}.html`);

type Catalogues = ReadonlyMap<string, ReadonlyMap<string, string>>;
/** What a record would fill in stands open. */
const OPEN = "…";
function sayer(catalogues: readonly Catalogues[], language: string): Say {
  const locale = language === "en" ? "en-GB" : language;
  const source = (id: string): { words: string; locale: string } | null => {
    for (const [tongue, as] of [[language, locale], ["en", "en-GB"]] as const) {
      for (const catalogue of catalogues) {
        const words = catalogue.get(tongue)?.get(id);
        if (words !== undefined) return { words, locale: as };
      }
    }
    return null;
  };
  const say = (id: string, args?: Readonly<Record<string, string | number>>): string => {
    const found = source(id);
    if (!found) throw new Error(`no text "${id}" for the page`);
    if (!found.words.includes("{")) return found.words;
    return args ? String(new IntlMessageFormat(found.words, found.locale, undefined, { ignoreTag: true }).format(args)) : found.words.replace(/\{[^{}]*(?:\{[^{}]*\}[^{}]*)*\}/g, OPEN);
  };
  return Object.assign(say, { has: (id: string) => source(id) !== null, locale });
}

interface Other {
  readonly language: string;
  readonly say: Say;
}

export function knowledgePage(knowledge: Knowledge, species: Species, say: Say, others: readonly Other[]): string {
  const parts = [
    ["cautions", cautionsPart(knowledge, say)], ["troubles", troublesPart(knowledge, say)], ["howtos", howtosPart(knowledge, say)], ["firings", firingsPart(knowledge, say)],
    ["upkeep", upkeepPart(knowledge, say)], ["law", lawPart(knowledge, say)], ["species", speciesPart(species, say)], ["words", wordsPart(knowledge, say)], ["calls", callsPart(knowledge, say)],
  ] as const;
  const lang = say.locale.slice(0, 2);
  const hash = createHash("sha256").update(SCRIPT).digest("base64");
  const numbers = lang === "de" ? "112" : emergencyNumbers(null);
  return `${pageHead(e(lang), e(say("kpage.title")), STYLE, hash)}
<body>
<a class="skip" href="#contents">${e(say("kpage.skip"))}</a>
<header>
<h1>${e(say("kpage.title"))}</h1>
${dangerBox([say("guest.alarm", { number: numbers })])}
<p>${e(say("kpage.lead"))}</p>
${others.map((other) => `<p><a href="${fileName(other.language)}" lang="${e(other.language)}" hreflang="${e(other.language)}">${e(other.say("kpage.language"))}</a></p>`).join("")}
</header>
<main>
<div class="search" role="search"><label for="search">${e(say("kpage.search"))}</label><input id="search" type="search" autocomplete="off" spellcheck="false"><p class="small" role="status" id="count" data-word="${e(say("kpage.search-count"))}"></p><ul id="found"></ul></div>
<nav id="contents" aria-label="${e(say("kpage.contents"))}"><ul>${parts.map(([id]) => `<li><a href="#part-${id}">${e(say(`kpage.part.${id}`))}</a></li>`).join("")}</ul></nav>
${parts.map(([id, html]) => `<section aria-labelledby="part-${id}"><h2 id="part-${id}">${e(say(`kpage.part.${id}`))}</h2>\n${html}</section>`).join("\n")}
</main>
<footer><p class="small">${e(say("kpage.made"))}</p></footer>
<script>${SCRIPT}</script>
</body>
</html>
`;
}
