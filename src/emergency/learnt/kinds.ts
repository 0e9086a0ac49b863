import type { EmergencyKind } from "../index.ts";

/** In the order of the learnt weights. */
export const LEARNT_KINDS: readonly EmergencyKind[] = [
  "co-alarm", "chimney-fire", "house-fire", "room-smoke", "burn", "back-puff", "damper-over-embers", "hot-ash",
];
