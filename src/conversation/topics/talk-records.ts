/** Records by talking: "my heater: bell, 1800 kg, max 15 kg", "log: 12 kg birch 18:10". Reads what is there, asks for what must not be assumed. */
import { ask, ours, say, steps, text, type Block, type FormField } from "../../answer.ts";
import { q } from "../../quantities.ts";
import type { ReadRecords } from "../../records/read.ts";
import { FireRecord, HEATER_KINDS, type FireFacts } from "../../records/schemas.ts";
import type { TopicId } from "../../topics.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import type { Amount } from "../reading/amounts.ts";
import { readFire } from "../reading/read-fire.ts";
import { readHeater } from "../reading/read-heater.ts";
import { readHouse } from "../reading/read-house.ts";
import type { Read } from "../reading/statement.ts";
import { readWood } from "../reading/read-wood.ts";
import { readBack, recordsOutcome } from "./records.ts";

type Kept = ReadRecords["kept"];

export function talkRecords(context: Context, topic: TopicId): Outcome {
  const { reader, now_ms } = context;
  const around = { now_ms, timezone: reader.timezone, system: reader.system, locale: reader.locale };
  switch (topic) {
    case "set-heater": {
      const read = named(context, readHeater(context.text, around));
      return Object.keys(read.facts).length === 0 ? form(context, topic, heaterForm(context), read.problems) : done(context, topic, { heater: read.facts }, read);
    }
    case "set-house": {
      const read = readHouse(context.text, around);
      const estimate = read.estimate && context.snapshot.home.house.heat_loss_W_per_K === undefined && read.facts.heat_loss_W_per_K === undefined ? read.estimate : undefined;
      const house = { ...read.facts, ...(estimate ? { heat_loss_W_per_K: Math.round(estimate.heat_loss_W_per_K.value) } : {}) };
      return Object.keys(house).length === 0 ? form(context, topic, houseForm(context)) : done(context, topic, { house }, estimate ? { ...read, assumed: [...read.assumed, estimate.because] } : read);
    }
    case "woodpile": {
      const read = readWood(context.text, around);
      return read.facts.length === 0 && read.questions.length === 0 ? form(context, topic, WOOD_FORM) : done(context, topic, read.facts.length > 0 ? { wood: read.facts.map((facts) => named(context, { facts }).facts) } : {}, read);
    }
    case "log-fire":
      return logFire(context, around);
    default:
      return setUnits(context);
  }
}

/** A name, a note and a room are kept in the person's own words. */
function named<R extends { readonly facts: { readonly name?: string; readonly note?: string } }>(context: Context, read: R): R {
  const { name, note } = read.facts;
  return { ...read, facts: { ...read.facts, ...(name ? { name: context.own(name) } : {}), ...(note ? { note: context.own(note) } : {}) } };
}

function done(context: Context, topic: TopicId, kept: Kept, read: Read<unknown>): Outcome {
  return recordsOutcome(context, topic, { kept, problems: [...read.problems] }, rest(read));
}

const rest = (read: Pick<Read<unknown>, "questions" | "assumed">): Block[] =>
  blocks(
    read.assumed.length > 0 && steps(read.assumed.map(ours), { ordered: false, title: text("records.assumed") }),
    ...read.questions.slice(0, 1).map((question) => ask(`record:${question.id}`, ours(question.text), (question.choices ?? []).map((choice) => ({ id: `record:${question.id}=${choice.id}`, label: ours(choice.label) })))),
  );

function logFire(context: Context, around: { timezone: string; now_ms: number; system: "metric" | "us"; locale: string }): Outcome {
  const { now_ms, timezone, ...more } = around;
  const read = named(context, readFire(context.text, now_ms, timezone, more));
  const facts: Partial<FireFacts> = { ...defaults(context), ...weighed(context, read.amount), ...read.facts };
  const full = FireRecord.safeParse({ lit_at: new Date(now_ms).toISOString(), ...facts });
  // a time was said and cannot be: the fire is not put at another one
  const refused = read.facts.lit_at === undefined && read.problems.length > 0 && !read.questions.some(({ id }) => id === "lit-at");
  if (Object.keys(read.facts).length === 0 || !full.success || refused) return form(context, "log-fire", FIRE_FORM, read.problems);
  const early = read.careful.includes("damper-over-embers") || full.data.bed_at_close !== undefined && full.data.bed_at_close !== "black" && full.data.bed_at_close !== "unknown" && full.data.damper_closed_at !== undefined;
  const unsaid = full.data.damper_closed_at !== undefined && full.data.bed_at_close === undefined;
  const over = context.limits.max_load_kg !== null && (full.data.load_kg ?? 0) > context.limits.max_load_kg + 0.05;
  const outcome = recordsOutcome(context, "log-fire", { kept: { fires: [full.data] }, problems: [...read.problems] }, [
    ...(over ? [say(text("fires.over", { load: q(full.data.load_kg ?? 0, "kg", { digits: 1 }), max: q(context.limits.max_load_kg ?? 0, "kg", { digits: 1 }) }), "over-firing")] : []),
    ...(early ? [say(text("fires.early"), "close-flue", "carbon-monoxide")] : []),
    ...(unsaid ? [say(text("fires.bed-ask"), "close-flue")] : []),
    ...rest(read),
  ]);
  return outcome;
}

/** "One basket" through the person's own weighing. */
function weighed(context: Context, amount: Amount | undefined): Partial<FireFacts> {
  const basket_kg = context.snapshot.home.wood.find((wood) => wood.basket_kg !== undefined)?.basket_kg;
  if (!amount) return {};
  if (amount.measure === "basket" && basket_kg !== undefined) return { load_kg: Math.round(amount.count * basket_kg * 10) / 10 };
  return amount.measure === "mark" && context.limits.max_load_kg !== null ? { load_kg: context.limits.max_load_kg } : {};
}

/** What the woodpile says about a fire that does not say it itself. */
function defaults(context: Context): Partial<FireFacts> {
  const wood = context.snapshot.home.wood.length === 1 ? context.snapshot.home.wood[0] : undefined;
  return { ...(wood?.species ? { species: wood.species } : {}), ...(wood?.moisture_pct_wet === undefined ? {} : { moisture_pct_wet: wood.moisture_pct_wet }) };
}

function setUnits(context: Context): Outcome {
  const plain = context.text.toLowerCase();
  const us = /\b(us|american|imperial|lbs?|pounds?|fahrenheit|f)\b/.test(plain);
  const metric = /\b(metric|kgs?|kilos?|kilograms?|celsius|c)\b/.test(plain);
  if (us === metric) {
    return { draft: { topic: "set-units", headline: text("units.ask"), blocks: [ask("units", text("units.which"), [{ id: "units:metric", label: text("units.metric") }, { id: "units:us", label: text("units.us") }])] } };
  }
  return recordsOutcome(context, "set-units", { kept: { units: us ? "us" : "metric" }, problems: [] });
}

export const unitsChosen = (context: Context, units: string): Outcome => recordsOutcome(context, "set-units", { kept: { units: units === "us" ? "us" : "metric" }, problems: [] });

/** What cannot be comes first, then what is on record: who asks to see it is not asked to tell it. */
function form(context: Context, topic: TopicId, fields: readonly FormField[], problems: readonly string[] = []): Outcome {
  const known = topic === "set-heater" ? readBack({ heater: context.heater?.facts ?? {} }) : topic === "set-house" ? readBack({ house: context.snapshot.home.house }) : [];
  return {
    draft: {
      topic,
      headline: problems[0] !== undefined ? ours(problems[0]) : known.length > 0 ? text("records.on-record") : text(`form.${topic}.headline`),
      blocks: [...problems.slice(1).map((problem) => say(ours(problem))), ...(known.length > 0 ? [steps(known, { ordered: false })] : []), say(text(`form.${topic}.example`)), { kind: "form", id: topic, title: text(`form.${topic}.title`), fields, cautions: [] }],
    },
  };
}

const field = (key: string, kind: FormField["kind"], more: Partial<FormField> = {}): FormField => ({ key, kind, label: text(`record.${key}`), ...more });
const yesNo = (key: string, known: boolean | undefined): FormField => field(key, "yes-no", known === undefined ? {} : { value: known ? "yes" : "no" });

function heaterForm(context: Context): FormField[] {
  const facts = context.heater?.facts ?? {};
  return [
    field("max_load_kg", "number", { unit: "kg", hint: text("form.hint.max_load"), ...(facts.max_load_kg === undefined ? {} : { value: String(facts.max_load_kg) }) }),
    field("max_load_source", "choice", { choices: (["sheet", "plate", "reckoned", "guess"] as const).map((id) => ({ id, label: text(`form.source.${id}`) })) }),
    field("masonry_kg", "number", { unit: "kg" }),
    field("kind", "choice", { choices: HEATER_KINDS.map((id) => ({ id, label: text(`fact.kind.${id}`) })) }),
    yesNo("shut_off_damper", facts.shut_off_damper),
    yesNo("bypass_damper", facts.bypass_damper),
    yesNo("grate", facts.grate),
    field("gas_exit", "choice", { choices: (["top", "low", "unknown"] as const).map((id) => ({ id, label: text(`fact.gas_exit.${id}`) })) }),
    field("flue_height_m", "number", { unit: "m" }),
  ];
}

const houseForm = (context: Context): FormField[] => [
  field("floor_m2", "number", { unit: "m²" }),
  field("heat_loss_W_per_K", "number", { unit: "W/K", hint: text("form.hint.heat_loss") }),
  field("wanted_C", "number", { unit: "°C" }),
  yesNo("vented_hood", context.snapshot.home.house.vented_hood),
  yesNo("hood_interlock", context.snapshot.home.house.hood_interlock),
];
const WOOD_FORM: readonly FormField[] = [
  field("species", "text"), field("moisture_pct_wet", "number", { unit: "%", hint: text("form.hint.moisture") }), field("volume_m3_stacked", "number", { unit: "m³" }), field("split_on", "date"), field("basket_kg", "number", { unit: "kg" }),
];
const FIRE_FORM: readonly FormField[] = [
  field("lit_at", "text", { hint: text("form.hint.lit_at") }), field("load_kg", "number", { unit: "kg" }), field("species", "text"), field("moisture_pct_wet", "number", { unit: "%" }),
  field("damper_closed_at", "text"), field("bed_at_close", "choice", { choices: (["flame", "blue", "red", "black", "unknown"] as const).map((id) => ({ id, label: text(`form.bed.${id}`) })) }),
];
