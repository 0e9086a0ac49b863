/**
 * The core as the adapters get it. Emergencies are answered in this thread, by what is already known of whoever speaks; all else goes to
 * the records' thread, and never waits longer than told.
 */
import type { Core, Reply } from "../adapters/adapter.ts";
import { emergencyIn } from "./conversation/emergency.ts";
import { heardIn, localeFor, putInMouth } from "./conversation/spoken.ts";
import type { RemoteCore } from "./core/remote.ts";
import { readerOf } from "./delivery/reader.ts";
import type { Message } from "./message.ts";
import type { Person } from "./records/types.ts";
import type { Reader } from "./text/render.ts";

export interface FrontOptions {
  readonly remote: Pick<RemoteCore, "receive" | "shown" | "names">;
  /** how somebody reads of whom nothing is known */
  readonly reader: Reader;
  readonly country?: string;
  readonly limit_ms: number;
}

/** Somebody who calls for help in another language than the one expected is answered in theirs. */
function heardBy(to: Reader, { text = "", locale }: Pick<Message, "text" | "locale">, chosen: boolean): Reader {
  const language = heardIn(text, to.locale);
  return { ...to, locale: localeFor(language, text, to.locale, chosen || putInMouth(language, locale)) };
}

type Known = Pick<Person["facts"], "country" | "locale" | "units" | "timezone">;
const MOST_KNOWN = 20_000;

export function front({ remote, reader, country, limit_ms }: FrontOptions): Core {
  const known = new Map<string, Known>();
  const keyOf = ({ identity }: Pick<Message, "identity">): string => `${identity.network}:${identity.id}`;
  const usual = ({ locale }: Pick<Message, "locale">): Reader => (locale ? { ...reader, locale } : reader);

  function learn(message: Pick<Message, "identity">, facts: Person["facts"]): void {
    const key = keyOf(message);
    known.delete(key);
    const { country: lives, locale, units, timezone } = facts;
    known.set(key, { ...(lives ? { country: lives } : {}), ...(locale ? { locale } : {}), ...(units ? { units } : {}), ...(timezone ? { timezone } : {}) });
    if (known.size > MOST_KNOWN) known.delete(known.keys().next().value as string);
  }

  return {
    emergency(message): Reply | null {
      const facts = known.get(keyOf(message)) ?? {};
      const to = heardBy(readerOf(facts, usual(message)), message, facts.locale !== undefined);
      const answer = emergencyIn(message.text, { country: facts.country, fallback_country: country, language: to.locale.slice(0, 2) });
      return answer ? { answer, reader: to } : null;
    },
    async receive(message): Promise<Reply> {
      const { answer, facts } = await remote.receive(message, limit_ms);
      learn(message, facts);
      return { answer, reader: readerOf(facts, usual(message)) };
    },
    async shown(message): Promise<Reply | null> {
      const kept = await remote.shown(message, limit_ms);
      return kept ? { answer: kept.answer, reader: readerOf(kept.facts, reader) } : null;
    },
    names: (message) => remote.names(message, limit_ms),
  };
}
