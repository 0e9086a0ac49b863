/** Facts that are stated rather than asked about: alarms, tonight's weather, bedtime, and corrections of what was just written down. */
import { say, text } from "../answer.ts";
import type { AlarmsFacts } from "../records/schemas.ts";
import type { Fire } from "../records/types.ts";
import type { Context, Outcome } from "./context.ts";
import { inUnit, readFigures } from "./reading/figures.ts";
import { readRepeat } from "./reading/read-repeat.ts";
import { readCorrection } from "./reading/corrections.ts";
import { readAlarms, readWeather, readWood } from "./reading/records.ts";
import { readSpecies } from "./reading/species.ts";
import { readTimes } from "./reading/times.ts";
import { shareHeard } from "./topics/calculate.ts";
import { upkeepSaid } from "./topics/upkeep.ts";
import { recordsOutcome } from "./topics/records.ts";

export function stated(context: Context): Outcome | null {
  if (/\?\s*$/.test(context.text) || context.text.length > 200) return null;
  return corrected(context) ?? hearsay(context) ?? upkeepSaid(context) ?? bedtime(context) ?? alarms(context) ?? weather(context) ?? wood(context);
}

/** "no, 14 not 40" after a fire was written down, "no, it was 12 kg" after the list of them. */
function corrected(context: Context): Outcome | null {
  const correction = readCorrection(context.text);
  const last = context.snapshot.fires[0];
  const young = context.state.topic_at_ms !== undefined && context.now_ms - context.state.topic_at_ms < 30 * 60_000;
  if (correction && young && context.state.topic === "set-heater") return heaterCorrected(context, correction.to, correction.from);
  if (correction && young && context.state.undo && context.state.topic === "woodpile") return pileCorrected(context, correction.to);
  if (!correction || !(context.state.topic === "log-fire" || context.state.topic === "show-fires" || context.state.tree) || !young || !last) return null;
  const figures = readFigures(correction.to);
  const mass = figures.find((figure) => figure.dimension === "mass" || figure.dimension === null);
  const share = shareHeard({ figures });
  const species = readSpecies(correction.to)[0]?.id;
  const value = mass ? (mass.unit === null ? mass.value : (inUnit(mass, "kg") ?? undefined)) : undefined;
  // a bare figure stands for the one it replaces
  const was = correction.from === undefined ? undefined : readFigures(correction.from)[0]?.value;
  const isMoisture = share !== undefined || (mass?.unit === null && was !== undefined && last.facts.moisture_pct_wet === was && last.facts.load_kg !== was);
  const changed = { ...(isMoisture ? { moisture_pct_wet: share?.value ?? value } : value !== undefined ? { load_kg: value } : {}), ...(species ? { species } : {}) };
  if (Object.keys(changed).length === 0) return null;
  const fire: Fire = { ...last, facts: { ...last.facts, ...changed } };
  const outcome = recordsOutcome(context, "log-fire", { kept: { fires: [fire.facts] }, problems: [] });
  return asCorrected(outcome);
}

const FULL_LOAD_KG = 120;

/** "no, it was 12 kg" right after the heater was written down: its load, or its masonry where the figure is of that size. */
function heaterCorrected(context: Context, to: string, from: string | undefined): Outcome | null {
  const facts = context.heater?.facts ?? {};
  const figure = readFigures(to).find(({ dimension }) => dimension === "mass" || dimension === null);
  if (!figure) return null;
  const value = figure.unit === null ? figure.value : (inUnit(figure, "kg") ?? 0);
  const was = from === undefined ? undefined : readFigures(from)[0]?.value;
  const key = value > FULL_LOAD_KG || (was !== undefined && was === facts.masonry_kg) ? "masonry_kg" : "max_load_kg";
  if (facts[key] === undefined || value <= 0) return null;
  return asCorrected(recordsOutcome(context, "set-heater", { kept: { heater: { [key]: value } }, problems: [] }));
}

/** "no, 3" right after a pile was written down; nothing where there are several. */
function pileCorrected(context: Context, to: string): Outcome | null {
  const [pile, ...others] = context.snapshot.home.wood;
  const figures = readFigures(to);
  const species = readSpecies(to)[0]?.id;
  const share = shareHeard({ figures });
  const volume = figures.find(({ dimension }) => dimension === "volume" || dimension === null);
  if (!pile || others.length > 0) return null;
  const m3 = volume?.dimension === "volume" ? inUnit(volume, "m3") : volume?.value;
  const changed = {
    ...(share?.basis === "wet" ? { moisture_pct_wet: share.value } : share === undefined && m3 && pile.volume_m3_stacked !== undefined ? { volume_m3_stacked: m3 } : {}),
    ...(species ? { species } : {}),
  };
  if (Object.keys(changed).length === 0) return null;
  const { home } = context.snapshot;
  return {
    ...asCorrected(recordsOutcome(context, "woodpile", { kept: { wood: [{ ...pile, ...changed }] }, problems: [] })),
    writes: [{ write: "home", home: { ...home, wood: [{ ...pile, ...changed }] } }],
  };
}

const asCorrected = (outcome: Outcome): Outcome => ({ ...outcome, draft: { ...outcome.draft, headline: text("records.corrected") } });

/** Wood somebody would like to have is no pile. */
export const wanted = (words: string): boolean => /\b(?:(?:i|we)(?:'d| would)? (?:want|like|need)(?! to (?:add|note|write|log|record|put))|looking for|let'?s (?:order|buy|get)|shall we (?:order|buy)|want to (?:buy|order)|order(?:ing)?)\b/i.test(words);

/** "The previous owner said 10 kg": hearsay, kept as a guess where nothing better is known. */
function hearsay(context: Context): Outcome | null {
  if (context.heater?.facts.max_load_kg !== undefined || context.heater?.facts.masonry_kg !== undefined) return null;
  if (!/\b(?:previous|former|last|old) owners?\b|\b(?:landlord|landlady|neighbou?rs?|vorbesitzer\w*|vermieter\w*|nachbar\w*)\b/i.test(context.said) || !/\b(?:said|says|told|burnt|burned|used|took|sagt\w*|verheizt\w*|nahm\w*)\b/i.test(context.said)) return null;
  const masses = readFigures(context.text).filter(({ dimension }) => dimension === "mass");
  const load_kg = masses.length === 1 && masses[0] ? inUnit(masses[0], "kg") : undefined;
  if (!load_kg || load_kg > FULL_LOAD_KG / 2) return null;
  const outcome = recordsOutcome(context, "set-heater", { kept: { heater: { max_load_kg: load_kg, max_load_source: "guess" } }, problems: [] });
  return { ...outcome, draft: { ...outcome.draft, cautions: ["over-firing"], blocks: [say(text("records.hearsay"), "over-firing"), ...(outcome.draft.blocks ?? [])] } };
}

const BEDTIME = /\b(asleep|bed ?time|go to bed|in bed|i sleep|we sleep|turn in)\b/;

/** "I go to bed at 22:30", "asleep from 23:00 to 6" */
function bedtime(context: Context): Outcome | null {
  const plain = context.text.toLowerCase();
  if (!BEDTIME.test(plain) || /\b(embers?|flames?|glow|damper|close|slide)\b/.test(plain)) return null;
  const clock = (at_ms: number): string => Temporal.Instant.fromEpochMilliseconds(at_ms).toZonedDateTimeISO(context.reader.timezone).toPlainTime().toString().slice(0, 5);
  const times = readTimes(context.text, context.now_ms, context.reader.timezone, { lean: "future" }).filter((time) => time.kind === "instant");
  const [from, to] = times;
  if (!from) return null;
  const evening = (at_ms: number, other?: number): string => {
    const hhmm = clock(at_ms);
    return other !== undefined && hhmm >= "04:00" && hhmm < "12:00" ? clock(other) : hhmm;
  };
  const asleep = { from: evening(from.at_ms, from.other_ms), to: to ? clock(to.at_ms) : (context.snapshot.person.facts.asleep?.to ?? "06:30") };
  return recordsOutcome(context, "set-house", { kept: { asleep }, problems: [] });
}

function around(context: Context) {
  const { reader, now_ms } = context;
  return { now_ms, timezone: reader.timezone, system: reader.system, locale: reader.locale };
}

/** "the CO alarm in the bedroom was tested yesterday, good till 2031" */
function alarms(context: Context): Outcome | null {
  // "test the CO alarm every first Sunday" is a plan, not a test
  if (!/alarm|detector|monoxide/i.test(context.text) || /\bremind/i.test(context.text) || readRepeat(context.text)) return null;
  const read = readAlarms(context.text, around(context));
  const dated = [read.facts.co, read.facts.smoke].some((one) => one && (one.tested_on || one.ends_on || one.present === false || one.room));
  return dated && read.questions.length === 0 ? recordsOutcome(context, "set-house", { kept: { alarms: ownRooms(context, read.facts) }, problems: [...read.problems] }) : null;
}

const ownRooms = (context: Context, { co, smoke }: AlarmsFacts): AlarmsFacts => {
  const own = (alarm: NonNullable<AlarmsFacts["co"]>): NonNullable<AlarmsFacts["co"]> => (alarm.room ? { ...alarm, room: context.own(alarm.room) } : alarm);
  return { ...(co ? { co: own(co) } : {}), ...(smoke ? { smoke: own(smoke) } : {}) };
};

/** "-12 tonight" and nothing else */
function weather(context: Context): Outcome | null {
  if (context.text.length > 60 || /\b(wood|fires?|burn|kg|load|how|what|log|plan|draws?|draught|draft|smok\w*|smells?|glass|crack\w*|door|damper|heater|stove)\b/i.test(context.text)) return null;
  const read = readWeather(context.text, around(context));
  if (read.days.length > 0) return recordsOutcome(context, "set-house", { kept: { weather: [...read.days] }, problems: [...read.problems] });
  const said = read.facts.low_C !== undefined || read.facts.high_C !== undefined;
  return said && /\b(tonight|low|lows|high|outside|outdoors|overnight|forecast)\b/i.test(context.text)
    ? recordsOutcome(context, "set-house", { kept: { weather: read.facts }, problems: [...read.problems] })
    : null;
}

const ASKS = /^(is|are|how|why|when|what|which|can|could|should|do|does|did|will|would|where|who)\b/i;

/** "birch, split last March, reads 17 % wet basis, a basket is 8 kg": a pile described, with more than one would say in passing */
function wood(context: Context): Outcome | null {
  if (ASKS.test(context.text.trim()) || wanted(context.text) || /\b(log|lit|burnt|burned|fire)\b/i.test(context.text)) return null;
  const read = readWood(context.text, around(context));
  const pile = read.facts[0];
  const described = pile && (pile.basket_kg !== undefined || pile.split_on !== undefined || pile.measured_on !== undefined || pile.volume_m3_stacked !== undefined);
  return described && Object.keys(pile).length >= 2 && read.questions.length === 0 ? recordsOutcome(context, "woodpile", { kept: { wood: [...read.facts] }, problems: [...read.problems] }) : null;
}
