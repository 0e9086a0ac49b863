/** Everything kept about a person, table by table, with the documents opened. */
import { UnknownPerson } from "../records/ports.ts";
import { picturesOf } from "./album.ts";
import { buildersRowsOf } from "./builders.ts";
import type { Engine } from "./engine.ts";
import { unpack } from "./json.ts";
import { rulesSaidBy } from "./place-rules.ts";

export async function exportPerson({ read }: Engine, person_id: string): Promise<Record<string, unknown>> {
  return read(async (tx) => {
    const person = await tx.selectFrom("people").selectAll().where("id", "=", person_id).execute();
    if (person.length === 0) throw new UnknownPerson(`no person ${person_id} among the records`);
    const heaters = tx.selectFrom("heater_members").select("heater_id").where("person_id", "=", person_id);
    const talked = tx.selectFrom("talks").select("place_id").where("person_id", "=", person_id);
    return {
      person: person.map(open)[0],
      identities: (await tx.selectFrom("identities").selectAll().where("person_id", "=", person_id).execute()).map(open),
      places: (
        await tx
          .selectFrom("places")
          .selectAll()
          .where((eb) => eb.or([eb("person_id", "=", person_id), eb("id", "in", talked)]))
          .execute()
      ).map(open),
      heaters: (await tx.selectFrom("heaters").selectAll().where("id", "in", heaters).execute()).map(open),
      fires_of: await tx.selectFrom("heater_members").selectAll().where("person_id", "=", person_id).execute(),
      home: (await tx.selectFrom("homes").selectAll().where("owner_id", "=", person_id).execute()).map(open)[0] ?? null,
      fires: (
        await tx
          .selectFrom("fires")
          .selectAll()
          .where((eb) => eb.or([eb("person_id", "=", person_id), eb("heater_id", "in", heaters)]))
          .orderBy("lit_at_ms")
          .execute()
      ).map(open),
      guides: (await tx.selectFrom("guides").selectAll().where("heater_id", "in", heaters).execute()).map(open),
      reminders: (await tx.selectFrom("reminders").selectAll().where("person_id", "=", person_id).execute()).map(open),
      builders: (await buildersRowsOf(tx, person_id)).map(open),
      album: await picturesOf(tx, person_id),
      shared: (await tx.selectFrom("cards").selectAll().where("person_id", "=", person_id).execute()).map(open),
      winter: await tx.selectFrom("winter_members").selectAll().where("person_id", "=", person_id).execute(),
      lists: (await tx.selectFrom("group_entries").selectAll().where("person_id", "=", person_id).execute()).map(open),
      rules_for_groups: await rulesSaidBy(tx, person_id),
      talks: (await tx.selectFrom("talks").selectAll().where("person_id", "=", person_id).execute()).map(open),
      answered: (await tx.selectFrom("inbox").selectAll().where("person_id", "=", person_id).execute()).map(open),
      due: (await tx.selectFrom("due").selectAll().where("person_id", "=", person_id).execute()).map(open),
      outgoing: (await tx.selectFrom("outbox").selectAll().where("person_id", "=", person_id).execute()).map(open),
    };
  });
}

/** Columns and document side by side, without what only our own working needs. */
function open({ doc, ...columns }: { doc: string } & Record<string, unknown>): Record<string, unknown> {
  const { lease: _, lease_until: __, version: ___, ...kept } = columns;
  return { ...kept, ...unpack<Record<string, unknown>>(doc) };
}
