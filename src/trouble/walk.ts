/**
 * Walks a trouble: weighs its causes by what is known, and asks what tells most.
 *
 * Each cause starts at its prior and is multiplied by the weight its file gives to every known sign. Weights of figures are interpolated
 * between the written ones, on a logarithmic scale. The next question is the one that is expected to take most doubt away (in bits).
 */
import type { Arg, Text } from "../answer.ts";
import type { HeaterFacts } from "../records/schemas.ts";
import type { Cause, Sign, Trouble, When } from "../knowledge/schemas.ts";

/** What was said fits several answers, or one only faintly: how likely each is, all together 1. */
export interface Graded {
  readonly likely: Readonly<Record<string, number>>;
  /** only a hint: the question is still asked */
  readonly open?: true;
}
/** an answer id, a figure in the sign's unit, likelihoods, or null when the person does not know */
export type SignAnswer = string | number | null | Graded;
export const isGraded = (answer: SignAnswer | undefined): answer is Graded => typeof answer === "object" && answer !== null;

export interface Observation {
  readonly answer: SignAnswer;
  readonly from: "record" | "person";
  /** what a sentence about it may quote: {value}, and whatever else the fact brings */
  readonly args?: Readonly<Record<string, Arg>>;
}
export type Observations = Readonly<Record<string, Observation>>;

export interface RankedCause {
  readonly id: string;
  readonly cause: Cause;
  /** 0 to 1; all together 1 */
  readonly share: number;
  readonly because: readonly Text[];
}
export interface Walk {
  readonly ranked: readonly RankedCause[];
  /** the sign to ask about next, or null when asking on would be idle */
  readonly ask: string | null;
  readonly stop: { readonly cause?: string; readonly emergency?: string } | null;
}

/** Stop asking when one cause has this share, after this many questions, or when no question is worth this many bits. */
const CLEAR_SHARE = 0.8;
/** the same where all that is known was only mentioned in passing */
const CLEAR_BY_STORY = 0.9;
const MOST_QUESTIONS = 5;
/** One more is asked while no cause has so much. */
const HALF = 0.5;
const LEAST_BITS = 0.06;
/** A question that may put another cause first with this chance is asked though one cause is clear. */
const OVERTURNS = 0.03;
/** Below this share a cause is not worth a person's time. */
const NAMED_SHARE = 0.02;
/** A sign speaks for a cause from this weight on. */
const SPEAKS = 1.4;

export function walk(trouble: Trouble, heater: HeaterFacts, seen: Observations, asked: readonly string[]): Walk {
  const causes = Object.entries(trouble.causes).filter(([, cause]) => holds(cause.when, heater) !== false);
  const weights = normalised(causes.map(([, cause]) => cause.prior * product(trouble, cause, seen)), causes.map(([, cause]) => cause.prior));

  const ranked = causes
    .map(([id, cause], i) => ({ id, cause, share: weights[i] ?? 0, because: reasons(trouble, id, cause, seen) }))
    .filter((entry) => entry.share >= NAMED_SHARE)
    .sort((a, b) => b.share - a.share);

  const stop = stopped(trouble, seen);
  const open = Object.entries(trouble.signs).filter(
    ([id, sign]) => sign.ask !== undefined && (!(id in seen) || hintOnly(seen[id])) && !asked.includes(id) && holds(sign.when, heater) !== false,
  );
  const first = open.find(([, sign]) => sign.first);
  const share = ranked[0]?.share ?? 0;
  const over = stop !== null || asked.length >= MOST_QUESTIONS + (share < HALF ? 1 : 0);
  const best = first && stop === null ? first[0] : over ? null : mostTelling(open, causes, weights, share >= clearFrom(trouble, ranked, seen, asked));
  return { ranked, ask: best, stop };
}

/**
 * From which share on the first cause is clear. What was only mentioned, neither on record nor asked for, may be misheard: it has to be two
 * things that agree, or something has to have been asked and answered.
 */
function clearFrom(trouble: Trouble, [first, second]: readonly RankedCause[], seen: Observations, asked: readonly string[]): number {
  if (!first || !second) return CLEAR_SHARE;
  const speaking = Object.entries(seen).filter(([id, { answer }]) => {
    const sign = trouble.signs[id];
    return sign && answer !== null && weightOf(first.cause, id, sign, answer) >= SPEAKS * weightOf(second.cause, id, sign, answer);
  });
  if (speaking.some(([id, { from }]) => from === "record" || asked.includes(id))) return toldOnly(seen) ? CLEAR_BY_STORY : CLEAR_SHARE;
  const answered = asked.some((id) => seen[id] !== undefined && seen[id].answer !== null && !trouble.signs[id]?.first);
  return speaking.length >= 2 || answered ? CLEAR_BY_STORY : Infinity;
}

const toldOnly = (seen: Observations): boolean => Object.values(seen).every(({ answer }) => isGraded(answer) || answer === null);
const hintOnly = (seen: Observation | undefined): boolean => isGraded(seen?.answer) && seen.answer.open === true;

/** true or false where the heater's facts decide it, null where they are unknown */
export function holds(when: When | undefined, heater: HeaterFacts): boolean | null {
  let unknown = false;
  for (const [key, wanted] of Object.entries(when ?? {})) {
    const fact = heater[key as keyof HeaterFacts];
    if (fact === undefined || fact === "unknown") unknown = true;
    else if (!(Array.isArray(wanted) ? wanted : [wanted]).includes(fact as never)) return false;
  }
  return unknown ? null : true;
}

function product(trouble: Trouble, cause: Cause, seen: Observations): number {
  let weight = 1;
  for (const [id, observation] of Object.entries(seen)) {
    const sign = trouble.signs[id];
    if (sign && observation.answer !== null) weight *= weightOf(cause, id, sign, observation.answer);
  }
  return weight;
}

/** Weight that a cause gives to an answer; 1 where its file says nothing. Of likelihoods, the mean that they expect. */
export function weightOf(cause: Cause, signId: string, sign: Sign, answer: string | number | Graded): number {
  const table = cause.weighs[signId];
  if (!table) return 1;
  if (isGraded(answer)) return Object.entries(answer.likely).reduce((sum, [id, likely]) => sum + likely * weightOf(cause, signId, sign, id), 0);
  if (sign.kind === "yes-no" || sign.kind === "choice") return table[String(answer)] ?? 1;
  const figure = typeof answer === "number" ? answer : sign.answers?.find((entry) => entry.id === answer)?.value;
  if (figure === undefined) return 1;
  return between(Object.entries(table).map(([at, weight]) => [Number(at), weight] as const).sort((a, b) => a[0] - b[0]), figure);
}

function between(points: readonly (readonly [number, number])[], figure: number): number {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return 1;
  if (figure <= first[0]) return first[1];
  if (figure >= last[0]) return last[1];
  const upper = points.findIndex(([at]) => at >= figure);
  const [x0, y0] = points[upper - 1] ?? first;
  const [x1, y1] = points[upper] ?? last;
  const part = (figure - x0) / (x1 - x0);
  return y0 > 0 && y1 > 0 ? y0 ** (1 - part) * y1 ** part : y0 + (y1 - y0) * part;
}

function normalised(weights: readonly number[], priors: readonly number[]): number[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  if (sum > 0) return weights.map((weight) => weight / sum);
  const all = priors.reduce((a, b) => a + b, 0);
  return priors.map((prior) => prior / all);
}

function reasons(trouble: Trouble, causeId: string, cause: Cause, seen: Observations): Text[] {
  const found: { weight: number; text: Text }[] = [];
  for (const [id, observation] of Object.entries(seen)) {
    const sign = trouble.signs[id];
    if (!sign || observation.answer === null) continue;
    const weight = weightOf(cause, id, sign, observation.answer);
    if (weight < SPEAKS) continue;
    const path = `troubles.${trouble.id}`;
    const surest = isGraded(observation.answer) ? likeliest(observation.answer) : observation.answer;
    const picked = sign.answers?.find((entry) => entry.id === surest);
    const args = observation.args ?? {};
    if (surest === null) continue;
    const textId =
      quotable(cause.because[id], args) ? `${path}.causes.${causeId}.because.${id}`
      : picked && quotable(picked.says, args) ? `${path}.signs.${id}.answers.${picked.id}.says`
      : quotable(sign.says, args) && (observation.from === "record" || sign.kind !== "yes-no" || surest === "yes") ? `${path}.signs.${id}.says`
      : null;
    if (textId) found.push({ weight, text: { id: textId, ...(observation.args ? { args: observation.args } : {}) } });
    else if (picked) found.push({ weight, text: { id: "trouble.you-said", args: { answer: { id: `${path}.signs.${id}.answers.${picked.id}.label` } } } });
  }
  return found.sort((a, b) => b.weight - a.weight).map((entry) => entry.text);
}

/** The answer that is likelier than all others together; null where none is. */
const likeliest = ({ likely }: Graded): string | null => Object.entries(likely).find(([, one]) => one >= 0.5)?.[0] ?? null;

/** Whether everything a sentence wants to quote is at hand. */
const quotable = (words: string | undefined, args: Readonly<Record<string, Arg>>): words is string =>
  words !== undefined && [...words.matchAll(/\{\s*(\w+)\s*[,}]/g)].every(([, name]) => (name as string) in args);

function stopped(trouble: Trouble, seen: Observations): Walk["stop"] {
  for (const [id, sign] of Object.entries(trouble.signs)) {
    const answer = seen[id]?.answer;
    if (answer === undefined || isGraded(answer)) continue;
    const end = sign.stop?.[answer === null ? "unknown" : typeof answer === "number" ? nearest(sign, answer) : answer];
    if (end) return end;
  }
  return null;
}

/** the answer whose figure lies nearest */
const nearest = (sign: Sign, figure: number): string =>
  [...(sign.answers ?? [])].sort((a, b) => Math.abs((a.value ?? Infinity) - figure) - Math.abs((b.value ?? Infinity) - figure))[0]?.id ?? "";

/** @param led one cause is clear: only what could still overturn it is worth a question */
function mostTelling(open: readonly (readonly [string, Sign])[], causes: readonly (readonly [string, Cause])[], shares: readonly number[], led: boolean): string | null {
  const now = bits(shares);
  const leader = shares.indexOf(Math.max(...shares));
  let best: string | null = null;
  let most = LEAST_BITS;
  for (const [id, sign] of open) {
    const answers = sign.kind === "yes-no" ? ["yes", "no"] : (sign.answers ?? []).map((answer) => answer.id);
    if (answers.length === 0) continue;
    const likelihood = causes.map(([, cause]) => {
      const each = answers.map((answer) => weightOf(cause, id, sign, answer));
      const sum = each.reduce((a, b) => a + b, 0);
      return each.map((weight) => (sum > 0 ? weight / sum : 1 / answers.length));
    });
    let after = 0;
    let overturned = 0;
    for (let a = 0; a < answers.length; a++) {
      const joint = shares.map((share, c) => share * (likelihood[c]?.[a] ?? 0));
      const chance = joint.reduce((x, y) => x + y, 0);
      if (chance > 0) after += chance * bits(joint.map((j) => j / chance));
      if (joint.indexOf(Math.max(...joint)) !== leader) overturned += chance;
    }
    if (led && overturned < OVERTURNS) continue;
    if (now - after > most) {
      most = now - after;
      best = id;
    }
  }
  return best;
}

const bits = (shares: readonly number[]): number => -shares.reduce((sum, p) => (p > 0 ? sum + p * Math.log2(p) : sum), 0);
