/**
 * Circumstances in which danger words are no danger now: supposed, told of another time, a habit, a test, a question about the world.
 * A circumstance does not reach into a later stretch of the sentence that speaks of now ("last year ..., and tonight it is roaring").
 */

import type { Sensed } from "./senses.ts";

export type Circumstance =
  | "unreal" | "maybe" | "past" | "yesterday" | "habit" | "asking" | "asks" | "general" | "testing" | "joke"
  /** One chirp a minute and, said as well, that nobody is unwell or that the battery is low. */
  | "flat battery";

/** Words after which a sentence turns to something else. */
export const TURNS = new Set("but however although though except only yet aber men mutta mais pero".split(" "));

const OPENS_STRETCH = new Set("and because so today tonight now und y et och ja i".split(" ").filter((word) => word.length > 1));
const SPEAKS_OF_NOW = new Set(
  ("is are am now today tonight currently still there keep keeps has have feel feels wont cannot cant hear see smells says roars fills "
    + "shoots burns glows beeps screams mine smokes help").split(" "),
);
const ONGOING = "ing";
/** "Can ash set fire to a deck": a question about the world, unless it speaks of us. */
const OPENS_GENERAL_QUESTION = new Set("can could does do will would may are".split(" "));
const OPENS_QUESTION = new Set("can could does do will would should may are is how what which where who when shall".split(" "));
const OF_OURS = ["i", "many", "now", "recent"];
/** More of them in one sentence say nothing new, and would cost time. */
const MOST_IN_A_SENTENCE = 12;

const BY_SENSE: readonly (readonly [sense: string, circumstance: Circumstance])[] = [
  ["hypothetical", "unreal"], ["topical", "unreal"], ["maybe", "maybe"], ["history", "past"], ["yesterday", "yesterday"],
  ["habit", "habit"], ["asking", "asking"], ["testing", "testing"],
];
/** These hold only for what follows them. */
const FORWARD: ReadonlySet<string> = new Set(["hypothetical", "asking"]);
/** These fall away when the same words speak of now. */
const NOT_WITH_NOW: ReadonlySet<Circumstance> = new Set<Circumstance>(["past", "yesterday"]);

interface Mark {
  readonly at: number;
  readonly stretch: number;
  readonly sense: string;
  readonly circumstance: Circumstance;
}

/** "1987", "2026": what is told with its year is told of another time. */
function isYear(word: string): boolean {
  return word.length === 4 && (word.startsWith("19") || word.startsWith("20")) && !Number.isNaN(Number(word));
}

export function circumstancesOf(
  { tokens, senses, asks }: Sensed,
  places: ReadonlyMap<string, readonly number[]>,
  denied: (at: number) => boolean,
): (find: { readonly from: number; readonly to: number }) => ReadonlySet<Circumstance> {
  const stretch: number[] = [];
  const now: boolean[] = [];
  const marks: Mark[][] = asks.map(() => []);
  const general = asks.map(() => false);
  const question = [...asks];
  const nowAt: (number | undefined)[] = [];
  const told = asks.map(() => false);
  const history = asks.map(() => false);

  let current = 0;
  tokens.forEach((token, at) => {
    const before = tokens[at - 1];
    const opens = before?.sentence !== token.sentence;
    if (before && (opens || before.clause !== token.clause || TURNS.has(token.word) || OPENS_STRETCH.has(token.word))) current += 1;
    stretch.push(current);
    now[current] ||= SPEAKS_OF_NOW.has(token.word) || (token.word.length > 4 && token.word.endsWith(ONGOING));
    const { sentence } = token;
    if (opens) {
      general[sentence] = OPENS_GENERAL_QUESTION.has(token.word);
      question[sentence] ||= OPENS_QUESTION.has(token.word);
      if (token.word === "which") marks[sentence]?.push({ at, stretch: current, sense: "topical", circumstance: "unreal" });
    }
    if (isYear(token.word)) {
      marks[sentence]?.push({ at, stretch: current, sense: "history", circumstance: "past" });
      history[sentence] = true;
    }
    const own = senses[at];
    if (!own || own.size === 0) return;
    if (OF_OURS.some((sense) => own.has(sense))) general[sentence] = false;
    if (own.has("now") || own.has("recent")) nowAt[sentence] ??= at;
    if (own.has("past")) told[sentence] = true;
    for (const [sense, circumstance] of BY_SENSE) {
      if (!own.has(sense)) continue;
      if (sense === "history") history[sentence] = true;
      const there = marks[sentence];
      if (there && there.length < MOST_IN_A_SENTENCE && !(sense === "testing" && denied(at))) {
        there.push({ at, stretch: current, sense, circumstance });
      }
    }
  });

  const nobodyUnwell = (): boolean => ["ill", "unwell", "felled"].some((sense) => (places.get(sense) ?? []).some(denied));
  const everywhere = new Set<Circumstance>();
  if (places.has("joke")) everywhere.add("joke");
  if (places.has("once_a_minute") && (places.has("battery") || nobodyUnwell())) everywhere.add("flat battery");

  return ({ from, to }) => {
    const found = new Set(everywhere);
    const first = tokens[from]?.sentence ?? 0;
    const last = tokens[to]?.sentence ?? first;
    const [begins, ends] = [stretch[from] ?? 0, stretch[to] ?? 0];
    for (let sentence = first; sentence <= last; sentence += 1) {
      const saysNow = nowAt[sentence];
      const withNow = saysNow !== undefined && (saysNow <= to || stretch[saysNow] === ends);
      for (const mark of marks[sentence] ?? []) {
        if (FORWARD.has(mark.sense) && mark.at >= to) continue;
        if (mark.sense === "hypothetical" && saysNow !== undefined) continue;
        if (withNow && NOT_WITH_NOW.has(mark.circumstance)) continue;
        const reaches = mark.stretch === ends || (mark.sense === "asking" && mark.stretch >= begins && mark.stretch < ends);
        found.add(reaches || mark.circumstance === "maybe" || !now[ends] ? mark.circumstance : "maybe");
      }
      if (question[sentence]) found.add("asks");
      if (general[sentence]) found.add("general");
    }
    if (first > 0 && history[first - 1] && told[first] && nowAt[first] === undefined) found.add("past");
    return found;
  };
}
