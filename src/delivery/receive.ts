/** One message through: was it answered before? else load, decide, commit, and once more when somebody else was quicker. */
import type { Answer } from "../answer.ts";
import { type Message, messageKey } from "../message.ts";
import { type Clock, type Store, UnknownPerson } from "../records/ports.ts";
import type { GroupWanted } from "../records/group.ts";
import type { Decided, Person, Snapshot } from "../records/types.ts";
import { turns } from "./turns.ts";

export type Decide = (snapshot: Snapshot, message: Message, now_ms: number) => Decided<Answer>;

export interface ReceiveDeps {
  readonly store: Pick<Store, "enter" | "load" | "inbox" | "commit" | "personByIdentity">;
  readonly clock: Pick<Clock, "now">;
  readonly decide: Decide;
  /** called after a commit that left something to deliver */
  readonly nudge?: () => void;
}

export interface Received {
  readonly answer: Answer;
  /** settings of the reader, for rendering; empty for somebody who is not (any longer) among the records */
  readonly facts: Person["facts"];
  /** the message had been answered before; nothing was worked */
  readonly again: boolean;
}

/** how often the same talk may change under us before we give up */
const TRIES = 8;

/** The talk, the guide or a record changed under every try. */
export class TooContended extends Error {}

/** What deciding cannot look up by itself is looked up before, in turn. */
export type Prepare = (message: Message) => Promise<{ readonly message: Message; readonly decide: Decide; readonly group?: GroupWanted }>;

/** `receive` for one process: messages of one person in one place are worked in the order in which they came. */
export function receiver(deps: ReceiveDeps, prepare?: Prepare): (message: Message) => Promise<Received> {
  const inTurn = turns();
  return (message) => {
    const { identity, place } = message;
    return inTurn(JSON.stringify([identity.network, identity.id, place.network, place.id]), async () => {
      if (!prepare) return receive(deps, message);
      const prepared = await prepare(message);
      return receive({ ...deps, decide: prepared.decide }, prepared.message, prepared.group);
    });
  };
}

/** @throws TooContended, StoreError */
export async function receive({ store, clock, decide, nudge }: ReceiveDeps, message: Message, group?: GroupWanted): Promise<Received> {
  const message_key = messageKey(message);
  let why = "";
  for (let tries = 0; tries < TRIES; tries++) {
    const before = await store.inbox(message_key);
    if (before) {
      const person = await store.personByIdentity(message.identity.network, message.identity.id);
      return { answer: before.answer, facts: person?.facts ?? {}, again: true };
    }
    const now_ms = clock.now();
    const { person_id, place_id } = await store.enter(message.identity, message.place, now_ms);
    const snapshot = await loaded(store, person_id, place_id, now_ms, group);
    if (!snapshot) continue;
    const decided = decide(snapshot, message, now_ms);
    const commit = await store.commit({ cause: "message", message, message_key }, snapshot, decided, now_ms);
    if (commit.outcome === "committed") {
      if (decided.due.length > 0 || decided.also_tell?.length) nudge?.();
      return { answer: decided.answer, facts: factsAfter(snapshot, decided), again: false };
    }
    if (commit.outcome === "stale") why = commit.why;
  }
  throw new TooContended(`message ${message_key} could not be committed in ${TRIES} tries: ${why}`);
}

/** Null when the person was forgotten between entering and loading. */
async function loaded(store: ReceiveDeps["store"], person_id: string, place_id: string, now_ms: number, group: GroupWanted | undefined): Promise<Snapshot | null> {
  try {
    return await store.load(person_id, place_id, now_ms, undefined, group);
  } catch (error) {
    if (error instanceof UnknownPerson) return null;
    throw error;
  }
}

/** "Use pounds" is answered in pounds. */
function factsAfter({ person }: Snapshot, { writes }: Decided<Answer>): Person["facts"] {
  const written = writes.findLast((one) => one.write === "person" && one.person.id === person.id);
  return written?.write === "person" ? written.person.facts : person.facts;
}
