/**
 * What is done with each kind of outgoing row when things go wrong.
 *
 * An attempt has an unknown fate when the process or the network died between sending and hearing back. While the network still drops
 * repeats of the same key (its window), sending again is safe and every kind does it. After that, `unknown` says what is done where the
 * network cannot be asked.
 */
import type { OutgoingKind } from "../records/ports.ts";

export interface KindPolicy {
  /** fate unknown, window over, network cannot tell: send it marked as maybe a repeat, or leave it */
  readonly unknown: "resend" | "drop";
  /** past `useful_until_ms`: have it decided anew as things stand, or leave it */
  readonly late: "decide-again" | "drop";
  /** true when its words must not be read late at all, even where a repeat would be safe */
  readonly spoils: boolean;
  /** longest wait between tries */
  readonly longest_wait_ms: number;
  readonly why: string;
}

const SECOND = 1_000;
const MINUTE = 60 * SECOND;

export const KINDS: Readonly<Record<OutgoingKind, KindPolicy>> = {
  "guide-check-in": {
    unknown: "resend",
    late: "decide-again",
    spoils: true,
    longest_wait_ms: 20 * SECOND,
    why: "a fire burns: asked twice does no harm, not asked may; hours later the only right question is what is seen now",
  },
  "light-by": {
    unknown: "resend",
    late: "drop",
    spoils: true,
    longest_wait_ms: MINUTE,
    why: "the latest hour to light is worth nothing once it has passed, and would be wrong advice then",
  },
  reminder: {
    unknown: "resend",
    late: "decide-again",
    spoils: false,
    longest_wait_ms: 5 * MINUTE,
    why: "somebody relies on it: once too often is better than not at all; after a long silence it may belong into a digest",
  },
  upkeep: {
    unknown: "resend",
    late: "decide-again",
    spoils: false,
    longest_wait_ms: 15 * MINUTE,
    why: "a sweep that is not booked in time is a winter without one; days late it must be reckoned anew",
  },
  digest: {
    unknown: "resend",
    late: "drop",
    spoils: false,
    longest_wait_ms: 15 * MINUTE,
    why: "it stands for reminders that were missed, and is the only word on them: once too often is better than not at all",
  },
  "group-week": {
    unknown: "drop",
    late: "decide-again",
    spoils: false,
    longest_wait_ms: 15 * MINUTE,
    why: "the week is frozen when it is decided; its digest is read once or not at all, and the next comes in a week",
  },
  "group-day": {
    unknown: "resend",
    late: "drop",
    spoils: false,
    longest_wait_ms: 5 * MINUTE,
    why: "a day agreed on, such as the one of testing alarms: once too often is better than not at all, the day after is no use",
  },
  tell: {
    unknown: "resend",
    late: "drop",
    spoils: false,
    longest_wait_ms: MINUTE,
    why: "somebody may have to take over a watch; half a day later the fire is out",
  },
};
