/** Reckonings asked for in words: what was said, completed from the records, through the same calculators as outside. */
import { ask, numbers, ours, say, text, verbatim, type Block, type NumberItem } from "../../answer.ts";
import { reckon } from "../../calculators/index.ts";
import { q, UNITS, type UnitId } from "../../quantities.ts";
import type { TopicId } from "../../topics.ts";
import { asShare, inUnit, type Figure } from "../reading/figures.ts";
import { blocks, type Context, type Outcome } from "../context.ts";

export interface Heard {
  readonly figures: readonly Figure[];
  readonly species?: string;
}

/** Moisture, wet basis, at or under which wood is dry enough to burn clean; the legal and practical limit (20 % wet = 25 % dry). */
const DRY_ENOUGH_PCT_WET = 20;

const firstOf = (heard: Heard, unit: UnitId): number | undefined => {
  for (const figure of heard.figures) {
    const value = figure.unit === null ? null : inUnit(figure, unit);
    if (value !== null) return value;
  }
  return undefined;
};

export function shareHeard(heard: Heard, bare = false): Figure | undefined {
  const named = heard.figures.find((figure) => figure.dimension === "share");
  if (named || !bare) return named;
  for (const figure of heard.figures) {
    const share = figure.dimension === null ? asShare(figure) : null;
    if (share && share.value > 0 && share.value <= 200) return share;
  }
  return undefined;
}

/** "Is this birch dry enough?", "my meter says 22". The basis is asked for, never assumed. */
export function drynessOutcome(context: Context, heard: Heard, topic: "wood-dryness" | "meter-reading", basis?: "wet" | "dry" | "unknown"): Outcome {
  const waiting = context.state.pending?.id === "basis" ? context.state.pending.data : undefined;
  const share = shareHeard(heard, true);
  const pct = share?.value ?? (waiting?.pct as number | undefined);
  const said = basis ?? share?.basis ?? (pct !== undefined && pct > 80 ? "dry" : undefined);
  const species = heard.species ?? (waiting?.species as string | undefined);
  if (pct === undefined) return drynessFromRecords(context, topic);
  if (pct >= 100 && said === "wet") {
    return { draft: { topic, headline: text("dryness.impossible", { value: q(pct, "pct", { digits: 1 }) }), blocks: [say(text("dryness.impossible-why"))] } };
  }
  if (!said) {
    return {
      draft: {
        topic,
        headline: text("dryness.basis", { value: q(pct, "pct", { digits: 1 }) }),
        blocks: [say(text("dryness.basis-both", both(pct))), basisQuestion()],
      },
      state: { pending: { id: "basis", data: { pct, topic, ...(species ? { species } : {}) }, at_ms: context.now_ms } },
    };
  }
  if (said === "unknown") {
    return { draft: { topic, headline: text("dryness.unknown-basis", both(pct)), blocks: [say(text("dryness.unknown-basis-why"))] }, state: { pending: undefined } };
  }
  const wood_C = firstOf(heard, "C");
  const isMeter = topic === "meter-reading" || (said === "dry" && wood_C !== undefined);
  const done = isMeter && said === "dry"
    ? reckon("meter", { readings_pct_dry: readings(heard, pct), wood_C: wood_C ?? 20, ...(species ? { species } : {}) })
    : reckon("moisture", said === "dry" ? { moisture_pct_dry: pct } : { moisture_pct_wet: pct });
  if (!done.ok) return failed(topic, done.error);
  const wet = Number(done.result.corrected_pct_wet ?? done.result.moisture_pct_wet);
  return {
    draft: {
      topic,
      headline: text(wet <= 15 ? "dryness.dry" : wet <= DRY_ENOUGH_PCT_WET ? "dryness.enough" : wet <= 25 ? "dryness.damp" : "dryness.wet", { wet: q(wet, "pct", { digits: 1 }), dry: q(100 * wet / (100 - wet), "pct", { digits: 1 }) }),
      blocks: blocks(resultNumbers(done.result), say(text("dryness.how")), ...warningsOf(done.result), wood_C === undefined && isMeter && say(text("dryness.meter-20"))),
    },
    state: { pending: undefined, reckoned: { topic, calculator: isMeter ? "meter" : "moisture", inputs: { pct, said }, at_ms: context.now_ms } },
  };
}

const readings = (heard: Heard, pct: number): number[] => {
  const all = heard.figures.flatMap((figure) => {
    const share = figure.dimension === "share" || figure.dimension === null ? asShare(figure) : null;
    return share && share.value >= 5 && share.value <= 100 ? [share.value] : [];
  });
  return all.length > 1 ? all : [pct];
};
const both = (pct: number) => ({ value: q(pct, "pct", { digits: 1 }), wet_if_dry: q((100 * pct) / (100 + pct), "pct", { digits: 1 }) });

export const basisQuestion = (): Block =>
  ask("basis", text("dryness.ask-basis"), [
    { id: "basis:dry", label: text("dryness.dry-basis") },
    { id: "basis:wet", label: text("dryness.wet-basis") },
    { id: "basis:unknown", label: text("dont-know") },
  ]);

/** asked for the rule rather than about one's own pile */
const RULE = /\b(?:what|which|how (?:dry|much)|wie|welche\w*)\b.*\b(?:should|must|has to|have to|needs? to|ought|muss|soll(?:te)?|darf)\b/i;
/** A rough sign of more than about 25 % water; common practice, no source. */
const HISSES = /\b(?:hiss\w*|foam\w*|sizzl\w*|bubbl\w*|froth\w*)\b/i;

function drynessFromRecords(context: Context, topic: TopicId): Outcome {
  const wood = RULE.test(context.text) ? undefined : context.snapshot.home.wood.find((one) => one.moisture_pct_wet !== undefined);
  if (wood?.moisture_pct_wet === undefined) {
    return { draft: { topic, headline: text(HISSES.test(context.text) ? "dryness.hisses" : "dryness.measure"), blocks: [say(text("dryness.how")), say(text("dryness.no-meter"))] } };
  }
  const wet = wood.moisture_pct_wet;
  return {
    draft: {
      topic,
      headline: text(wet <= DRY_ENOUGH_PCT_WET ? "dryness.record-dry" : "dryness.record-wet", { wet: q(wet, "pct", { digits: 1 }), wood: wood.name === undefined ? ours(wood.species ?? "wood") : verbatim(wood.name) }),
      blocks: blocks(numbers({ key: "moisture_pct_wet", label: text("number.moisture_pct_wet"), quantity: q(wet, "pct", { digits: 1 }) }), say(text("dryness.how"))),
    },
  };
}

export function energyOutcome(context: Context, heard: Heard): Outcome {
  const wood = context.snapshot.home.wood[0];
  const share = shareHeard(heard);
  const load_kg = firstOf(heard, "kg") ?? (context.state.reckoned?.inputs.load_kg as number | undefined) ?? 10;
  const pct = share?.value ?? wood?.moisture_pct_wet ?? 17;
  const species = heard.species ?? wood?.species;
  const inputs = { load_kg, ...(share?.basis === "dry" ? { moisture_pct_dry: pct } : { moisture_pct_wet: pct }), ...(species ? { species } : {}) };
  const done = reckonOrWithout("fuel", inputs, "species");
  if (!done.ok) return failed("fuel-energy", done.error);
  return {
    draft: {
      topic: "fuel-energy",
      headline: text("energy.headline", { load: q(load_kg, "kg", { digits: 1 }), useful: q(Number(done.result.useful_kWh ?? 0), "kWh"), moisture: q(pct, "pct") }),
      blocks: blocks(resultNumbers(done.result), say(text("energy.note")), share && !share.basis && say(text("energy.basis-assumed", { moisture: q(pct, "pct") })), ...warningsOf(done.result)),
    },
    state: { reckoned: { topic: "fuel-energy", calculator: "fuel", inputs, at_ms: context.now_ms } },
  };
}

/** asked without an offer's figure: what is a fair price */
const PRICE = /\b(?:price|pay|cost|costs|worth|fair|charge)\b/i;

export function volumeOutcome(context: Context, heard: Heard): Outcome {
  const inputs = volumeInputs(heard);
  if (!inputs) return { draft: { topic: "wood-volume", headline: text("volume.ask"), blocks: [say(text("volume.kinds"))] } };
  const wood = context.snapshot.home.wood[0];
  const share = shareHeard(heard);
  const full = { ...inputs, ...(heard.species ?? wood?.species ? { species: heard.species ?? wood?.species } : {}), moisture_pct_wet: share?.value ?? wood?.moisture_pct_wet ?? 18 };
  const done = reckonOrWithout("stack", full, "species", "moisture_pct_wet");
  if (!done.ok) return failed("wood-volume", done.error);
  return {
    draft: {
      topic: "wood-volume",
      headline: done.result.mass_kg === undefined ? text("volume.headline", { stacked: q(Number(done.result.volume_m3_stacked), "m3") }) : text("volume.headline-mass", { stacked: q(Number(done.result.volume_m3_stacked), "m3"), mass: q(Number(done.result.mass_kg), "kg", { digits: 0 }) }),
      blocks: blocks(PRICE.test(context.text) && say(text("buy.no-prices")), resultNumbers(done.result), say(text("volume.kinds")), ...warningsOf(done.result)),
    },
    state: { reckoned: { topic: "wood-volume", calculator: "stack", inputs: full, at_ms: context.now_ms } },
  };
}

function volumeInputs(heard: Heard): Record<string, number> | null {
  const lengths = heard.figures.filter((figure) => figure.dimension === "length");
  const volume = heard.figures.find((figure) => figure.dimension === "volume");
  if (volume) {
    const m3 = inUnit(volume, "m3") ?? 0;
    if (volume.unit === "cord") return { cords: volume.value };
    return volume.filling === "loose" ? { volume_m3_loose: m3 } : volume.filling === "solid" ? { volume_m3_solid: m3 } : { volume_m3_stacked: m3 };
  }
  if (lengths.length >= 3) {
    const [length_m, height_m, log_length_m] = lengths.map((figure) => inUnit(figure, "m") ?? 0);
    return { length_m: length_m ?? 0, height_m: height_m ?? 0, log_length_m: log_length_m ?? 0 };
  }
  const bare = heard.figures.filter((figure) => figure.dimension === null);
  if (bare.length >= 3) return { length_m: bare[0]?.value ?? 0, height_m: bare[1]?.value ?? 0, log_length_m: bare[2]?.value ?? 0 };
  return null;
}

/** As the named species, or as a middling hardwood where nobody knows that name. */
export function reckonAs(species: string, name: string, inputs: Record<string, unknown>): ReturnType<typeof reckon> {
  const named = reckon(name, { ...inputs, species });
  return named.ok ? named : reckon(name, { ...inputs, species: "hardwood" });
}

/** A word nobody knows (an odd species) must not cost the rest of the answer. */
function reckonOrWithout(name: string, inputs: Record<string, unknown>, ...droppable: string[]) {
  const done = reckon(name, inputs);
  if (done.ok) return done;
  const fewer = Object.fromEntries(Object.entries(inputs).filter(([key]) => !droppable.includes(key)));
  const again = reckon(name, fewer);
  return again.ok ? again : done;
}

export const failed = (topic: TopicId, sentence: string): Outcome => ({ draft: { topic, headline: ours(sentence), blocks: [] } });

const KEY_UNITS: readonly (readonly [end: string, unit: UnitId, digits: number])[] = [
  ["_kWh_per_kg", "kWh/kg", 2], ["_kWh", "kWh", 0], ["_kg", "kg", 1], ["_pct_wet", "pct", 1], ["_pct_dry", "pct", 1], ["_pct", "pct", 0], ["m3_stacked", "m3", 2], ["m3_loose", "m3", 2],
  ["m3_solid", "m3", 2], ["cords", "cord", 2], ["_Pa", "Pa", 1], ["_W_per_K", "W/K", 0], ["_C", "C", 1], ["_kW", "kW", 1], ["_h", "h", 1],
];

export function resultNumbers(result: Record<string, unknown>): Block | null {
  const range = (result.range ?? {}) as Record<string, [number, number]>;
  const items: NumberItem[] = Object.entries(result).flatMap(([key, value]) => {
    const known = KEY_UNITS.find(([end]) => key.endsWith(end));
    if (typeof value !== "number" || !known || !(known[1] in UNITS)) return [];
    const [low, high] = range[key] ?? [];
    return [{ key, label: text(`number.${key}`), quantity: q(value, known[1], { digits: known[2], ...(low === undefined || high === undefined ? {} : { low, high }) }) }];
  });
  return items.length > 0 ? numbers(...items) : null;
}

export const warningsOf = (result: Record<string, unknown>): Block[] => (Array.isArray(result.warnings) ? result.warnings.map((words) => say(ours(String(words)))) : []);
