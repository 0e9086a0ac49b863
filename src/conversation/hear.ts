/** Everything a message says beside its topic: figures, species, what is reported of the bed, answers to a tree's signs. Read lazily, once. */
import { readReport, saysNothing, type Report } from "../firing/report.ts";
import type { Trouble } from "../knowledge/schemas.ts";
import { inUnit, readFigures, type Figure } from "./reading/figures.ts";
import { readWeather } from "./reading/read-weather.ts";
import { readSpecies } from "./reading/species.ts";
import type { Context } from "./context.ts";
import { signsIn } from "./sign-answer.ts";
import { shareHeard } from "./topics/calculate.ts";
import type { LoadGiven } from "./topics/load-size.ts";

export interface Hearing {
  readonly figures: readonly Figure[];
  readonly species?: string;
  /** null when nothing was said of fire or bed */
  readonly report: Report | null;
  readonly load_kg?: number;
  readonly load: LoadGiven;
  signs(trouble: Trouble): Record<string, string | number | null>;
}

export function hear(context: Context): Hearing {
  const { text } = context;
  const figures = readFigures(text, { degrees: context.reader.system === "us" ? "F" : "C" });
  const species = readSpecies(text).find((found) => !found.weak)?.id;
  const report = readReport(text);
  const load_kg = massOf(figures);
  const share = shareHeard({ figures });
  const weather = readWeather(text, { now_ms: context.now_ms, timezone: context.reader.timezone, system: context.reader.system, locale: context.reader.locale }).facts;
  const [low, high] = [weather.low_C ?? weather.high_C, weather.low_C === undefined ? undefined : weather.high_C];
  return {
    figures,
    ...(species ? { species } : {}),
    report: saysNothing(report) ? null : report,
    ...(load_kg === undefined ? {} : { load_kg }),
    load: {
      ...(low === undefined ? {} : { low_C: low }),
      ...(high === undefined ? {} : { high_C: high }),
      ...(share && share.basis !== "dry" && share.value <= 60 ? { moisture_pct_wet: share.value } : share?.basis === "dry" ? { moisture_pct_wet: (100 * share.value) / (100 + share.value) } : {}),
      ...(species ? { species } : {}),
    },
    signs: (trouble) => signsIn(trouble, text, figures),
  };
}

function massOf(figures: readonly Figure[]): number | undefined {
  const kg = figures.flatMap((figure) => (figure.dimension === "mass" ? [inUnit(figure, "kg") ?? 0] : [])).find((value) => value > 0 && value <= 150);
  return kg;
}
