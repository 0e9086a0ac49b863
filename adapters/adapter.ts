/**
 * The whole boundary between Gleed and a chat network. An adapter translates: a native event into a `Message`, an `Answer` into what its
 * network can show. It holds no word of the domain. Abilities that a network may lack are optional members.
 */
import type { Answer } from "../src/answer.ts";
import type { Message } from "../src/message.ts";
import type { Outgoing } from "../src/records/ports.ts";
import type { Reader } from "../src/text/render.ts";

/** What an adapter may ask of the rest of Gleed. */
export interface Core {
  /** Work one message through. The same message twice gives the same answer, worked once. */
  receive(message: Message): Promise<Reply>;
  /** Answer what may be an emergency at once, from this process alone: no store, no knowledge, no network in the way. */
  emergency(message: Message): Reply | null;
  /** The answer given earlier to the message of this native id, for what it showed and is pressed only now; null when it is not kept. */
  shown?(message: Pick<Message, "adapter" | "native_id" | "identity">): Promise<Reply | null>;
  /** Lists of names to offer while somebody types: what is known to all, and what this person gave names to. */
  names?(message: Pick<Message, "identity" | "place">): Promise<Readonly<Record<string, readonly string[]>>>;
}

export interface Reply {
  readonly answer: Answer;
  readonly reader: Reader;
  /** messages for other places that this one caused (they also lie in the outbox, should the process end) */
  readonly late?: readonly Outgoing[];
}

/** How sending ended, as far as the adapter can know. */
export type Sent =
  | { readonly sent: true; readonly native_id: string | null }
  /** not sent and worth another try; the network may say when */
  | { readonly sent: false; readonly retry: true; readonly after_ms?: number; readonly why: string }
  /** will never be sent: closed, gone, forbidden */
  | { readonly sent: false; readonly retry: false; readonly why: string };

export interface Adapter {
  readonly network: string;
  /** Connect and hand every message to `core` until `stop`. Resolves once messages can arrive. */
  start(core: Core): Promise<void>;
  /** Take no more, finish what is under way. */
  stop(): Promise<void>;
  /** Send what fell due. The key stays the same over all attempts, so that the network can drop a repeat. */
  send(outgoing: Outgoing, reader: Reader): Promise<Sent>;
  /** What became of an attempt whose end is unknown, where the network can tell. */
  lookUp?(outgoing: Outgoing): Promise<Sent | null>;
  /** Show that an answer is being worked out. */
  working?(message: Message): Promise<void>;
}
