/** Everything deciding may look at, in one consistent look. */
import { UnknownPerson, type Wanted } from "../records/ports.ts";
import type { Snapshot } from "../records/types.ts";
import { albumOf } from "./album.ts";
import { buildersOf, builtBy } from "./builders.ts";
import type { Engine, Tx } from "./engine.ts";
import { latestFires, stretches, totals } from "./fires.ts";
import { groupLook } from "./group-look.ts";
import { groupsOf } from "./groups.ts";
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

export const load = ({ read }: Engine, wanted: Wanted, now_ms: number): Promise<Snapshot> => read((tx) => look(tx, wanted, now_ms));

/** Null where the person or the place is gone. */
export const loadMany = ({ readMany }: Engine, wanted: readonly Wanted[], now_ms: number): Promise<(Snapshot | null)[]> =>
  readMany((tx) => Promise.all(wanted.map((one) => look(tx, one, now_ms).catch(unlessUnknown))));

function unlessUnknown(error: unknown): null {
  if (error instanceof UnknownPerson) return null;
  throw error;
}

async function look(tx: Tx, { person_id, place_id, heater_id, group }: Wanted, now_ms: number): Promise<Snapshot> {
  const who = await person(tx, person_id);
  const where = await place(tx, place_id);
  const ids = await heaterIds(tx, person_id, heater_id ?? who.person.heater_id);
  const theirs = await heaters(tx, ids);
  const meant = theirs[0]?.heater;
  const owned = await home(tx, meant?.owner_id ?? person_id);
  const built = await builtBy(tx, person_id);
  const groups = await groupsOf(tx, person_id, where);
  const fires = meant ? await latestFires(tx, meant.id) : [];
  const others = new Set(theirs.flatMap(({ heater }) => heater.member_ids));
  others.delete(person_id);
  const versions: Versions = new Map([
    [`person/${person_id}`, who.version],
    [`home/${owned.home.owner_id}`, owned.version],
    ...built.map(({ built: { heater }, version }): [string, number] => [`heater/${heater.id}`, version]),
    ...theirs.map(({ heater, version }): [string, number] => [`heater/${heater.id}`, version]),
  ]);
  const snapshot: Snapshot & { [VERSIONS]: Versions } = {
    person: who.person,
    place: where,
    talk: await talk(tx, person_id, place_id),
    heaters: theirs.map(({ heater }) => heater),
    names: await namesOf(tx, [...others]),
    home: owned.home,
    fires,
    totals: meant ? await totals(tx, meant) : NO_TOTALS,
    guide: meant ? await guide(tx, meant.id) : null,
    stretches: meant ? await stretches(tx, meant.id, fires) : [],
    reminders: await openReminders(tx, person_id, where.kind === "group" ? place_id : undefined),
    group_rules: await rulesAround(tx, [person_id, ...(meant?.member_ids ?? [])]),
    groups,
    ...(group ? { group: await groupLook(tx, person_id, groups, group, where.network, now_ms) } : {}),
    builders: meant ? await buildersOf(tx, meant.id) : [],
    builds: built.map((one) => one.built),
    album: await albumOf(tx, person_id, meant?.id ?? null),
    [VERSIONS]: versions,
  };
  return snapshot;
}
