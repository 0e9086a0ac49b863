/**
 * `npm run measure`: how well Gleed understands the measuring set, with 95 % confidence intervals (Wilson), beside plain baselines on the same data.
 * `npm run measure -- de`: the same of the German set, read as from somebody whose language is German.
 * Every run is a look: write it into README.md, "Looks". Nothing that runs here learns from the measuring set.
 */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import Database from "better-sqlite3";
import MiniSearch from "minisearch";
import { readFigures, type Figure } from "../../src/conversation/reading/figures.ts";
import { asShare } from "../../src/conversation/reading/figures.ts";
import { gloss } from "../../src/conversation/german/gloss.ts";
import { route as routeIn, type Route } from "../../src/conversation/routing/route.ts";
import { heardIn } from "../../src/conversation/spoken.ts";
import { recogniseDanger } from "../../src/emergency/index.ts";
import { convert, UNITS, type UnitId } from "../../src/quantities.ts";
import { routed_ms } from "../bench/routing.ts";

interface Labelled {
  readonly text: string;
  readonly topic: string;
  readonly also: readonly string[];
  readonly style: string;
}
const here = (name: string): URL => new URL(name, import.meta.url);
const isGerman = process.argv[2] === "de";
const setOf = (name: string): URL => here(isGerman ? `de-${name}` : name);
const heard = (text: string) => heardIn(text, isGerman ? "de-DE" : "en-GB");
const route = (text: string): Route => (isGerman ? routeIn(text, heard(text)) : routeIn(text));
/** a German message's figures are read from what it is in English, as in a talk */
const inEnglish = (text: string): string => (isGerman && heard(text) === "de" ? gloss(text).text : text);
const lines = <T>(url: URL): T[] => readFileSync(url, "utf8").split("\n").filter(Boolean).map((line) => JSON.parse(line) as T);
const set = lines<Labelled>(setOf("topics.jsonl"));
const training = readdirSync(here("../training/")).filter((file) => file.endsWith(".jsonl")).flatMap((file) => lines<Labelled>(here(`../training/${file}`)));

/** share with its 95 % interval, Wilson 1927 */
function share(hits: number, of: number): string {
  const p = hits / of;
  const z = 1.96;
  const middle = (p + z ** 2 / (2 * of)) / (1 + z ** 2 / of);
  const half = (z * Math.sqrt((p * (1 - p)) / of + z ** 2 / (4 * of ** 2))) / (1 + z ** 2 / of);
  return `${(100 * p).toFixed(1)} % (${(100 * (middle - half)).toFixed(1)}-${(100 * (middle + half)).toFixed(1)}), ${hits} of ${of}`;
}

type Ranker = (text: string) => readonly string[];
const inScope = set.filter(({ topic }) => topic !== "out-of-scope");
const plain = inScope.filter(({ style }) => style !== "oblique");
const oblique = inScope.filter(({ style }) => style === "oblique");
const right = (one: Labelled, topics: readonly string[]): boolean => topics.some((topic) => topic === one.topic || one.also.includes(topic));

function report(name: string, rank: Ranker): { plain: number; oblique: number; p50: number } {
  const times: number[] = [];
  const top = (list: readonly Labelled[], n: number): number =>
    list.filter((one) => {
      const from = performance.now();
      const ranked = rank(one.text);
      times.push(performance.now() - from);
      return right(one, ranked.slice(0, n));
    }).length;
  const figures = { plain: top(plain, 1), oblique: top(oblique, 1) };
  console.log(`${name}`);
  console.log(`  plain    first  ${share(figures.plain, plain.length)}`);
  console.log(`  oblique  first  ${share(figures.oblique, oblique.length)}`);
  console.log(`  oblique  first three  ${share(top(oblique, 3), oblique.length)}`);
  times.sort((a, b) => a - b);
  const p50 = times[Math.floor(times.length / 2)] ?? 0;
  console.log(`  time     p50 ${(1000 * p50).toFixed(0)} us, p99 ${(1000 * (times[Math.floor(times.length * 0.99)] ?? 0)).toFixed(0)} us`);
  return { ...figures, p50 };
}

console.log(`${isGerman ? "German " : ""}measuring set: ${set.length} messages (${plain.length} plain, ${oblique.length} oblique, ${set.length - inScope.length} out of scope); training set: ${training.length}\n`);
for (const { text } of set.slice(0, 50)) route(text);
const ours = report("Gleed", (text) => route(text).ranked.map(({ topic }) => topic));

const long = routed_ms(set.map(({ text }) => text));
console.log(`  time for 200 characters  p50 ${(1000 * long.p50).toFixed(0)} us, p99 ${(1000 * long.p99).toFixed(0)} us (limit 1000)`);

const outside = set.filter(({ topic }) => topic === "out-of-scope");
const refused = outside.filter(({ text }) => { const { verdict, ranked } = route(text); return verdict === "out-of-scope" || ranked[0]?.topic === "out-of-scope"; }).length;
const wronglyRefused = inScope.filter(({ text }) => route(text).verdict === "out-of-scope").length;
console.log(`  out of scope recognised  ${share(refused, outside.length)}`);
console.log(`  in scope refused by mistake  ${share(wronglyRefused, inScope.length)}`);
const sure = inScope.filter(({ text }) => route(text).verdict === "sure");
console.log(`  answered as sure  ${share(sure.length, inScope.length)}; of these right  ${share(sure.filter((one) => right(one, [route(one.text).ranked[0]?.topic ?? ""])).length, sure.length)}\n`);

const danger = lines<{ text: string; kind: string; oblique: boolean }>(setOf("danger.jsonl"));
const near = lines<{ text: string }>(setOf("near-misses.jsonl"));
const missed = danger.filter(({ text }) => !recogniseDanger(text));
const falseAlarms = near.filter(({ text }) => recogniseDanger(text));
console.log("danger now");
console.log(`  found  ${share(danger.length - missed.length, danger.length)}; oblique  ${share(danger.filter((one) => one.oblique && !missed.includes(one)).length, danger.filter((one) => one.oblique).length)}`);
console.log(`  false alarms on near misses  ${share(falseAlarms.length, near.length)}\n`);

interface Expected {
  readonly dimension: string;
  readonly value: number;
  readonly unit: string;
  readonly basis?: "wet" | "dry" | null;
}
const PERIODS: Readonly<Record<string, number>> = { week: 7 * 24, month: 30.44 * 24, year: 365.25 * 24 };
/** value in the dimension's base unit */
function base(value: number, unit: string): number {
  if (unit in PERIODS) return value * (PERIODS[unit] as number);
  return unit in UNITS ? convert(value, unit as UnitId, ({ mass: "kg", volume: "m3", length: "m", temperature: "C", share: "pct", duration: "h" } as Record<string, UnitId>)[UNITS[unit as UnitId].dimension] ?? (unit as UnitId)) : value;
}
function same(expected: Expected, figure: Figure | undefined): boolean {
  if (!figure) return false;
  const read = expected.dimension === "share" ? (asShare(figure) ?? figure) : figure;
  if (expected.dimension === "money") return figure.money !== undefined && Math.abs(figure.value - expected.value) <= 0.005 * Math.abs(expected.value);
  const want = base(expected.value, expected.unit);
  const got = read.unit === null ? (expected.dimension === "temperature" ? read.value : Number.NaN) : base(read.value, read.unit);
  const tolerance = expected.unit in PERIODS ? 0.03 : 0.005;
  const middle = read.low !== undefined && read.high !== undefined && read.unit !== null ? base((read.low + read.high) / 2, read.unit) : got;
  const fits = [got, middle].some((value) => Math.abs(value - want) <= Math.max(tolerance * Math.abs(want), 1e-9));
  return fits && (expected.dimension !== "share" || (expected.basis ?? null) === (read.basis ?? null));
}
const quantities = lines<{ text: string; expect: Expected[] }>(setOf("quantities.jsonl"));
let figuresRight = 0;
let figuresAll = 0;
let messagesRight = 0;
for (const { text, expect } of quantities) {
  const found = readFigures(inEnglish(text));
  let from = 0;
  const hits = expect.filter((expected) => {
    const at = found.findIndex((figure, i) => i >= from && same(expected, figure));
    if (at >= 0) from = at + 1;
    return at >= 0;
  }).length;
  figuresRight += hits;
  figuresAll += expect.length;
  if (hits === expect.length) messagesRight += 1;
}
console.log("quantities and basis");
console.log(`  figures  ${share(figuresRight, figuresAll)}`);
console.log(`  messages with every figure right  ${share(messagesRight, quantities.length)}\n`);

const ranked = (hits: readonly { topic: string }[]): string[] => [...new Set(hits.map(({ topic }) => topic))].slice(0, 3);
const mini = new MiniSearch<{ id: number; text: string; topic: string }>({ fields: ["text"], storeFields: ["topic"], searchOptions: { fuzzy: 0.2, prefix: true } });
mini.addAll(training.map(({ text, topic }, id) => ({ id, text, topic })));
const search = report("MiniSearch 7.2, fuzzy and prefix, nearest training messages", (text) => ranked(mini.search(text).slice(0, 30) as unknown as { topic: string }[]));

const db = new Database(":memory:");
db.exec("create virtual table messages using fts5(text, topic unindexed)");
const insert = db.prepare("insert into messages values (?, ?)");
for (const { text, topic } of training) insert.run(text, topic);
const bm25 = db.prepare("select topic from messages where messages match ? order by bm25(messages) limit 30");
report("SQLite FTS5, BM25, nearest training messages", (text) => {
  const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.length === 0 ? [] : ranked(bm25.all(words.map((word) => `"${word}"`).join(" OR ")) as { topic: string }[]);
});
console.log(`p50 beside MiniSearch fuzzy: ${(ours.p50 / search.p50).toFixed(3)} of its time (limit 0.1), ${ours.plain + ours.oblique >= search.plain + search.oblique ? "at no less accuracy" : "at LESS accuracy"}\n`);

const python = process.env.GLEED_PYTHON ?? "python3";
if (existsSync(here("baselines.py"))) {
  const run = spawnSync(python, [here("baselines.py").pathname, ...(isGerman ? ["de-"] : [])], { encoding: "utf8" });
  console.log(run.status === 0 ? run.stdout : `baselines in Python not run (${python} lacks scikit-learn): pip install scikit-learn, or set GLEED_PYTHON`);
}
