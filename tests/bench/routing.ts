/** What finding a message's topic costs: beside a fuzzy full-text search of the same training messages, and as the message grows. */
import MiniSearch from "minisearch";
import { route } from "../../src/conversation/routing/route.ts";
import { recogniseDanger } from "../../src/emergency/index.ts";
import { loadMessages } from "../training/data.ts";
import { type Line, median } from "./measure.ts";

const LENGTH = 200;
const ROUTE_LIMIT_MS = 1;
const SEARCH_LIMIT = 0.1;
const GROWTH_LIMIT = 15;
/** each is tried so often, and the quickest counts: others use the machine too */
const TRIES = 5;

export function quickest_ms(work: () => unknown, tries = TRIES): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < tries; i++) {
    const from = performance.now();
    work();
    least = Math.min(least, performance.now() - from);
  }
  return least;
}

/** Processor time, for what takes longer than a slice of a shared machine. */
export function least_ms(work: () => unknown, tries: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < tries; i++) {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

/** Messages strung together, from the `from`th on, to exactly `length` characters. */
export function strung(messages: readonly string[], from: number, length: number): string {
  let words = "";
  for (let at = from; words.length < length; at++) words += `${messages[at % messages.length]} `;
  return words.slice(0, length);
}

/** Half and 99 of 100 messages of 200 characters are routed within, ms. */
export function routed_ms(messages: readonly string[], most = 500): { p50: number; p99: number } {
  const walls = messages.slice(0, most).map((_, at) => strung(messages, at, LENGTH));
  for (const words of walls) route(words);
  const times = walls.map((words) => quickest_ms(() => route(words))).sort((a, b) => a - b);
  return { p50: median(times), p99: times[Math.floor(0.99 * times.length)] ?? Number.NaN };
}

/** Every how many training messages one is asked for. */
const EVERY = 80;

export async function routing(): Promise<Line[]> {
  const training = loadMessages();
  const messages = training.map(({ text }) => text);
  const asked = messages.filter((_, at) => at % EVERY === 0);
  const mini = new MiniSearch<{ id: number; text: string }>({ fields: ["text"], searchOptions: { fuzzy: 0.2, prefix: true } });
  mini.addAll(messages.map((text, id) => ({ id, text })));
  for (const text of asked.slice(0, 50)) mini.search(text);
  const long = routed_ms(messages);
  const ours = median(asked.map((text) => quickest_ms(() => route(text))));
  const search = median(asked.map((text) => quickest_ms(() => mini.search(text), 3)));
  const grown = (work: (words: string) => unknown): number => least_ms(() => work(strung(messages, 3, 20_000)), 20) / least_ms(() => work(strung(messages, 3, 2_000)), 20);
  return [
    { what: `route ${LENGTH} characters, 99 of 100 messages`, measured: long.p99, limit: ROUTE_LIMIT_MS, is: "at most", unit: "ms", note: `half of them ${long.p50.toFixed(2)} ms` },
    { what: "route a message, beside a fuzzy MiniSearch of the training messages (medians)", measured: ours / search, limit: SEARCH_LIMIT, is: "at most", unit: "x", note: `${ours.toFixed(3)} ms beside ${search.toFixed(2)} ms` },
    { what: "route 20,000 characters, beside 2,000", measured: grown(route), limit: GROWTH_LIMIT, is: "at most", unit: "x" },
    { what: "look for danger in 20,000 characters, beside 2,000", measured: grown(recogniseDanger), limit: GROWTH_LIMIT, is: "at most", unit: "x" },
  ];
}
