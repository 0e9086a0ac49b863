/**
 * Danger now: recognised in what a person wrote and answered from a checked table. A leaf: it imports nothing outside this folder,
 * so that it answers when everything else has failed.
 */

export type EmergencyKind =
  | "co-alarm" | "chimney-fire" | "room-smoke" | "hot-ash" | "burn" | "damper-over-embers" | "back-puff"
  /** Something outside the heater burns: a rug, a curtain, the wood pile, the wall. */
  | "house-fire";

export interface Danger {
  readonly kind: EmergencyKind;
  /** "possible": the card still says first what to do, and then asks. */
  readonly certainty: "sure" | "possible";
  readonly topic: string;
  /** Other emergencies in the same message, gravest first. */
  readonly also: readonly EmergencyKind[];
}

export { type EmergencyCard, emergencyCard, emergencyText } from "./card.ts";
export { emergencyNumbers } from "./numbers.ts";
export { dangerOf, recogniseDanger } from "./recognise.ts";
