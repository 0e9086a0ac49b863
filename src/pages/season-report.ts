/** The season on paper, for a sweep, an insurer or whoever takes over the heater: what was burnt, when it was swept, what went wrong. */
import { numbers, say, steps, text, verbatim, type Document, type PageBlock, type Text } from "../answer.ts";
import type { Limits } from "../limits.ts";
import { q } from "../quantities.ts";
import type { HeaterFacts, UpkeepFacts } from "../records/schemas.ts";
import type { Fire } from "../records/types.ts";

export interface SeasonFacts {
  readonly heater: HeaterFacts;
  readonly upkeep: UpkeepFacts;
  readonly limits: Limits;
  /** of the last twelve months, newest first */
  readonly fires: readonly Fire[];
  readonly since_sweep: { readonly fires: number; readonly load_kg: number };
  /** talked about, by their title in the catalogues */
  readonly troubles: readonly { readonly title: Text; readonly cause?: Text; readonly at_ms: number }[];
  readonly timezone: string;
  readonly now_ms: number;
}

const DASH = verbatim("–");
const kg = (value: number, digits = 0): Text => text("plain", { value: q(value, "kg", { digits }) });

export function seasonReport(facts: SeasonFacts): Document {
  const { fires, heater, limits } = facts;
  const sum = fires.reduce((total, fire) => total + (fire.facts.load_kg ?? 0), 0);
  const moist = weightedMoisture(fires);
  const over = fires.filter((fire) => limits.max_load_kg !== null && (fire.facts.load_kg ?? 0) > limits.max_load_kg + 0.05);
  const early = fires.filter(({ facts: fire }) => fire.damper_closed_at !== undefined && ["flame", "blue", "red"].includes(fire.bed_at_close ?? ""));
  return {
    name: "season.html",
    media_type: "text/html",
    title: heater.name ? text("season.title-named", { name: verbatim(heater.name) }) : text("season.title"),
    body: [
      say(text("season.span", { from: { at_ms: fires.at(-1)?.lit_at_ms ?? facts.now_ms, show: "date" }, to: { at_ms: facts.now_ms, show: "date" } })),
      numbers(
        ...(limits.max_load_kg === null ? [] : [{ key: "max_load_kg", label: text("number.max_load_kg"), quantity: q(limits.max_load_kg, "kg", { digits: 1 }) }]),
        { key: "burnt_kg", label: text("season.burnt"), quantity: q(sum, "kg", { digits: 0 }) },
        ...(facts.upkeep.swept_on ? [{ key: "since_sweep_kg", label: text("season.since-sweep"), quantity: q(facts.since_sweep.load_kg, "kg", { digits: 0 }) }] : []),
        ...(moist === null ? [] : [{ key: "moisture_pct_wet", label: text("season.moisture"), quantity: q(moist, "pct", { digits: 0 }) }]),
      ),
      months(facts),
      steps(upkeepLines(facts), { ordered: false, title: text("season.upkeep") }),
      steps(troubleLines(facts), { ordered: false, title: text("season.troubles") }),
      steps([text("season.over", { fires: over.length }), text("season.early", { fires: early.length }), text("season.unweighed", { fires: fires.filter((fire) => fire.facts.load_kg === undefined).length })], { ordered: false, title: text("season.worth-knowing") }),
      say(text("season.made", { date: { at_ms: facts.now_ms, show: "date" } })),
    ],
  };
}

/** Mean of the fires that have both weight and moisture, by weight. */
function weightedMoisture(fires: readonly Fire[]): number | null {
  const known = fires.flatMap(({ facts }) => (facts.load_kg !== undefined && facts.moisture_pct_wet !== undefined ? [[facts.load_kg, facts.moisture_pct_wet] as const] : []));
  const weight = known.reduce((sum, [load]) => sum + load, 0);
  return weight > 0 ? known.reduce((sum, [load, pct]) => sum + load * pct, 0) / weight : null;
}

function months({ fires, timezone }: SeasonFacts): PageBlock {
  const monthOf = (fire: Fire): string => Temporal.Instant.fromEpochMilliseconds(fire.lit_at_ms).toZonedDateTimeISO(timezone).toPlainDate().toString().slice(0, 7);
  const rows = [...Map.groupBy(fires.toReversed(), monthOf)].map(([month, burnt]) => {
    const loads = burnt.flatMap((fire) => fire.facts.load_kg ?? []);
    const moist = weightedMoisture(burnt);
    return [
      verbatim(month),
      verbatim(String(burnt.length)),
      kg(loads.reduce((sum, load) => sum + load, 0)),
      loads.length > 0 ? kg(Math.max(...loads), 1) : DASH,
      moist === null ? DASH : text("plain", { value: q(moist, "pct") }),
    ];
  });
  return { kind: "table", cautions: [], caption: text("season.by-month"), columns: ["month", "fires", "wood", "largest", "moisture"].map((id) => text(`season.column.${id}`)), rows };
}

function upkeepLines({ upkeep, since_sweep }: SeasonFacts): Text[] {
  const dates = (["swept_on", "channels_cleaned_on", "gasket_changed_on"] as const).map((key) => {
    const date = upkeep[key];
    return date ? text(`season.${key}`, { date: { at_ms: Date.parse(`${date}T12:00:00Z`), show: "date" } }) : text(`season.${key}-unknown`);
  });
  return [...dates, sinceSweep(upkeep, since_sweep)];
}

/** Without a known sweep, what is on record is what is on record, and no figure since any sweep. */
export const sinceSweep = (upkeep: UpkeepFacts, { fires, load_kg }: SeasonFacts["since_sweep"]): Text =>
  text(upkeep.swept_on ? "season.since" : "season.in-all", { fires, load: q(load_kg, "kg", { digits: 0 }) });

function troubleLines({ troubles }: SeasonFacts): Text[] {
  if (troubles.length === 0) return [text("season.no-trouble")];
  return troubles.map(({ title, cause, at_ms }) => text(cause ? "season.trouble-cause" : "season.trouble", { date: { at_ms, show: "date" }, title, ...(cause ? { cause } : {}) }));
}

/** The keys and units of the fire records as they are written outside, so that they can be read back in or into a spreadsheet. */
const COLUMNS = ["lit_at", "load_kg", "species", "moisture_pct_wet", "lit", "stack", "air", "flame_out_at", "air_closed_at", "damper_closed_at", "bed_at_close", "outside_C", "note"] as const;

export function seasonTable({ fires }: Pick<SeasonFacts, "fires">): Document {
  return {
    name: "fires.csv",
    media_type: "text/csv",
    title: text("season.csv"),
    twin: true,
    body: [{ kind: "table", cautions: [], columns: COLUMNS.map(verbatim), rows: fires.toReversed().map((fire) => COLUMNS.map((key) => verbatim(String(fire.facts[key] ?? "")))) }],
  };
}
