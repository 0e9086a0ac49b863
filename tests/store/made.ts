/** Small made-up messages, answers and decisions. */
import { type Answer, answer, text } from "../../src/answer.ts";
import { type Message, messageKey } from "../../src/message.ts";
import type { Cause, Store } from "../../src/records/ports.ts";
import type { Decided, Due, Fire, Guide, Heater, Snapshot, Write } from "../../src/records/types.ts";

export const NOW = Date.parse("2026-11-25T18:00:00Z");
export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;

export const saying = (words: string): Answer => answer({ topic: "help", headline: text("verbatim", { words }) }, new Map());

export const decided = (more: Partial<Decided<Answer>> = {}): Decided<Answer> => ({
  answer: saying("yes"),
  writes: [],
  due: [],
  cancel: [],
  ...more,
});

export function message(person: string, id: string, more: Partial<Message> = {}): Message {
  return {
    adapter: "lines",
    native_id: `${person}/${id}`,
    received_at_ms: NOW,
    text: "hello",
    identity: { network: "lines", id: person, name: person },
    place: { network: "lines", id: `${person}'s own`, kind: "private", encrypted: null },
    ...more,
  };
}

export const causeOf = (one: Message): Cause => ({ cause: "message", message: one, message_key: messageKey(one) });

export async function snapshotOf(store: Store, person: string, now_ms = NOW): Promise<Snapshot> {
  const { identity, place } = message(person, "0");
  const { person_id, place_id } = await store.enter(identity, place, now_ms);
  return store.load(person_id, place_id, now_ms);
}

let messages = 0;
/** A whole message of this person, with what it is decided to cause. */
export async function say(
  store: Store,
  person: string,
  decide: (snapshot: Snapshot) => Partial<Decided<Answer>>,
  now_ms = NOW,
): Promise<Snapshot> {
  const before = await snapshotOf(store, person, now_ms);
  const commit = await store.commit(causeOf(message(person, `made ${++messages}`)), before, decided(decide(before)), now_ms);
  if (commit.outcome !== "committed") throw new Error(`not committed: ${JSON.stringify(commit)}`);
  return snapshotOf(store, person, now_ms);
}

export const heaterOf = ({ person }: Pick<Snapshot, "person">, more: Partial<Heater> = {}): Heater => ({
  id: `heater of ${person.id}`,
  owner_id: person.id,
  member_ids: [person.id],
  facts: { kind: "bell", max_load_kg: 16 },
  upkeep: {},
  rules: [],
  ...more,
});
export const writeHeater = (heater: Heater): Write => ({ write: "heater", heater });

export const fireOf = (snapshot: Snapshot, lit_at_ms: number, load_kg: number | undefined, more: Partial<Fire> = {}): Fire => ({
  id: `fire at ${lit_at_ms}`,
  heater_id: snapshot.heaters[0]?.id ?? "",
  person_id: snapshot.person.id,
  lit_at_ms,
  facts: { lit_at: new Date(lit_at_ms).toISOString(), ...(load_kg === undefined ? {} : { load_kg }) },
  ...more,
});
export const writeFire = (fire: Fire): Write => ({ write: "fire", fire });

export const dueOf = ({ person, place }: Snapshot, key: string, due_at_ms: number, more: Partial<Due> = {}): Due => ({
  key,
  kind: "reminder",
  due_at_ms,
  useful_until_ms: due_at_ms + HOUR,
  person_id: person.id,
  place_id: place.id,
  payload: { what: key },
  ...more,
});

/** Somebody with a heater of their own. */
export const owner = (store: Store, name: string): Promise<Snapshot> => say(store, name, (s) => ({ writes: [writeHeater(heaterOf(s))] }));

export const guideOf = ({ heaters, person, place }: Snapshot, state: Guide["state"] = {}): Guide => ({
  heater_id: heaters[0]?.id ?? "",
  fire_id: `fire of ${person.id}`,
  version: 0,
  watch_id: person.id,
  place_id: place.id,
  state,
});
