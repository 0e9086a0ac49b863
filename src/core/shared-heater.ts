/** "I fire Ana's heater": looks up whose heater that is before deciding, since deciding itself sees only one's own records. */
import type { Answer } from "../answer.ts";
import type { Message } from "../message.ts";
import type { Store } from "../records/ports.ts";
import type { Decided, Snapshot } from "../records/types.ts";

interface Shared {
  readonly message: Message;
  after(decided: Decided<Answer>, snapshot: Snapshot): Decided<Answer>;
}

const asItIs = (message: Message): Shared => ({ message, after: (decided) => decided });

export async function withSharedHeater(store: Pick<Store, "personByIdentity" | "heatersOf">, message: Message): Promise<Shared> {
  const other = message.records?.fires_heater_of;
  if (typeof other !== "string") return asItIs(message);
  const owner = await store.personByIdentity(message.identity.network, other);
  const heater_id = owner ? (await store.heatersOf(owner.id))[0] : undefined;
  if (!owner || !heater_id) {
    const { fires_heater_of: _unknown, ...records } = message.records ?? {};
    return asItIs({ ...message, records: { ...records, [`fires_heater_of (nobody called ${other} has a heater here yet)`]: other } });
  }
  return {
    message,
    after(decided, snapshot) {
      const person = decided.writes.findLast((one) => one.write === "person")?.person ?? snapshot.person;
      return {
        ...decided,
        writes: [...decided.writes.filter((one) => one.write !== "person"), { write: "join-heater", heater_id, person_id: snapshot.person.id }, { write: "person", person: { ...person, heater_id } }],
      };
    },
  };
}
