/** A written case played through the conversation's own trouble walk: story first, then each question answered from the case. */
import type { Text } from "../../src/answer.ts";
import { TOPIC_CAUTIONS } from "../../src/conversation/cautions.ts";
import { contextOf, type Context, type Outcome, type TalkState } from "../../src/conversation/context.ts";
import { hear } from "../../src/conversation/hear.ts";
import { readFigures } from "../../src/conversation/reading/figures.ts";
import { answerTo } from "../../src/conversation/sign-answer.ts";
import { troubleOutcome } from "../../src/conversation/topics/trouble.ts";
import { loadKnowledge, type Knowledge } from "../../src/knowledge/load.ts";
import type { Trouble } from "../../src/knowledge/schemas.ts";
import { Records } from "../../src/records/schemas.ts";
import type { Snapshot } from "../../src/records/types.ts";
import { loadCatalogues } from "../../src/text/catalogues.ts";
import { renderer, type Reader, type Renderer } from "../../src/text/render.ts";
import type { TopicId } from "../../src/topics.ts";
import type { SignAnswer } from "../../src/trouble/walk.ts";
import { saidTo, type Case } from "./case-person.ts";

export interface Played {
  /** as the answer shows them, likeliest first */
  readonly causes: readonly { readonly id: string; readonly share: number }[];
  readonly asked: readonly { readonly sign: string; readonly said: string | undefined; readonly read: SignAnswer }[];
  /** an emergency card in place of causes */
  readonly emergency: string | null;
  /** everything the last answer tells the person to do, as they read it */
  readonly told: readonly string[];
  readonly headline: string;
  readonly cautions: readonly string[];
  readonly forbids_fire: boolean;
}

const DEEPEST = 12;
const READER: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };
const settings = { timezone: "UTC", locale: "en-GB" };

export interface Stage {
  readonly knowledge: Knowledge;
  readonly render: Renderer;
}
export async function openStage(folder: string = new URL("../../knowledge", import.meta.url).pathname): Promise<Stage> {
  const [knowledge, own] = await Promise.all([loadKnowledge(folder), loadCatalogues()]);
  return { knowledge, render: renderer(new Map([["en", new Map([...(own.get("en") ?? []), ...(knowledge.texts.get("en") ?? [])])]])) };
}

/** what the person says to a question; undefined for "I don't know" */
export type Says = (sign: string) => string | undefined;
/** what an answer says of the tree's signs; null is "I don't know" */
export type Reads = (trouble: Trouble, sign: string, heard: Context) => Readonly<Record<string, SignAnswer>>;

const readOne: Reads = (trouble, id, { text }) => {
  const sign = trouble.signs[id];
  return { [id]: sign ? (answerTo(sign, text, readFigures(text)) ?? null) : null };
};

export function play(
  { knowledge, render }: Stage,
  written: Pick<Case, "trouble" | "now" | "records" | "story">,
  says: Says = (sign) => saidTo(written as Case, sign),
  reads: Reads = readOne,
): Played {
  const trouble = knowledge.troubles.get(written.trouble as TopicId);
  if (!trouble) throw new Error(`no tree for ${written.trouble}`);
  const now_ms = Date.parse(written.now);
  const snapshot = snapshotOf(written);
  const asked: { sign: string; said: string | undefined; read: SignAnswer }[] = [];
  const tell = (text: string, state: TalkState) => contextOf(
    { ...snapshot, talk: { ...snapshot.talk, state: state as never } },
    { adapter: "case", native_id: `${asked.length}`, received_at_ms: now_ms, identity: { network: "case", id: "p" }, place: { network: "case", id: "r", kind: "private", encrypted: null }, text },
    now_ms, knowledge, settings,
  );

  const first = tell(written.story, {});
  let outcome: Outcome = troubleOutcome(first, trouble, hear(first).signs(trouble));
  for (let waiting = outcome.state?.tree?.waiting; waiting && !outcome.ready && asked.length < DEEPEST; waiting = outcome.state?.tree?.waiting) {
    const said = says(waiting);
    const heard = tell(said ?? "I don't know", outcome.state as TalkState);
    const read = said === undefined ? { [waiting]: null } : reads(trouble, waiting, heard);
    asked.push({ sign: waiting, said, read: read[waiting] ?? null });
    outcome = troubleOutcome(heard, trouble, read);
  }

  const { draft } = outcome;
  const causes = (draft.blocks ?? []).flatMap((block) => (block.kind === "causes" ? block.items : []));
  const words = (text: Text): string => render(text, READER);
  const told = (draft.blocks ?? []).flatMap((block) => (block.kind === "steps" ? block.steps.map(words) : block.kind === "text" ? [words(block.text)] : []));
  return {
    causes: causes.map(({ id, share }) => ({ id, share })),
    asked,
    emergency: outcome.ready ? String(outcome.ready.topic) : null,
    told,
    headline: words(draft.headline),
    cautions: [...new Set([...(draft.cautions ?? []), ...(draft.blocks ?? []).flatMap((block) => block.cautions), ...(TOPIC_CAUTIONS[draft.topic] ?? [])])],
    forbids_fire: outcome.ready !== undefined || told.some((line) => /^no fire (until this is cleared|at all)/i.test(line)),
  };
}

/** The case's records as the store would hand them over; with none, a person nobody knows anything of. */
export function snapshotOf({ records, now }: Pick<Case, "records" | "now"> & Partial<Case>): Snapshot {
  const { heater = {}, house = {}, wood = [], fires = [], upkeep = {}, alarms = {}, weather, ...facts } = Records.parse(records);
  const known = Object.keys(records).length > 0;
  const rows = fires
    .map((fire, i) => ({ id: `f${i}`, heater_id: "h", person_id: "p", lit_at_ms: Date.parse(fire.lit_at), facts: fire }))
    .sort((a, b) => b.lit_at_ms - a.lit_at_ms);
  const kg = rows.reduce((sum, { facts: fire }) => sum + (fire.load_kg ?? 0), 0);
  return {
    person: { id: "p", created_at_ms: 0, facts },
    place: { id: "r", network: "case", network_id: "r", kind: "private" },
    talk: { person_id: "p", place_id: "r", version: 0, updated_at_ms: Date.parse(now), state: {} },
    heaters: known ? [{ id: "h", owner_id: "p", member_ids: ["p"], facts: heater, upkeep, rules: [] }] : [],
    names: new Map(),
    home: { owner_id: "p", house, wood, alarms, weather: weather === undefined ? [] : Array.isArray(weather) ? weather : [{ date: now.slice(0, 10), ...weather }] },
    fires: rows,
    totals: { fires: rows.length, load_kg: kg, since_sweep_kg: kg, since_sweep_fires: rows.length },
    guide: null,
    reminders: [],
  } as Snapshot;
}
