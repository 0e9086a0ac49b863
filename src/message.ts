/** What an adapter hands in: one event of a chat network in neutral form. */

import type { BuilderInvitation } from "./records/ports.ts";
import type { Fire } from "./records/types.ts";

export interface Identity {
  /** the network's name, e.g. `matrix`; with `id` it names one account */
  readonly network: string;
  readonly id: string;
  readonly name?: string;
}

export interface Place {
  readonly network: string;
  readonly id: string;
  readonly kind: "private" | "group";
  readonly name?: string;
  /** end-to-end encrypted; null where the network has no such thing */
  readonly encrypted: boolean | null;
  /** whether this person may set what concerns the whole group, by the network's own rights */
  readonly moderates?: boolean;
  /** what is said to one person here is seen by nobody else, though the place is a group's */
  readonly whispers?: boolean;
}

export interface Message {
  /** adapter and the network's own event id: together the key under which a second delivery is recognised */
  readonly adapter: string;
  readonly native_id: string;
  readonly identity: Identity;
  readonly place: Place;
  readonly received_at_ms: number;
  readonly locale?: string;
  readonly text?: string;
  /** id of a choice shown earlier */
  readonly choice?: string;
  readonly form?: { readonly id: string; readonly values: Readonly<Record<string, unknown>> };
  /** records given as data (import, lines) */
  readonly records?: Readonly<Record<string, unknown>>;
  readonly picture?: { readonly name: string; readonly media_type: string; readonly bytes: Uint8Array };
  /** a picture came with the message and could not be had */
  readonly picture_missing?: "too-large" | "not-fetched";
  /** all fires of the heater's last twelve months, looked up for a message that asks for a report */
  readonly season?: readonly Fire[];
  /** what the builder's code in the message stands for, looked up before deciding; null for a code nobody gave (any longer) */
  readonly builder_invitation?: BuilderInvitation | null;
  /** characters drawn on arrival, for what nobody must be able to guess */
  readonly lot?: string;
  /** the emergency leaf answered this message already, before anything else ran */
  readonly emergency_answered?: string;
}

export const messageKey = (message: Pick<Message, "adapter" | "native_id">): string => `${message.adapter}:${message.native_id}`;
