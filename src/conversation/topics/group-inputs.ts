/** What a reckoning rests on, as far as others may see it: figures of heater, house, wood and weather, never a name, a place or a day. */
import { text, verbatim, type Text } from "../../answer.ts";
import { findWood } from "../../calculators/reference-data.ts";
import { limits } from "../../limits.ts";
import { q, type UnitId } from "../../quantities.ts";
import type { TopicId } from "../../topics.ts";
import type { Context } from "../context.ts";
import type { Hearing } from "../hear.ts";
import { dateAt } from "./around.ts";

/** The figures of a question that can be asked again by somebody else. */
export type Said = Pick<Hearing, "figures" | "species" | "load_kg" | "load">;
export interface Asking {
  readonly context: Context;
  readonly heard: Hearing;
}

export interface Input {
  readonly key: InputKey;
  readonly value: number | string;
}

interface Kind {
  readonly unit: UnitId | null;
  read(asking: Asking): number | string | undefined;
  /** the same question with this one value another's */
  swap(asking: Asking, value: never): Asking;
}

const withHeater = ({ context, heard }: Asking, facts: object): Asking => {
  const { heater } = context;
  if (!heater) return { context, heard };
  const changed = { ...heater, facts: { ...heater.facts, ...facts } };
  const heaters = [changed, ...context.snapshot.heaters.slice(1)];
  return { context: { ...context, heater: changed, limits: limits(changed.facts, context.rules), snapshot: { ...context.snapshot, heaters } }, heard };
};
const withHome = ({ context, heard }: Asking, home: object): Asking => ({
  context: { ...context, snapshot: { ...context.snapshot, home: { ...context.snapshot.home, ...home } } }, heard,
});
const withHouse = (asking: Asking, house: object): Asking => withHome(asking, { house: { ...asking.context.snapshot.home.house, ...house } });
const withWood = (asking: Asking, facts: object): Asking => {
  const [first = {}, ...others] = asking.context.snapshot.home.wood;
  return withHome(asking, { wood: [{ ...first, ...facts }, ...others] });
};
const withLoad = ({ context, heard }: Asking, load: object): Asking => ({ context, heard: { ...heard, load: { ...heard.load, ...load } } });
const today = ({ context }: Asking) => context.snapshot.home.weather.find((day) => day.date === dateAt(context, context.now_ms)) ?? context.snapshot.home.weather[0];

const house = (key: "wanted_C" | "heat_loss_W_per_K" | "other_heat_W", unit: UnitId): Kind => ({
  unit, read: ({ context }) => context.snapshot.home.house[key], swap: (asking, value) => withHouse(asking, { [key]: value }),
});
const heater = (key: "masonry_kg" | "wall_mm" | "facing_m2" | "flue_height_m", unit: UnitId): Kind => ({
  unit, read: ({ context }) => context.heater?.facts[key], swap: (asking, value) => withHeater(asking, { [key]: value }),
});

const KINDS = {
  load_kg: { unit: "kg", read: ({ heard }) => heard.load_kg, swap: ({ context, heard }, value: number) => ({ context, heard: { ...heard, load_kg: value } }) },
  outside_low_C: { unit: "C", read: (asking) => asking.heard.load.low_C ?? today(asking)?.low_C, swap: (asking, value: number) => withLoad(asking, { low_C: value }) },
  outside_high_C: { unit: "C", read: (asking) => asking.heard.load.high_C ?? (asking.heard.load.low_C === undefined ? today(asking)?.high_C : undefined), swap: (asking, value: number) => withLoad(asking, { high_C: value }) },
  wanted_C: house("wanted_C", "C"),
  heat_loss_W_per_K: house("heat_loss_W_per_K", "W/K"),
  other_heat_W: house("other_heat_W", "W"),
  moisture_pct_wet: {
    unit: "pct",
    read: ({ context, heard }) => heard.load.moisture_pct_wet ?? context.snapshot.home.wood.find((one) => one.moisture_pct_wet !== undefined)?.moisture_pct_wet,
    swap: (asking, value: number) => withWood(withLoad(asking, { moisture_pct_wet: value }), { moisture_pct_wet: value }),
  },
  species: { unit: null, read: ({ context, heard }) => known(heard.species ?? context.snapshot.home.wood[0]?.species), swap: ({ context, heard }, value: string) => ({ context, heard: { ...heard, species: value, load: { ...heard.load, species: value } } }) },
  max_load_kg: { unit: "kg", read: ({ context }) => context.limits.max_load_kg ?? undefined, swap: (asking, value: number) => withHeater(asking, { max_load_kg: value, max_load_source: "sheet" }) },
  masonry_kg: heater("masonry_kg", "kg"),
  wall_mm: heater("wall_mm", "mm"),
  facing_m2: heater("facing_m2", "m2"),
  flue_height_m: heater("flue_height_m", "m"),
  volume_m3_stacked: {
    unit: "m3",
    read: ({ context }) => context.snapshot.home.wood.reduce((sum, one) => sum + (one.volume_m3_stacked ?? 0), 0) || undefined,
    swap: (asking, value: number) => withHome(asking, { wood: [{ ...asking.context.snapshot.home.wood[0], volume_m3_stacked: value }] }),
  },
} as const satisfies Record<string, Kind>;

export type InputKey = keyof typeof KINDS;
const kindOf = (key: InputKey): Kind => KINDS[key] as Kind;

/** A tree Gleed knows by that name; what somebody wrote in its place may be anything. */
function known(species: string | undefined): string | undefined {
  if (species === undefined) return undefined;
  try {
    findWood(species);
    return species;
  } catch {
    return undefined;
  }
}

const WARMTH: readonly InputKey[] = ["outside_low_C", "outside_high_C", "wanted_C", "heat_loss_W_per_K", "other_heat_W", "moisture_pct_wet", "max_load_kg"];
/** What can be shared, and what each rests on. */
const OF: Partial<Record<TopicId, readonly InputKey[]>> = {
  "load-size": WARMTH,
  "fire-plan": [...WARMTH, "masonry_kg"],
  "heat-curve": ["load_kg", "moisture_pct_wet", "outside_low_C", "outside_high_C", "masonry_kg", "wall_mm", "facing_m2", "heat_loss_W_per_K", "max_load_kg"],
  "wood-stock": ["volume_m3_stacked", "species", "moisture_pct_wet", "heat_loss_W_per_K"],
  "fuel-energy": ["load_kg", "moisture_pct_wet", "species"],
  "wood-volume": ["species", "moisture_pct_wet"],
  seasoning: ["species", "moisture_pct_wet"],
  draught: ["flue_height_m", "outside_low_C"],
  "wood-dryness": ["moisture_pct_wet", "species"],
  "meter-reading": ["moisture_pct_wet", "species"],
};

export const canBeShared = (topic: TopicId): boolean => topic in OF;
export const keysOf = (topic: TopicId): readonly InputKey[] => OF[topic] ?? [];

export const inputsOf = (topic: TopicId, asking: Asking): Input[] =>
  keysOf(topic).flatMap((key) => {
    const value = kindOf(key).read(asking);
    return value === undefined ? [] : [{ key, value }];
  });

export const swapped = (asking: Asking, { key, value }: Input): Asking => kindOf(key).swap(asking, value as never);

export const inputLabel = (key: InputKey): Text => text(`input.${key}`);
export function inputValue({ key, value }: Input): Text {
  const { unit } = kindOf(key);
  return unit === null || typeof value === "string" ? verbatim(String(value)) : text("plain", { value: q(value, unit, unit === "kg" ? { digits: key === "masonry_kg" ? 0 : 1 } : unit === "mm" ? { digits: 0 } : {}) });
}
