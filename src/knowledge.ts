/** `npm run -s knowledge -- ...`: for whoever writes or mends a file of knowledge/, without a word of program. */
import { existsSync } from "node:fs";
import { mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { basename, dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "yaml";
import type { z } from "zod";
import { readRulesFile } from "./builder/file.ts";
import { checkCautions, checkName, checkTrouble } from "./knowledge/check.ts";
import { KnowledgeError, loadKnowledge, type Knowledge } from "./knowledge/load.ts";
import { Firing, HowTo, Trouble } from "./knowledge/schemas.ts";
import { PLACEHOLDER, skeleton } from "./knowledge/skeleton.ts";
import { readTranslation } from "./knowledge/translation.ts";
import { readFileOf } from "./knowledge/yaml-file.ts";
import { writePages } from "./pages/knowledge/write.ts";
import { describeTrouble } from "./trouble/describe.ts";

const SHIPPED = fileURLToPath(new URL("../knowledge", import.meta.url));
const USAGE = `Usage:
  npm run -s knowledge -- check            everything under knowledge/
  npm run -s knowledge -- check <file>     one file: a trouble, a how-to, a kind of fire, or a builder's rules
  npm run -s knowledge -- new <id>         a first draft of a trouble, with notes, as knowledge/troubles/<id>.yaml
  npm run -s knowledge -- list             every trouble and how-to
  npm run -s knowledge -- page <folder>    the whole knowledge as a page to browse without a network`;

export interface Call {
  readonly args: readonly string[];
  readonly folder?: string;
  say(line: string): void;
}

/** @returns exit code: 0 all well, 2 mistakes in a file or in the call */
export async function main({ args: [what, name], folder = SHIPPED, say }: Call): Promise<number> {
  switch (what) {
    case "check":
      return name ? checkFile(name, folder, say) : checkAll(folder, say);
    case "new":
      return draft(name ?? "", folder, say);
    case "list":
      return loading(folder, say, (knowledge) => {
        for (const { id, title, symptom } of knowledge.troubles.values()) say(`trouble  ${id}: ${title}. ${symptom}`);
        for (const { id, title } of knowledge.howtos.values()) say(`how-to   ${id}: ${title}`);
      });
    case "page":
      if (!name) return wrong("Name the folder to write the page into.", say);
      return loading(folder, say, async (knowledge) => {
        await mkdir(name, { recursive: true });
        for (const file of await writePages(knowledge, folder, name)) say(`${join(name, file.name)}: ${Math.round(file.bytes / 1024)} KiB`);
      });
    default:
      return wrong(what ? `"${what}" is not something this can do.` : "Nothing was asked for.", say);
  }
}

function wrong(sentence: string, say: Call["say"]): number {
  say(`${sentence}\n${USAGE}`);
  return 2;
}

async function loading(folder: string, say: Call["say"], work: (knowledge: Knowledge) => void | Promise<void>): Promise<number> {
  try {
    await work(await loadKnowledge(folder));
    return 0;
  } catch (error) {
    if (!(error instanceof KnowledgeError)) throw error;
    mistakes(error.problems, say);
    return 2;
  }
}

function mistakes(problems: readonly string[], say: Call["say"]): void {
  say(problems.length === 1 ? "One mistake:" : `${problems.length} mistakes:`);
  for (const problem of problems) say(`- ${problem}`);
}

const checkAll = (folder: string, say: Call["say"]): Promise<number> =>
  loading(folder, say, (knowledge) => {
    const { troubles, howtos, firings, cautions } = knowledge;
    say(`No mistakes: ${troubles.size} troubles, ${howtos.size} how-tos, ${firings.size} kinds of fire, ${cautions.size} cautions.`);
    for (const [language, missing] of knowledge.missing) say(`${language}: ${missing.length === 0 ? "nothing is missing" : `${missing.length} sentences are still said in English`}.`);
    if (knowledge.strays.length > 0) say(`Replies nobody learns from:\n${knowledge.strays.map((stray) => `- ${stray}`).join("\n")}`);
    const doubts = [...troubles.values()].flatMap((trouble) => describeTrouble(trouble).doubts.map((doubt) => `${trouble.id}: ${doubt}`));
    if (doubts.length > 0) say(`Worth another look:\n${doubts.map((doubt) => `- ${doubt}`).join("\n")}`);
  });

const KINDS = { troubles: Trouble, howtos: HowTo, firings: Firing } as const;
type Kind = keyof typeof KINDS;

/** Which kind of file it is, by what it holds. */
function kindOf(words: string): Kind | "rules" | null {
  let top: unknown = null;
  try {
    top = parse(words);
  } catch {
    // told with its line when it is read
  }
  const has = (key: string): boolean => (typeof top === "object" && top !== null ? key in top : new RegExp(`^${key}:`, "m").test(words));
  if (has("causes") || has("signs")) return "troubles";
  if (has("parts")) return "howtos";
  if (has("stages") || has("ladders")) return "firings";
  return has("rules") ? "rules" : null;
}

async function checkFile(path: string, folder: string, say: Call["say"]): Promise<number> {
  if (!existsSync(path)) return wrong(`There is no file ${path}.`, say);
  const inside = relative(folder, path).replaceAll("\\", "/");
  if (/^[a-z]{2}\//.test(inside)) return checkTranslation(inside, folder, say);
  const words = await readFile(path, "utf8");
  const kind = kindOf(words);
  const name = basename(path);
  if (kind === null) {
    // one of the files of which there is one each: it is right when the whole is
    if (resolve(path).startsWith(resolve(folder))) return checkAll(folder, say);
    return wrong(`${name} is no file of knowledge: a trouble has "signs" and "causes", a how-to "parts", a kind of fire "stages", a builder's file "rules".`, say);
  }
  if (kind === "rules") return checkRules(name, words, say);
  const read = readFileOf(name, words, KINDS[kind] as z.ZodType<Trouble | HowTo | Firing>);
  if (read.value === null) {
    mistakes(read.problems, say);
    return 2;
  }
  const problems = await among(folder, kind, name, read.value);
  if (problems.length > 0) {
    mistakes(problems.map((problem) => problem.replace(`knowledge/${kind}/${read.value.id}.yaml`, name)), say);
    return 2;
  }
  say(`${name}: no mistakes.`);
  if (kind === "troubles") tellTree(read.value as Trouble, say);
  if (words.includes(PLACEHOLDER)) say(`It still says "${PLACEHOLDER}" in ${words.split("\n").filter((line) => line.includes(PLACEHOLDER) && !line.startsWith("#")).length} places.`);
  return 0;
}

/** A file of another language, held against the English one of the same name. */
async function checkTranslation(inside: string, folder: string, say: Call["say"]): Promise<number> {
  const language = inside.slice(0, 2);
  const { originals } = await loadKnowledge(folder, { languages: [] });
  const { problems, missing } = await readTranslation(folder, language, originals);
  const own = problems.filter((problem) => problem.startsWith(`knowledge/${inside}`));
  if (own.length > 0) {
    mistakes(own, say);
    return 2;
  }
  const left = missing.filter(({ file }) => file === inside.slice(3));
  say(`${inside}: no mistakes.${left.length > 0 ? ` ${count(left.length, "sentence")} ${left.length === 1 ? "is" : "are"} still said in English:` : ""}`);
  for (const { place, english } of left.slice(0, 20)) say(`- ${place}: ${english}`);
  return 0;
}

/** What the file's own schema cannot see: cautions and topics that are not there. */
async function among(folder: string, kind: Kind, name: string, value: Trouble | HowTo | Firing): Promise<string[]> {
  const file = `knowledge/${kind}/${value.id}.yaml`;
  const cautions = new Set(Object.keys((parse(await readFile(join(folder, "cautions.yaml"), "utf8")) ?? {}) as object));
  const troubles = new Set([value.id, ...(await readdir(join(folder, "troubles"))).map((one) => one.replace(/\.yaml$/, ""))]);
  return [
    ...(name === `${value.id}.yaml` ? [] : [`${file}: its id is "${value.id}"; file name and id are the same word.`]),
    ...checkCautions(file, value, cautions),
    ...(kind === "troubles" ? [...checkTrouble(value as Trouble), ...checkName(value as Trouble, troubles)] : []),
  ];
}

function tellTree(trouble: Trouble, say: Call["say"]): void {
  const found = describeTrouble(trouble);
  const questions = Object.values(trouble.signs).filter((sign) => sign.ask !== undefined).length;
  const recorded = Object.values(trouble.signs).filter((sign) => sign.record !== undefined).length;
  say(`It has ${count(questions, "question")} (${recorded} can be answered from the records) and ${count(Object.keys(trouble.causes).length, "cause")}.`);
  say(`Walked in ${count(found.paths, "way")}: ${found.questions.mean.toFixed(1)} questions on average, ${found.questions.most} at most.`);
  if (found.emergencies > 0) say(`${percent(found.emergencies)} of the ways end in the emergency answer.`);
  if (found.undecided > 0) say(`${percent(found.undecided)} of the ways end without any cause at 30 % or more; then the likeliest two are told.`);
  for (const { id, leads, best_share } of [...found.causes].sort((a, b) => b.leads - a.leads)) say(`  ${percent(leads).padStart(5)}  ${id}: ${trouble.causes[id]?.title} (up to ${percent(best_share)} sure)`);
  if (found.doubts.length > 0) say(`Worth another look:\n${found.doubts.map((doubt) => `- ${doubt}`).join("\n")}`);
}

const count = (many: number, what: string): string => `${many} ${what}${many === 1 ? "" : "s"}`;
const percent = (share: number): string => (share > 0 && share < 0.005 ? "< 1 %" : `${Math.round(100 * share)} %`);

function checkRules(name: string, words: string, say: Call["say"]): number {
  const { rules, problems } = readRulesFile(words, name);
  if (problems.length > 0) {
    mistakes(problems, say);
    return 2;
  }
  say(`${name}: no mistakes, ${count(rules.length, "rule")}. A rule that would loosen what holds for a heater is refused when it is sent.`);
  return 0;
}

async function draft(id: string, folder: string, say: Call["say"]): Promise<number> {
  if (!/^[a-z][a-z0-9-]*$/.test(id)) return wrong(`"${id}" is no name for a trouble: small letters, digits and hyphens, such as cold-corner.`, say);
  const path = join(folder, "troubles", `${id}.yaml`);
  if (existsSync(path)) return wrong(`${path} is there already.`, say);
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, skeleton(id));
  say(`${path} is written. Its notes say what belongs where; then: npm run -s knowledge -- check ${path}`);
  return 0;
}

if (import.meta.main) process.exitCode = await main({ args: process.argv.slice(2), say: (line) => process.stdout.write(`${line}\n`) });
