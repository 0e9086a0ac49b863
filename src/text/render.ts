/**
 * Turns `Text` into words: looks the message up in the reader's language (falling back to English), formats quantities, moments and
 * nested texts, and gives back a plain string. Markup and escaping belong to the adapters.
 */
import { IntlMessageFormat } from "intl-messageformat";
import type { Arg, Moment, Text } from "../answer.ts";
import { format, isQuantity, type UnitSystem } from "../quantities.ts";
import { sentencesIn } from "./sentences.ts";

export interface Reader {
  readonly locale: string;
  readonly system: UnitSystem;
  readonly timezone: string;
}

/** message id to ICU MessageFormat source, by language */
export type Catalogue = ReadonlyMap<string, string>;
export type Catalogues = ReadonlyMap<string, Catalogue>;

export class MissingText extends Error {}

export type Renderer = (text: Text, reader: Reader) => string

const language = (locale: string): string => locale.split(/[-_]/)[0]?.toLowerCase() ?? "en";

export function renderer(catalogues: Catalogues): Renderer {
  const compiled = new Map<string, IntlMessageFormat>();
  const translators = new Map<string, (sentence: string, locale: string) => string>();
  function sentences(words: string, { locale }: Reader): string {
    const own = catalogues.get(language(locale));
    if (language(locale) === "en" || !own) return words;
    const known = translators.get(language(locale)) ?? sentencesIn(own);
    translators.set(language(locale), known);
    return known(words, locale);
  }

  function source(id: string, locale: string): { words: string; locale: string } {
    const own = catalogues.get(language(locale))?.get(id);
    if (own !== undefined) return { words: own, locale };
    const english = catalogues.get("en")?.get(id);
    if (english === undefined) throw new MissingText(`no text "${id}"`);
    return { words: english, locale: language(locale) === "en" ? locale : "en" };
  }

  function render(text: Text, reader: Reader): string {
    if (text.id === "verbatim") return String(text.args?.words ?? "");
    if (text.id === "ours") return sentences(String(text.args?.words ?? ""), reader);
    const { words, locale } = source(text.id, reader.locale);
    if (!text.args && !words.includes("{")) return words;
    const key = `${locale}\n${words}`;
    let message = compiled.get(key);
    if (!message) {
      message = new IntlMessageFormat(words, locale, undefined, { ignoreTag: true });
      compiled.set(key, message);
    }
    const values = Object.fromEntries(Object.entries(text.args ?? {}).map(([name, arg]) => [name, value(arg, reader, locale)]));
    const said = String(message.format(values));
    // German days and months end in a point of their own: "bis Fr., 27. Nov."
    return language(locale) === "de" ? said.replace(/([^.])\.\.(?!\.)/g, "$1.") : said;
  }

  function value(arg: Arg, reader: Reader, locale: string): string | number {
    if (typeof arg === "string" || typeof arg === "number") return arg;
    if (isQuantity(arg)) return format(arg, { locale: reader.locale, system: reader.system });
    if (isMoment(arg)) return moment(arg, reader);
    if (Array.isArray(arg)) {
      const parts = arg.map((part) => (typeof part === "string" ? part : render(part, reader)));
      return new Intl.ListFormat(locale, { type: "conjunction" }).format(parts);
    }
    return render(arg as Text, reader);
  }

  return render;
}

const isMoment = (arg: Arg): arg is Moment => typeof arg === "object" && "at_ms" in arg;

const formats = new Map<string, Intl.DateTimeFormat>();
function moment({ at_ms, show }: Moment, reader: Reader): string {
  const key = `${reader.locale}/${reader.timezone}/${show}`;
  let made = formats.get(key);
  if (!made) {
    const time = { hour: "2-digit", minute: "2-digit", hourCycle: reader.system === "us" ? "h12" : "h23" } as const;
    const day = { weekday: "short", day: "numeric", month: "short" } as const;
    const parts = { time, day, "day-time": { ...day, ...time }, date: { day: "numeric", month: "short", year: "numeric" } } as const;
    made = new Intl.DateTimeFormat(reader.locale, { timeZone: reader.timezone, ...parts[show] });
    formats.set(key, made);
  }
  return made.format(at_ms);
}
