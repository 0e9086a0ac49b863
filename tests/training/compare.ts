/**
 * The router beside plain baselines on held-out folds of the English training messages, near twins kept together:
 * `node tests/training/compare.ts [folds] [folds to run]`, table for README.md. GLEED_PYTHON names a Python with scikit-learn.
 */
import { spawnSync } from "node:child_process";
import Database from "better-sqlite3";
import MiniSearch from "minisearch";
import { best } from "../../src/conversation/routing/route.ts";
import { TOPICS } from "../../src/conversation/topics.ts";
import { calibrate } from "./calibrate.ts";
import { loadMessages, type Message } from "./data.ts";
import { crossValidate, type Held, judge, prepare } from "./fit.ts";
import { foldsOf } from "./groups.ts";

const folds = Number(process.argv[2] ?? 5);
const run = Number(process.argv[3] ?? folds);
const messages = loadMessages();
const foldOf = foldsOf(messages.map(({ text }) => text), folds, 5);
const held = Array.from({ length: run }, (_, fold) => messages.filter((_, i) => foldOf[i] === fold));
const others = held.map((_, fold) => messages.filter((_, i) => foldOf[i] !== fold));

/** [fold][message] -> its likeliest topics */
type Ranked = readonly (readonly (readonly string[])[])[];
const topicsOf = (hits: readonly { topic: string }[]): string[] => [...new Set(hits.map(({ topic }) => topic))].slice(0, 3);

function miniSearch(): Ranked {
  return held.map((fold, n) => {
    const index = new MiniSearch<{ id: number; text: string; topic: string }>({ fields: ["text"], storeFields: ["topic"], searchOptions: { fuzzy: 0.2, prefix: true } });
    index.addAll((others[n] as Message[]).map(({ text, topic }, id) => ({ id, text, topic })));
    return fold.map(({ text }) => topicsOf(index.search(text).slice(0, 30) as unknown as { topic: string }[]));
  });
}

function fts5(): Ranked {
  return held.map((fold, n) => {
    const db = new Database(":memory:");
    db.exec("create virtual table messages using fts5(text, topic unindexed)");
    const insert = db.prepare("insert into messages values (?, ?)");
    for (const { text, topic } of others[n] as Message[]) insert.run(text, topic);
    const nearest = db.prepare("select topic from messages where messages match ? order by bm25(messages) limit 30");
    return fold.map(({ text }) => {
      const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
      return words.length === 0 ? [] : topicsOf(nearest.all(words.map((word) => `"${word}"`).join(" OR ")) as { topic: string }[]);
    });
  });
}

/** Each fold put together by what the other folds taught. */
function ours(): Ranked {
  const { lexicon, vectors, examples } = prepare(messages);
  const scored = crossValidate(examples, lexicon, vectors, foldOf, run);
  const byFold = held.map((fold) => scored.splice(0, fold.length));
  return byFold.map((fold, n) => {
    const calibration = calibrate(byFold.filter((_, other) => other !== n || run === 1).flat() as Held[], "en");
    return fold.map(({ scores }) => best(TOPICS, judge(scores, calibration), 3).map(({ topic }) => topic));
  });
}

function inPython(): Record<string, Ranked> {
  const indices = held.map((_, fold) => messages.flatMap((_, i) => (foldOf[i] === fold ? [i] : [])));
  const python = process.env.GLEED_PYTHON ?? "python3";
  const { status, stdout, stderr } = spawnSync(python, [new URL("baseline_models.py", import.meta.url).pathname],
    { input: JSON.stringify({ messages, folds: indices }), encoding: "utf8", maxBuffer: 1e9 });
  console.error(status === 0 ? stderr : `Baselines in Python not run: ${python} lacks scikit-learn.`);
  return status === 0 ? (JSON.parse(stdout) as Record<string, Ranked>) : {};
}

const all = held.flat();
const KINDS: Readonly<Record<string, (message: Message) => boolean>> = {
  plain: ({ topic, style }) => topic !== "out-of-scope" && style !== "oblique",
  oblique: ({ topic, style }) => topic !== "out-of-scope" && style === "oblique",
  "out of scope": ({ topic }) => topic === "out-of-scope",
};

function row(name: string, ranked: Ranked): string {
  const flat = ranked.flat();
  const share = (kind: (message: Message) => boolean, n: number): string => {
    const chosen = all.flatMap((message, i) => (kind(message) ? [{ message, topics: (flat[i] ?? []).slice(0, n) }] : []));
    const right = chosen.filter(({ message, topics }) => topics.some((topic) => topic === message.topic || (message.also as readonly string[]).includes(topic)));
    return `${((100 * right.length) / (chosen.length || 1)).toFixed(1)} %`;
  };
  const { plain, oblique, "out of scope": outside } = KINDS as Record<string, (message: Message) => boolean>;
  return `| ${[name, share(plain!, 1), share(plain!, 3), share(oblique!, 1), share(oblique!, 3), share(outside!, 1)].join(" | ")} |`;
}

console.log(`${messages.length} messages, ${run} of ${folds} folds: ${all.length} held out, ${Object.entries(KINDS).map(([name, kind]) => `${all.filter(kind).length} ${name}`).join(", ")}`);
console.log("| Model | Plain, first | first three | Oblique, first | first three | Out of scope |\n|---|---|---|---|---|---|");
console.log(row("MiniSearch 7.2, fuzzy and prefix, nearest messages", miniSearch()));
console.log(row("SQLite FTS5, BM25, nearest messages", fts5()));
for (const [name, ranked] of Object.entries(inPython())) console.log(row(name, ranked));
console.log(row("Gleed", ours()));
