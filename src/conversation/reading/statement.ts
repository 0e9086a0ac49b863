/** A text taken apart for reading records: its figures and moments, and the words beside each that say what it is about. */
import type { UnitSystem } from "../../quantities.ts";
import type { ClockOptions } from "./clock.ts";
import { figuresIn, type Figure } from "./figures.ts";
import { readNumberWords } from "./number-words.ts";
import { COMMON_SPECIES, type SpeciesName } from "./species.ts";
import { momentsIn, zoned, type Moment } from "./times.ts";
import { isSign, isWord, scan, wordAt, type Span, type Token } from "./tokens.ts";

export interface Question {
  readonly id: string;
  readonly text: string;
  readonly choices?: readonly { readonly id: string; readonly label: string }[];
}

/** What was read: fields that fit, sentences about those that did not, what must be asked, what was taken for granted. */
export interface Read<T> {
  readonly facts: T;
  readonly problems: readonly string[];
  readonly questions: readonly Question[];
  readonly assumed: readonly string[];
}

export interface ReadContext {
  /** needed for dates; epoch milliseconds */
  readonly now_ms?: number;
  readonly timezone?: string;
  /** what bare numbers and bare degrees are taken for */
  readonly system?: UnitSystem;
  readonly locale?: string;
  readonly species?: readonly SpeciesName[];
}

export class Findings {
  readonly problems: string[] = [];
  readonly questions: Question[] = [];
  readonly assumed: string[] = [];
  ask(id: string, text: string, choices?: Readonly<Record<string, string>>): void {
    if (this.questions.some((question) => question.id === id)) return;
    this.questions.push({ id, text, ...(choices ? { choices: Object.entries(choices).map(([choice, label]) => ({ id: choice, label })) }
      : {}) });
  }
}

export interface Said {
  readonly kind: "figure" | "moment";
  readonly figure?: Figure;
  readonly moment?: Moment;
  readonly cues: ReadonlySet<string>;
  readonly from: number;
  readonly to: number;
  readonly clause: number;
}

export interface Statement {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly said: readonly Said[];
  /** the clause each token stands in */
  readonly clauses: readonly number[];
  /** where each word stands */
  readonly places: ReadonlyMap<string, readonly number[]>;
  readonly now: Temporal.ZonedDateTime | null;
  readonly system: UnitSystem;
  readonly species: readonly SpeciesName[];
}

/** Words that tell what a figure is: cue to phrases. The key "mass:max" would be the cue "max" that only masses take. */
export type Cues = Readonly<Record<string, readonly string[]>>;

export interface StateOptions extends ClockOptions {
  readonly cues: Cues;
  /** which values a cue may go to; any when absent */
  readonly takes?: Readonly<Record<string, (said: { readonly figure?: Figure; readonly moment?: Moment }) => boolean>>;
  readonly lean?: "past" | "future" | "nearest";
  readonly moments?: boolean;
}

const STOPS = new Set([",", ";", ".", "!", "?", "\n", "(", ")", "–", "|", "•"]);
const SOFT_STOPS = new Set(["and", "but", "plus", "then", "also"]);
/** A record is said in fewer characters than this; of a longer text the rest is left, and said so. */
export const LONGEST_STATEMENT = 2000;
/** How far a cue reaches, in tokens. */
const REACH = 6;

export function state(whole: string, context: ReadContext, options: StateOptions, findings?: Findings): Statement {
  const text = whole.slice(0, LONGEST_STATEMENT);
  if (whole.length > LONGEST_STATEMENT) findings?.problems.push(
    `Only the first ${LONGEST_STATEMENT} characters were read; send the rest as messages of their own.`);
  const tokens = readNumberWords(scan(text));
  const now = context.now_ms === undefined ? null : zoned(context.now_ms, context.timezone ?? "UTC");
  const system = context.system ?? "metric";
  const degrees = system === "us" ? "F" : "C";
  const moments = now && options.moments !== false
    ? momentsIn(text, tokens, now, { ...options, lean: options.lean ?? "past", ...(context.locale ? { locale: context.locale } : {}) })
    : [];
  const figures = figuresIn(tokens, { degrees }).filter(({ from, to, figure }) =>
    (figure.dimension !== null && figure.dimension !== "duration") || !moments.some((moment) => moment.from < to && from < moment.to));
  const clauses = clausesOf(text, tokens);
  const values = [
    ...figures.map(({ figure, from, to }) => ({ kind: "figure" as const, figure, from, to })),
    ...moments.filter((moment) => !figures.some(({ from, to }) => moment.from < to && from < moment.to)).map((moment) =>
      ({ kind: "moment" as const, moment, from: moment.from, to: moment.to })),
  ].sort((a, b) => a.from - b.from).map((value) => ({ ...value, clause: clauses[value.from] ?? 0, cues: new Set<string>() }));
  attach(tokens, clauses, values, options);
  return { text, tokens, said: values, clauses, places: placesOf(tokens), now, system, species: context.species ?? COMMON_SPECIES };
}

function placesOf(tokens: readonly Token[]): Map<string, number[]> {
  const places = new Map<string, number[]>();
  tokens.forEach((token, i) => {
    if (token.kind !== "word") return;
    const list = places.get(token.word);
    if (list) list.push(i);
    else places.set(token.word, [i]);
  });
  return places;
}

function clausesOf(text: string, tokens: readonly Token[]): number[] {
  let clause = 0;
  let end = 0;
  return tokens.map((token, i) => {
    const line = text.slice(end, token.at[0]).includes("\n");
    end = token.at[1];
    const slash = isSign(token, "/") && token.gap;
    const stop = (token.kind === "sign" && STOPS.has(token.sign)) || isWord(token, ...SOFT_STOPS) || slash
      || (isSign(token, "-") && token.gap && tokens[i + 1]?.gap === true);
    if (line || stop) clause += 1;
    return clause;
  });
}

type Value = Said & { readonly cues: Set<string> };
interface CueHit {
  readonly cue: string;
  readonly from: number;
  readonly to: number;
  readonly clause: number;
}

/** Where the words of some cues stand. */
export function findCues(tokens: readonly Token[], clauses: readonly number[], cues: Cues): CueHit[] {
  const phrases = phraseMap(cues);
  const hits: CueHit[] = [];
  for (let i = 0; i < tokens.length; i += 1) {
    let phrase = "";
    let best: CueHit | null = null;
    let bestCues: readonly string[] = [];
    for (let n = 0; n < 6; n += 1) {
      if (n > 0 && isSign(tokens[i + n], "-") && !tokens[i + n]?.gap) continue;
      const word = wordAt(tokens[i + n]);
      if (!word) break;
      phrase = n === 0 ? word : `${phrase} ${word}`;
      const found = phrases.get(phrase);
      if (found) {
        bestCues = found;
        best = { cue: found[0] as string, from: i, to: i + n + 1, clause: clauses[i] ?? 0 };
      }
    }
    if (!best) continue;
    for (const cue of bestCues) hits.push({ ...best, cue });
    i = best.to - 1;
  }
  return hits;
}

const phraseMaps = new WeakMap<Cues, Map<string, string[]>>();
function phraseMap(cues: Cues): Map<string, string[]> {
  let map = phraseMaps.get(cues);
  if (!map) {
    map = new Map();
    for (const [cue, list] of Object.entries(cues)) {
      for (const phrase of list) map.set(phrase, [...(map.get(phrase) ?? []), cue]);
    }
    phraseMaps.set(cues, map);
  }
  return map;
}

/**
 * Gives each cue to the value it speaks of: the next in its clause, else the one before; the other way where a clause is written "7 kg min
 * 15 kg max".
 */
function attach(tokens: readonly Token[], clauses: readonly number[], values: readonly Value[], options: StateOptions): void {
  const hits = findCues(tokens, clauses, options.cues);
  const valuesOf = Map.groupBy(values, (value) => value.clause);
  const hitsOf = Map.groupBy(hits, (hit) => hit.clause);
  for (const [clause, own] of hitsOf) {
    const inClause = valuesOf.get(clause) ?? [];
    const first = inClause[0];
    const last = own.at(-1) as CueHit;
    const groups = new Set(own.map(({ from }) => from)).size;
    const trailing = first !== undefined && inClause.length > 1 && groups === inClause.length && first.from < (own[0] as CueHit).from
      && last.from > (inClause.at(-1) as Value).from;
    let at = 0;
    for (const hit of own) {
      const fits = (value: Value | undefined): value is Value => value !== undefined && (options.takes?.[hit.cue]?.(value) ?? true);
      while (at < inClause.length && (inClause[at] as Value).from < hit.from) at += 1;
      const after = firstFitting(inClause, at, 1, (value) => value.from - hit.to <= REACH && fits(value));
      const before = firstFitting(inClause, at - 1, -1, (value) => hit.from - value.to <= REACH && fits(value));
      const closer = after && before && before.to === hit.from && after.from - hit.to > 1 ? before : null;
      const chosen = trailing ? (before ?? after) : (closer ?? after ?? before);
      chosen?.cues.add(hit.cue);
    }
  }
}

/** Looks at a handful of neighbours only, so that long clauses stay linear. */
function firstFitting(values: readonly Value[], from: number, step: 1 | -1, fits: (value: Value) => boolean): Value | undefined {
  for (let i = from, n = 0; n < 4 && i >= 0 && i < values.length; i += step, n += 1) {
    const value = values[i] as Value;
    if (fits(value)) return value;
  }
  return undefined;
}

const NO = ["no", "not", "without", "none", "never", "hasnt", "havent", "dont", "doesnt", "isnt", "aint", "wasnt", "lacks", "lacking",
  "lack", "nor", "neither", "false", "didnt"];

/** Whether something is said to be there, not to be there, or is not spoken of. The last mention counts. */
export function present(statement: Statement, phrases: readonly string[]): boolean | undefined {
  let last = -1;
  let end = -1;
  for (const phrase of phrases) {
    const words = phrase.split(" ");
    for (const at of statement.places.get(words[0] as string) ?? []) {
      const to = at < last ? -1 : phraseEnd(statement.tokens, at, words);
      if (to < 0 || (at === last && to < end)) continue;
      last = at;
      end = to;
    }
  }
  if (last < 0) return undefined;
  const { tokens } = statement;
  const after = isSign(tokens[end], ":") || isSign(tokens[end], "=") ? tokens[end + 1] : tokens[end];
  return !(isWord(after, "no", "none", "false", "missing") || negatedBefore(statement, last));
}

/** One past the last token of a phrase that begins at a token, hyphens passed over, or -1. */
function phraseEnd(tokens: readonly Token[], from: number, words: readonly string[]): number {
  let i = from;
  for (const word of words) {
    if (isSign(tokens[i], "-") && !tokens[i]?.gap) i += 1;
    if (!isWord(tokens[i], word)) return -1;
    i += 1;
  }
  return i;
}

/** "no grate", "no grate or bypass", "there is not a damper": a no within four words before, in the same clause. */
export function negatedBefore({ tokens, clauses }: Pick<Statement, "tokens" | "clauses">, at: number): boolean {
  for (let i = at - 1; i >= Math.max(0, at - 5); i -= 1) {
    if (clauses[i] !== clauses[at]) return false;
    if (isWord(tokens[i], ...NO) && !isWord(tokens[i + 1], "idea", "clue", "doubt", "problem", "matter", "only")) return true;
  }
  return false;
}

export const wordsIn = (statement: Statement, list: readonly string[]): boolean => present(statement, list) !== undefined;

/** A name given with "called", "named" or in quotes after "name". */
export function nameGiven({ text, tokens }: Statement): string | undefined {
  const at = tokens.findIndex((token, i) => isWord(token, "called", "named")
    || (isWord(token, "name") && (isWord(tokens[i + 1], "is") || isSign(tokens[i + 1], ":")))
    || (isWord(token, "call") && isWord(tokens[i + 1], "it")));
  if (at < 0) return undefined;
  let from = at + (isWord(tokens[at], "name", "call") ? 2 : 1);
  const quoted = isSign(tokens[from], '"') || isSign(tokens[from], "'");
  if (quoted) from += 1;
  let to = from;
  while (to < tokens.length && to - from < 8 && !(tokens[to]?.kind === "sign" && STOPS.has((tokens[to] as { sign: string }).sign))
    && !isSign(tokens[to], '"') && !(quoted && isSign(tokens[to], "'"))) to += 1;
  if (to === from) return undefined;
  const name = text.slice((tokens[from] as Token).at[0], (tokens[to - 1] as Token).at[1]).trim().slice(0, 80);
  return name || undefined;
}

export const spanText = (text: string, at: Span): string => text.slice(at[0], at[1]).trim();

/** At most so many digits after the point, for sentences. */
export const plain = (value: number, digits = 1): string => String(Number(value.toFixed(digits)));
