/**
 * Which language a message is read in, and which one is answered in. A language somebody chose ("auf Deutsch", "speak English", a locale on
 * record) is kept; else the one that is heard, from the first clear message on.
 */
import { text } from "../answer.ts";
import type { Person, Write } from "../records/types.ts";
import type { Context, Outcome } from "./context.ts";
import { weighLanguage } from "./language.ts";

/** the languages that are understood and answered in */
export type Spoken = "en" | "de";
const SPOKEN: readonly Spoken[] = ["en", "de"];
/** written where nobody said which German or English */
const LOCALES: Readonly<Record<Spoken, string>> = { en: "en-GB", de: "de-DE" };

export const languageOf = (locale: string): Spoken => SPOKEN.find((one) => locale.toLowerCase().startsWith(one)) ?? "en";

/** A message that speaks for itself is read in its own language, another one in its reader's. */
export function heardIn(said: string, locale: string): Spoken {
  const { language, sure } = weighLanguage(said);
  if (language === "de") return "de";
  return sure || said === "" ? (said === "" ? languageOf(locale) : "en") : languageOf(locale);
}

/** The locale to answer in. @param chosen the locale on record was chosen by the person, not heard */
export function localeFor(language: Spoken, said: string, locale: string, chosen: boolean): string {
  if (chosen || said === "" || languageOf(locale) === language) return locale;
  return LOCALES[language];
}

/** A command put English words into the mouth of somebody whose network speaks another language to them. */
export const putInMouth = (language: Spoken, network_locale: string | undefined): boolean => language === "en" && network_locale !== undefined && languageOf(network_locale) !== "en";

const ASKED: readonly (readonly [Spoken, RegExp])[] = [
  ["de", /^(?:(?:bitte |please )?(?:auf|in) deutsch(?: bitte| please)?|deutsch(?: bitte)?|(?:sprich|rede|antworte|schreib)e?(?: bitte)?(?: mit mir)?(?: auf)? deutsch(?: bitte| mit mir)?|(?:please )?(?:speak|answer|write|reply)(?: to me)?(?: in)? german(?: please)?|german(?: please)?|in german(?: please)?)$/],
  ["en", /^(?:(?:please )?(?:speak|answer|write|reply)(?: to me)?(?: in)? english(?: please)?|english(?: please)?|in english(?: please)?|(?:bitte )?(?:auf|in) englisch(?: bitte)?|englisch(?: bitte)?|(?:sprich|rede|antworte|schreib)e?(?: bitte)?(?: mit mir)?(?: auf)? englisch(?: bitte| mit mir)?)$/],
];

/** "Auf Deutsch, bitte", "speak English". */
export function languageAsked(context: Context): Outcome | null {
  const plain = context.said.toLowerCase().replace(/[^\p{L} ]+/gu, " ").replace(/\s+/g, " ").trim();
  const asked = ASKED.find(([, pattern]) => pattern.test(plain))?.[0];
  if (!asked) return null;
  const { person } = context.snapshot;
  const locale = languageOf(person.facts.locale ?? "") === asked && person.facts.locale ? person.facts.locale : LOCALES[asked];
  return {
    draft: { topic: "help", headline: text("language.set") },
    writes: [{ write: "person", person: { ...person, facts: { ...person.facts, locale } } }],
    state: { heard: undefined },
  };
}

/** What is to be remembered of the language a typed message was heard in, added to the other writes. */
export function remembered(context: Context, outcome: Outcome): Outcome {
  const { said, snapshot, state, reader, message } = context;
  const before = snapshot.person.facts.locale;
  if (said === "" || message.text === undefined || reader.locale === (before ?? message.locale ?? context.settings.locale)) return outcome;
  if (before !== undefined && state.heard === undefined) return outcome;
  if (outcome.writes?.some(({ write }) => write === "forget-person")) return outcome;
  const language = languageOf(reader.locale);
  const with_locale = (person: Person): Person => (person.id !== snapshot.person.id || (person.facts.locale ?? before) !== before ? person : { ...person, facts: { ...person.facts, locale: reader.locale } });
  const writes: Write[] = (outcome.writes ?? []).map((one) => (one.write === "person" ? { write: "person", person: with_locale(one.person) } : one));
  if (!writes.some((one) => one.write === "person" && one.person.id === snapshot.person.id)) writes.push({ write: "person", person: with_locale(snapshot.person) });
  return { ...outcome, writes, state: { ...outcome.state, heard: language, ...(outcome.state && "heard" in outcome.state ? { heard: outcome.state.heard } : {}) } };
}
