/** How somebody reads: their own settings first, else the host's. */
import type { Person } from "../records/types.ts";
import type { Reader } from "./outlet.ts";

export const readerOf = ({ locale, units, timezone }: Person["facts"], fallback: Reader): Reader => ({
  locale: locale ?? fallback.locale,
  system: units ?? fallback.system,
  timezone: timezone ?? fallback.timezone,
});
