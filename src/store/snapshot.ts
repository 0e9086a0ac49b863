/** Everything deciding may look at, in one consistent look. */
import type { Snapshot } from "../records/types.ts";
import { albumOf } from "./album.ts";
import type { Engine } from "./engine.ts";
import { latestFires, stretches, totals } from "./fires.ts";
import { guide } from "./guides.ts";
import { heaterIds, heaters, home } from "./heaters.ts";
import { namesOf, person, place } from "./people.ts";
import { rulesAround } from "./place-rules.ts";
import { openReminders } from "./reminders.ts";
import { talk } from "./talks.ts";

/** Versions of the records a snapshot holds, by `kind/id`. A symbol, so that it stays with a copy and out of the way. */
export const VERSIONS: unique symbol = Symbol("versions");
export type Versions = ReadonlyMap<string, number>;
export const versionsOf = (snapshot: Snapshot): Versions => (snapshot as Snapshot & { [VERSIONS]?: Versions })[VERSIONS] ?? new Map();

const NO_TOTALS: Snapshot["totals"] = { fires: 0, load_kg: 0, since_sweep_kg: 0, since_sweep_fires: 0 };

export async function load({ read }: Engine, person_id: string, place_id: string, heater_id?: string): Promise<Snapshot> {
  return read(async (tx) => {
    const who = await person(tx, person_id);
    const where = await place(tx, place_id);
    const ids = await heaterIds(tx, person_id, heater_id ?? who.person.heater_id);
    const theirs = await heaters(tx, ids);
    const meant = theirs[0]?.heater;
    const owned = await home(tx, meant?.owner_id ?? person_id);
    const others = new Set(theirs.flatMap(({ heater }) => heater.member_ids));
    others.delete(person_id);
    const versions: Versions = new Map([
      [`person/${person_id}`, who.version],
      [`home/${owned.home.owner_id}`, owned.version],
      ...theirs.map(({ heater, version }): [string, number] => [`heater/${heater.id}`, version]),
    ]);
    const snapshot: Snapshot & { [VERSIONS]: Versions } = {
      person: who.person,
      place: where,
      talk: await talk(tx, person_id, place_id),
      heaters: theirs.map(({ heater }) => heater),
      names: await namesOf(tx, [...others]),
      home: owned.home,
      fires: meant ? await latestFires(tx, meant.id) : [],
      totals: meant ? await totals(tx, meant) : NO_TOTALS,
      guide: meant ? await guide(tx, meant.id) : null,
      stretches: meant ? await stretches(tx, meant.id) : [],
      reminders: await openReminders(tx, person_id, where.kind === "group" ? place_id : undefined),
      group_rules: await rulesAround(tx, [person_id, ...(meant?.member_ids ?? [])]),
      album: await albumOf(tx, person_id, meant?.id ?? null),
      [VERSIONS]: versions,
    };
    return snapshot;
  });
}
