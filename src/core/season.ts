/** A report is about a whole season, and deciding sees the latest fires only: the others are looked up before. */
import { asksForReport } from "../conversation/topics/pages.ts";
import type { Message } from "../message.ts";
import type { Store } from "../records/ports.ts";

const YEAR_MS = 366 * 86_400_000;

export async function withSeason(store: Pick<Store, "personByIdentity" | "heatersOf" | "firesSince">, message: Message, now_ms: number): Promise<Message> {
  if (!asksForReport(message)) return message;
  const person = await store.personByIdentity(message.identity.network, message.identity.id);
  const heater_id = person ? (await store.heatersOf(person.id))[0] : undefined;
  return heater_id === undefined ? message : { ...message, season: await store.firesSince(heater_id, now_ms - YEAR_MS) };
}
