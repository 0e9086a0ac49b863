/** A snapshot as small as upkeep needs it. */
import { fileURLToPath } from "node:url";
import { loadKnowledge } from "../../src/knowledge/load.ts";
import type { FireStretch, Heater, Snapshot } from "../../src/records/types.ts";
import { upkeepOf, type Upkeep } from "../../src/upkeep/facts.ts";

export const knowledge = await loadKnowledge(fileURLToPath(new URL("../../knowledge", import.meta.url)));

export interface Given {
  readonly person?: Snapshot["person"]["facts"];
  readonly heater?: Heater["facts"];
  readonly upkeep?: Heater["upkeep"];
  readonly alarms?: Snapshot["home"]["alarms"];
  readonly stretches?: readonly FireStretch[];
  readonly fires?: Snapshot["fires"];
  readonly totals?: Snapshot["totals"];
}

export function snapshotOf({ person = {}, heater = {}, upkeep = {}, alarms = {}, stretches = [], fires = [], totals }: Given): Snapshot {
  return {
    person: { id: "ana", created_at_ms: 0, facts: person },
    place: { id: "place", network: "lines", network_id: "ana", kind: "private" },
    talk: { person_id: "ana", place_id: "place", version: 0, updated_at_ms: 0, state: {} },
    heaters: [{ id: "heater", owner_id: "ana", member_ids: ["ana"], facts: heater, upkeep, rules: [] }],
    names: new Map(), home: { owner_id: "ana", house: {}, wood: [], alarms, weather: [] },
    fires, stretches, guide: null, reminders: [],
    totals: totals ?? { fires: 0, load_kg: 0, since_sweep_kg: 0, since_sweep_fires: 0 },
  };
}

export const HELSINKI = { country: "FI", latitude: 60.2, longitude: 24.9, timezone: "Europe/Helsinki" } as const;
export const HOBART = { country: "AU", latitude: -42.9, longitude: 147.3, timezone: "Australia/Hobart" } as const;

export const upkeepAt = (day: string, given: Given): Upkeep =>
  upkeepOf(knowledge, snapshotOf(given), Date.parse(`${day}T12:00:00Z`), given.person?.timezone ?? "UTC");

export const jobAt = (day: string, given: Given, id = "sweep") => {
  const found = upkeepAt(day, given).jobs.find((job) => job.id === id);
  if (!found) throw new Error(`no job ${id}`);
  return { ...found, due: found.due_on?.toString() ?? null, tell: found.tell_on?.toString() ?? null };
};
