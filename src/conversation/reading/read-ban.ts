/** "No burning until Friday", "burn ban today", "the ban is lifted": burn bans and no-burn days as they are said. */
import { readTimes, zoned } from "./times.ts";

export type BanSaid =
  /** `whole_last_day`: "until Friday" was said, and Friday counts */
  | { readonly say: "set"; readonly from_ms: number; readonly to_ms: number; readonly whole_last_day: boolean }
  /** a ban was said and not until when */
  | { readonly say: "until-when" }
  | { readonly say: "lift" }
  | { readonly say: "ask" };

/** Every pattern is a few plain words apart by single spaces: the text is folded first, so that matching stays linear. */
const BAN = /\b(?:burn|burning|fire|wood|smoke|outdoor fire) bans?\b|\bno[- ]?burn(?:ing)? (?:days?\b|until\b|till?\b|before\b|for\b|from\b|today\b|tonight\b|tomorrow\b|this\b|on\b|allowed\b|please\b|$)|\bban on (?:burning|fires|wood)\b|\b(?:burning|fires|wood fires|wood burning|lighting up) (?:is |are )?(?:banned|forbidden|prohibited|not allowed)\b|\bnot allowed to (?:burn|light|fire|heat with wood)\b|\bno (?:fires|wood fires|lighting) (?:until|till|til|before|from|allowed)\b/;
const LIFT = /\b(?:ban|bans) (?:is |are |has been |was )?(?:over|lifted|off|ended|gone|cancelled|canceled)\b|\b(?:lift|end|cancel|remove|drop|delete) (?:the |our |my )?(?:burn |burning |fire |wood )?(?:ban|no burn)\b|\b(?:we|i|you|everyone|everybody) (?:can|may) (?:burn|light|fire) again\b|\bburning (?:is )?(?:allowed|permitted|ok|okay) again\b/;
const NONE = /\b(?:no|not a|isnt a|isnt any|without a|without any) (?:burn|burning|fire|wood) bans?\b/;
const LONGEST = 300;

const HOURS = 3_600_000;

export function readBan(text: string, now_ms: number, timezone: string, locale?: string): BanSaid | null {
  if (text.length > LONGEST) return null;
  const plain = text.toLowerCase().replace(/[’']/g, "").replace(/[^\p{L}\p{N}?]+/gu, " ").trim();
  if (LIFT.test(plain)) return { say: plain.endsWith("?") ? "ask" : "lift" };
  if (!BAN.test(plain)) return null;
  if (plain.endsWith("?") || NONE.test(plain)) return { say: "ask" };
  return span(text, plain, now_ms, timezone, locale) ?? { say: "until-when" };
}

function span(text: string, plain: string, now_ms: number, timezone: string, locale: string | undefined): BanSaid | null {
  const now = zoned(now_ms, timezone);
  const endOf = (day: Temporal.ZonedDateTime): number => day.startOfDay().add({ days: 1 }).epochMilliseconds;
  const set = (from_ms: number, to_ms: number, whole_last_day: boolean): BanSaid | null => (to_ms > now_ms && to_ms > from_ms ? { say: "set", from_ms, to_ms, whole_last_day } : null);

  const lasts = /\bfor (?:the next )?(\d{1,3}|a|one|two|three|four|five|six|seven|ten|fourteen) (hour|day|week)s?\b/.exec(plain);
  if (lasts) {
    const count = Number(lasts[1]) || (NUMBERS[lasts[1] ?? ""] ?? 1);
    if (lasts[2] === "hour") return set(now_ms, now_ms + count * HOURS, false);
    return set(now_ms, endOf(now.add({ days: count * (lasts[2] === "week" ? 7 : 1) - 1 })), false);
  }
  const saturday = now.add({ days: (6 - now.dayOfWeek + 7) % 7 });
  if (/\bthis weekend\b|\bthe weekend\b/.test(plain)) return set(now.dayOfWeek === 7 ? now_ms : Math.max(now_ms, saturday.startOfDay().epochMilliseconds), endOf(now.dayOfWeek === 7 ? now : saturday.add({ days: 1 })), false);
  if (/\bthis week\b/.test(plain)) return set(now_ms, endOf(now.add({ days: 7 - now.dayOfWeek })), false);

  const times = readTimes(text, now_ms, timezone, { lean: "future", ...(locale ? { locale } : {}) });
  const last = times.at(-1);
  if (!last) return null;
  const ends = last.kind === "instant" ? last.at_ms : endOf(zoned(last.at_ms, timezone));
  const first = times.length > 1 ? times[0] : undefined;
  const until = /\b(?:until|till|til|before)\b/.test(plain);
  const startsLater = first ?? (until || /\b(?:through|to)\b/.test(plain) ? undefined : last);
  const starts = startsLater === undefined || startsLater.kind === "instant" && startsLater === last ? now_ms
    : startsLater.kind === "instant" ? startsLater.at_ms : zoned(startsLater.at_ms, timezone).startOfDay().epochMilliseconds;
  return set(Math.max(now_ms, starts), ends, until && last.kind === "day");
}

const NUMBERS: Readonly<Record<string, number>> = { a: 1, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, ten: 10, fourteen: 14 };
