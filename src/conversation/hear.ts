/** Everything a message says beside its topic: figures, species, what is reported of the bed, answers to a tree's signs. Read lazily, once. */
import { readReport, saysNothing, type Report } from "../firing/report.ts";
import type { Trouble } from "../knowledge/schemas.ts";
import type { SignAnswer } from "../trouble/walk.ts";
import { inUnit, readFigures, type Figure } from "./reading/figures.ts";
import { readWeather } from "./reading/read-weather.ts";
import { readSpecies } from "./reading/species.ts";
import type { Context } from "./context.ts";
import { answerTo, signsIn } from "./sign-answer.ts";
import { shareHeard } from "./topics/calculate.ts";
import type { LoadGiven } from "./topics/load-size.ts";

export interface Hearing {
  readonly figures: readonly Figure[];
  readonly species?: string;
  /** null when nothing was said of fire or bed */
  readonly report: Report | null;
  readonly load_kg?: number;
  readonly load: LoadGiven;
  signs(trouble: Trouble): Record<string, SignAnswer>;
}

export function hear(context: Context): Hearing {
  const { text, said } = context;
  const figures = readFigures(text, { degrees: context.reader.system === "us" ? "F" : "C" });
  const species = readSpecies(text).find((found) => !found.weak)?.id;
  const report = readReport(said);
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
    signs: (trouble) => signsSaid(context, trouble, figures),
  };
}

/** What the message says of a tree's signs; the one that stands open is read with the heater's limits and the date at hand. */
function signsSaid({ said, text, language, state, limits, now_ms }: Context, trouble: Trouble, figures: readonly Figure[]): Record<string, SignAnswer> {
  const about = { now_ms, max_load_kg: limits.max_load_kg, language, glossed: text };
  const mentioned = signsIn(trouble, said, figures, about);
  const waiting = state.tree?.trouble === trouble.id ? state.tree.waiting : null;
  const sign = waiting ? trouble.signs[waiting] : undefined;
  const answered = sign ? answerTo(sign, said, figures, about) : undefined;
  if (!waiting || answered === undefined) return mentioned;
  // what could not be read before may be read now
  const said_before = state.tree?.said ?? {};
  const besides = Object.entries(mentioned).filter(([id]) => id !== waiting && (said_before[id] ?? null) === null);
  return { ...Object.fromEntries(besides), [waiting]: answered };
}

function massOf(figures: readonly Figure[]): number | undefined {
  const kg = figures.flatMap((figure) => (figure.dimension === "mass" ? [inUnit(figure, "kg") ?? 0] : [])).find((value) => value > 0 && value <= 150);
  return kg;
}
