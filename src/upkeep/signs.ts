/** What the log shows by itself: black glass, weak draught, wet wood. Each sign with the days on which it was seen. Pure. */
import type { LogSign } from "../knowledge/upkeep-schema.ts";
import type { Fire, UpkeepKept } from "../records/types.ts";

export type SignsSeen = ReadonlyMap<string, readonly Temporal.PlainDate[]>;

const MOST_KEPT = 12;

/** From notes and moisture of the fires, and from the troubles that were asked about. One day counts once. */
export function signsSeen(signs: Readonly<Record<string, LogSign>>, fires: readonly Fire[], kept: UpkeepKept["signs"], timezone: string): SignsSeen {
  const dayOf = (fire: Fire): string => Temporal.Instant.fromEpochMilliseconds(fire.lit_at_ms).toZonedDateTimeISO(timezone).toPlainDate().toString();
  return new Map(
    Object.entries(signs).map(([id, { note, moisture_over_pct_wet }]) => {
      const pattern = note ? new RegExp(note, "i") : null;
      const logged = fires.filter(({ facts }) =>
        (pattern && facts.note !== undefined && pattern.test(facts.note)) ||
        (moisture_over_pct_wet !== undefined && (facts.moisture_pct_wet ?? 0) > moisture_over_pct_wet));
      const days = new Set([...(kept?.[id] ?? []), ...logged.map(dayOf)]);
      return [id, [...days].sort().map((day) => Temporal.PlainDate.from(day))] as const;
    }),
  );
}

/** The sign a trouble that is asked about stands for. */
export const signOfTrouble = (signs: Readonly<Record<string, LogSign>>, topic: string): string | null =>
  Object.entries(signs).find(([, { troubles }]) => troubles.includes(topic))?.[0] ?? null;

/** The same day twice is one day. @returns null when nothing changes */
export function noteSign(kept: UpkeepKept["signs"], sign: string, day: string): UpkeepKept["signs"] | null {
  const before = kept?.[sign] ?? [];
  return before.includes(day) ? null : { ...kept, [sign]: [...before, day].slice(-MOST_KEPT) };
}
