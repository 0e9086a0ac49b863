/** The facts of a trouble in a few lines, for the person to send to a sweep, a builder or a technician. Nothing is sent from here. */
import { say, steps, text, verbatim, type Document, type Text } from "../answer.ts";
import type { Limits } from "../limits.ts";
import { q } from "../quantities.ts";
import type { AlarmsFacts, HeaterFacts, UpkeepFacts } from "../records/schemas.ts";
import type { AlbumEntry, Fire } from "../records/types.ts";
import { sinceSweep } from "./season-report.ts";

export interface BriefFacts {
  readonly to: "sweep" | "builder" | "ventilation";
  readonly heater: HeaterFacts;
  /** the facts of the heater, each as one line */
  readonly heater_lines: readonly Text[];
  readonly upkeep: UpkeepFacts;
  readonly alarms: AlarmsFacts;
  readonly limits: Limits;
  readonly fires: readonly Fire[];
  readonly since_sweep: { readonly fires: number; readonly load_kg: number };
  readonly trouble: { readonly title: Text; readonly at_ms: number; readonly said: readonly (readonly [question: Text, answer: Text])[]; readonly causes: readonly Text[] } | null;
  readonly album: readonly AlbumEntry[];
  readonly now_ms: number;
}

const FIRES = 5;

export function brief(facts: BriefFacts): Document {
  const { trouble, to, fires, upkeep } = facts;
  return {
    name: `brief-for-${to}.txt`,
    media_type: "text/plain",
    title: text(`brief.title.${to}`),
    body: [
      say(trouble ? text("brief.trouble", { title: trouble.title, date: { at_ms: trouble.at_ms, show: "date" } }) : text("brief.no-trouble")),
      ...(trouble && trouble.said.length > 0 ? [steps(trouble.said.map(([question, answer]) => text("brief.said", { question, answer })), { ordered: false, title: text("brief.seen") })] : []),
      ...(trouble && trouble.causes.length > 0 ? [steps(trouble.causes, { ordered: false, title: text("brief.causes") })] : []),
      steps([
        ...facts.heater_lines,
        upkeep.swept_on ? text("season.swept_on", { date: { at_ms: Date.parse(`${upkeep.swept_on}T12:00:00Z`), show: "date" } }) : text("season.swept_on-unknown"),
        sinceSweep(upkeep, facts.since_sweep),
      ], { ordered: false, title: text("brief.heater") }),
      ...(fires.length > 0 ? [steps(fires.slice(0, FIRES).map(fireLine), { ordered: false, title: text("brief.fires") })] : []),
      ...(facts.album.length > 0 ? [say(text("brief.pictures", { pictures: facts.album.length, date: { at_ms: facts.album[0]?.at_ms ?? facts.now_ms, show: "date" } }))] : []),
      say(text(`calls.${to}.tell`)),
    ],
  };
}

function fireLine({ lit_at_ms, facts }: Fire): Text {
  const what: Text[] = [
    facts.load_kg === undefined ? text("brief.no-weight") : text("plain", { value: q(facts.load_kg, "kg", { digits: 1 }) }),
    ...(facts.species ? [verbatim(facts.species)] : []),
    ...(facts.moisture_pct_wet === undefined ? [] : [text("brief.moisture", { moisture: q(facts.moisture_pct_wet, "pct") })]),
    ...(facts.note ? [verbatim(facts.note)] : []),
  ];
  return text("brief.fire", { lit: { at_ms: lit_at_ms, show: "day-time" }, what });
}
