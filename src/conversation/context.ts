/** What every topic gets to decide with, and what it gives back. All plain data; nothing here reads a clock, a store or a file. */
import type { Answer, Block, Draft } from "../answer.ts";
import type { Bed } from "../firing/gates.ts";
import type { Knowledge } from "../knowledge/load.ts";
import { holdsFor, limits, type Limits } from "../limits.ts";
import { messageKey, type Message } from "../message.ts";
import type { Due, Heater, HeaterRule, Snapshot, Write } from "../records/types.ts";
import type { Reader } from "../text/render.ts";
import type { SignAnswer } from "../trouble/walk.ts";
import type { TopicId } from "../topics.ts";
import { gloss } from "./german/gloss.ts";
import { heardIn, localeFor, putInMouth, type Spoken } from "./spoken.ts";
import { spokenIn } from "../knowledge/spoken.ts";
import type { Shareable } from "./topics/group-share.ts";

/** What a talk is about. Each part carries the time it was last true and is forgotten with age. */
export interface TalkState {
  readonly topic?: TopicId;
  readonly topic_at_ms?: number;
  /** the trouble being walked */
  readonly tree?: {
    readonly trouble: TopicId;
    /** answers given by the person, by sign */
    readonly said: Readonly<Record<string, SignAnswer>>;
    readonly asked: readonly string[];
    readonly waiting: string | null;
    /** the sign that was asked a second time, after words that nothing could be made of */
    readonly again?: string;
    readonly fire_id?: string;
    readonly at_ms: number;
  };
  /** what was seen of the bed outside a guide */
  readonly bed?: Bed;
  readonly bed_at_ms?: number;
  /** a question outside trees: its id, and what it was about */
  readonly pending?: { readonly id: string; readonly data: Readonly<Record<string, unknown>>; readonly at_ms: number };
  /** the last reckoning, for "and if it is spruce?" and for sharing */
  readonly reckoned?: { readonly topic: TopicId; readonly calculator?: string; readonly inputs: Readonly<Record<string, unknown>>; readonly at_ms: number };
  /** the last answer with figures, as it could be shared; kept only where there is a group */
  readonly shareable?: Shareable;
  /** what was asked or told once and is not asked again, with its time; never forgotten by age */
  readonly asked?: Readonly<Record<string, number>>;
  /** troubles talked about, latest last, with the likeliest cause so far; for the season's report and a brief to send on */
  readonly troubles?: readonly { readonly topic: TopicId; readonly cause?: string; readonly at_ms: number }[];
  /** the language was heard, not chosen: another one heard later takes its place */
  readonly heard?: Spoken;
  /** how to take back the last thing written */
  readonly undo?: { readonly writes: readonly Write[]; readonly at_ms: number };
}

export interface Settings {
  /** country whose emergency number stands when a person's is unknown */
  readonly country?: string;
  readonly timezone: string;
  readonly locale: string;
}

export interface Context {
  readonly snapshot: Snapshot;
  readonly message: Message;
  /** the message as the readers of requests, figures and records take it: in English words, whatever it was written in */
  readonly text: string;
  /** the message as written: what routing, reports of the bed, yes and no, and whatever is shown again are read from */
  readonly said: string;
  /** what the message is read as */
  readonly language: Spoken;
  /** the person's own words behind words of `text` */
  own(words: string): string;
  readonly now_ms: number;
  readonly knowledge: Knowledge;
  readonly reader: Reader;
  readonly state: TalkState;
  readonly settings: Settings;
  /** the heater meant, if the person has one */
  readonly heater: Heater | null;
  readonly limits: Limits;
  /** everything that narrows them: the heater's own rules, and those of its people's groups */
  readonly rules: readonly HeaterRule[];
  /** ids made of what caused them: the same message makes the same rows */
  id(kind: string): string;
}

export interface Outcome {
  readonly draft: Draft;
  /** an answer made elsewhere (an emergency card); it stands in place of the draft */
  readonly ready?: Answer;
  readonly writes?: readonly Write[];
  readonly due?: readonly Due[];
  readonly cancel?: readonly string[];
  /** merged over the talk's state; `undefined` forgets a part */
  readonly state?: { readonly [K in keyof TalkState]?: TalkState[K] | undefined };
  readonly also_tell?: readonly { readonly key: string; readonly person_id: string; readonly place_id: string; readonly draft: Draft }[];
}
export type Handler = (context: Context) => Outcome;

const MIN = 60_000;
const YEAR_MS = 366 * 24 * 60 * MIN;
/** How long each part of a talk stays alive. */
const AGES: Record<string, number> = { tree: 12 * 60 * MIN, bed: 60 * MIN, pending: 2 * 60 * MIN, reckoned: 6 * 60 * MIN, shareable: 6 * 60 * MIN, undo: 30 * MIN, topic: 6 * 60 * MIN };

export function alive(state: TalkState, now_ms: number): TalkState {
  const young = (at: number | undefined, part: string): boolean => at !== undefined && now_ms - at <= (AGES[part] ?? 0);
  return {
    ...(young(state.topic_at_ms, "topic") ? { topic: state.topic, topic_at_ms: state.topic_at_ms } : {}),
    ...(young(state.tree?.at_ms, "tree") ? { tree: state.tree } : {}),
    ...(young(state.bed_at_ms, "bed") ? { bed: state.bed, bed_at_ms: state.bed_at_ms } : {}),
    ...(young(state.pending?.at_ms, "pending") ? { pending: state.pending } : {}),
    ...(young(state.reckoned?.at_ms, "reckoned") ? { reckoned: state.reckoned } : {}),
    ...(young(state.shareable?.at_ms, "shareable") ? { shareable: state.shareable } : {}),
    ...(state.asked ? { asked: state.asked } : {}),
    ...(state.heard ? { heard: state.heard } : {}),
    ...(state.troubles ? { troubles: state.troubles.filter(({ at_ms }) => now_ms - at_ms < YEAR_MS) } : {}),
    ...(young(state.undo?.at_ms, "undo") ? { undo: state.undo } : {}),
  };
}

export function contextOf(snapshot: Snapshot, message: Message, now_ms: number, knowledge: Knowledge, settings: Settings): Context {
  const heater = snapshot.heaters[0] ?? null;
  const rules = [...(heater?.rules ?? []).filter((rule) => holdsFor(rule, heater?.facts ?? {})), ...(snapshot.group_rules ?? [])];
  const said = message.text ?? "";
  const state = alive(snapshot.talk.state as TalkState, now_ms);
  const usual = readerOf(snapshot, settings, message.locale);
  const language = heardIn(said, usual.locale);
  const glossed = language === "de" && said !== "" ? gloss(said, snapshot.person.facts.country === undefined ? {} : { country: snapshot.person.facts.country }) : null;
  let made = 0;
  return {
    snapshot, message, now_ms, settings, heater, said, language,
    knowledge: spokenIn(knowledge, language),
    text: glossed?.text ?? said,
    own: (words) => glossed?.own(words) || words,
    reader: { ...usual, locale: localeFor(language, said, usual.locale, (snapshot.person.facts.locale !== undefined && state.heard === undefined) || putInMouth(language, message.locale)) },
    state,
    limits: limits(heater?.facts ?? {}, rules),
    rules,
    id: (kind) => `${kind}-${messageKey(message)}-${made++}`,
  };
}

export function readerOf(snapshot: Pick<Snapshot, "person">, settings: Settings, locale?: string): Reader {
  const { facts } = snapshot.person;
  const usual = facts.locale ?? locale ?? settings.locale;
  const isUs = facts.country === "US" || (facts.country === undefined && /-US$/i.test(facts.locale ?? ""));
  return { locale: usual.replace("_", "-"), system: facts.units ?? (isUs ? "us" : "metric"), timezone: facts.timezone ?? settings.timezone };
}

export const blocks = (...list: (Block | null | undefined | false | "")[]): Block[] => list.filter((block): block is Block => Boolean(block));
export type { Answer };
