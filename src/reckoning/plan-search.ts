/** The search behind a fire plan: beam over days, then one fire at a time, on responses that add up. */
import type { Bounds, PlannedFire } from "./fire-plan.ts";

export interface Search {
  /** wanted least and most per hour; infinite where nothing is wanted */
  readonly least_C: Float64Array;
  readonly most_C: Float64Array;
  /** rise of the room by hours after lighting the smallest and the largest load */
  readonly responses: readonly Float64Array[];
  readonly loads_kg: readonly number[];
  /** responses of the loads met so far */
  readonly known: Map<number, Float64Array>;
  readonly bounds: Bounds;
  readonly past: readonly PlannedFire[];
  readonly mayLight: (at_h: number) => boolean;
  readonly step_kg: number;
  /** hours after the start at which the first new day begins; days are counted from waking */
  readonly firstDay_h: number;
  readonly hours: number;
  /** from here on wood counts less: it is planned only so that the hours before do not live on credit */
  readonly kept_h: number;
}

export interface Found {
  readonly fires: readonly PlannedFire[];
  readonly room_C: Float64Array;
  readonly cost: number;
}

/**
 * What a kelvin-hour below and above is worth in kg of wood: far more than any fire saves, and less. Judgement: comfort is
 * asked for first.
 */
const BELOW_KG_PER_KH = 6;
const ABOVE_KG_PER_KH = 1;
/** An hour below at all, however little. */
const BELOW_KG_PER_H = 0.6;
/** What wood still to come out counts for, when days are compared on the way and at the end. Judgement. */
const RANK_CREDIT = 0.8;
const END_CREDIT = 0.3;
/** What a kilogram after the days asked for counts. Judgement. */
const LATER_WOOD = 0.7;
const FORGOTTEN_H = 72;
const BEAM = 24;
const LEVELS = 5;

interface Node {
  readonly fires: readonly PlannedFire[];
  readonly room_C: Float64Array;
  /** wood and discomfort up to the end of the days decided */
  readonly paid: number;
  readonly rank: number;
}

export function searchPlan(search: Search, base_C: Float64Array): Found {
  const ends = [search.firstDay_h];
  while (ends.at(-1)! < search.hours) ends.push(Math.min(ends.at(-1)! + 24, search.hours));
  let beam: Node[] = [{ fires: [], room_C: base_C, paid: 0, rank: 0 }];
  ends.forEach((end_h, day) => {
    const from_h = day === 0 ? 0 : ends[day - 1]!;
    const choices = dayChoices(search, from_h, end_h);
    const grown: { node: Node; added: readonly PlannedFire[]; paid: number; rank: number }[] = [];
    for (const node of beam) {
      const held = credit(search, node.fires, end_h);
      for (const added of choices) {
        if (!allowed(search, node.fires, added)) continue;
        let paid = node.paid + discomfort(search, node.room_C, added, from_h, end_h);
        for (const fire of added) paid += wood(search, fire);
        grown.push({ node, added, paid, rank: paid - RANK_CREDIT * (held + credit(search, added, end_h)) });
      }
    }
    grown.sort((a, b) => a.rank - b.rank);
    beam = grown.slice(0, BEAM).map(({ node, added, paid, rank }) => ({
      fires: [...node.fires, ...added],
      room_C: added.reduce((room, fire) => plus(search, room, fire, 1), node.room_C),
      paid,
      rank,
    }));
  });
  return refined(search, base_C, beam[0]!.fires);
}

/** Improve known fires on a base that was set right since they were found. */
export function refined(search: Search, base_C: Float64Array, fires: readonly PlannedFire[]): Found {
  const room_C = fires.reduce((room, fire) => plus(search, room, fire, 1), base_C);
  return polished(search, { fires, room_C, cost: costOf(search, fires, room_C) });
}

/** Nothing, one fire at any hour and size, or two that keep their distance. */
function dayChoices(search: Search, from_h: number, end_h: number): PlannedFire[][] {
  const {
    bounds: { min_load_kg, max_load_kg, spacing_h },
    mayLight,
  } = search;
  const hours: number[] = [];
  for (let at_h = Math.ceil(from_h); at_h < end_h; at_h++) if (mayLight(at_h)) hours.push(at_h);
  const level = (i: number, of: number): number => onStep(search, min_load_kg + ((max_load_kg - min_load_kg) * i) / (of - 1));
  const one = hours.flatMap((lit_h) => Array.from({ length: LEVELS }, (_, i) => [{ lit_h, load_kg: level(i, LEVELS) }]));
  const two = hours.flatMap((first_h, i) =>
    hours
      .slice(i + 1)
      .filter((second_h) => second_h - first_h >= spacing_h)
      .flatMap((second_h) =>
        [0, 1, 2].flatMap((a) =>
          [0, 1, 2].map((b) => [
            { lit_h: first_h, load_kg: level(a, 3) },
            { lit_h: second_h, load_kg: level(b, 3) },
          ]),
        ),
      ),
  );
  return [[], ...one, ...two];
}

/** The load on the step, never outside the bounds. */
export function onStep({ step_kg, bounds: { min_load_kg, max_load_kg } }: Pick<Search, "step_kg" | "bounds">, load_kg: number): number {
  const stepped = Math.round(load_kg / step_kg) * step_kg;
  return Math.min(max_load_kg, Math.max(min_load_kg, stepped));
}

function allowed(search: Search, fires: readonly PlannedFire[], added: readonly PlannedFire[]): boolean {
  const {
    bounds: { spacing_h, max_day_kg },
  } = search;
  for (const fire of added) {
    let day_kg = 0;
    for (const others of [search.past, fires, added]) {
      for (const other of others) {
        if (other !== fire && Math.abs(other.lit_h - fire.lit_h) < spacing_h) return false;
        if (other.lit_h > fire.lit_h - 24 && other.lit_h <= fire.lit_h) day_kg += other.load_kg;
      }
    }
    if (day_kg > max_day_kg + 1e-9) return false;
  }
  return true;
}

/** Rise of the room after lighting: between the responses of the smallest and the largest load, kept per load. */
function rises_K(search: Search, load_kg: number): Float64Array {
  let rises = search.known.get(load_kg);
  if (!rises) {
    const [small, large] = search.responses as [Float64Array, Float64Array];
    const [small_kg, large_kg] = search.loads_kg as [number, number];
    const share = large_kg > small_kg ? (load_kg - small_kg) / (large_kg - small_kg) : 1;
    rises = small.map((value, i) => value + share * (large[i]! - value));
    search.known.set(load_kg, rises);
  }
  return rises;
}

function plus(search: Search, room_C: Float64Array, fire: PlannedFire, sign: number): Float64Array {
  const sum = Float64Array.from(room_C);
  const rises = rises_K(search, fire.load_kg);
  for (let i = fire.lit_h; i < sum.length; i++) sum[i] = sum[i]! + sign * rises[i - fire.lit_h]!;
  return sum;
}

const wood = (search: Search, fire: PlannedFire): number => fire.load_kg * (fire.lit_h < search.kept_h ? 1 : LATER_WOOD);

/** Kilograms worth of cold and heat between two hours, with up to two more fires. */
function discomfort(search: Search, room_C: Float64Array, added: readonly PlannedFire[], from_h: number, end_h: number): number {
  const { least_C, most_C } = search;
  const first = added[0];
  const second = added[1];
  const firstRises = first && rises_K(search, first.load_kg);
  const secondRises = second && rises_K(search, second.load_kg);
  let cost = 0;
  for (let i = from_h; i < end_h; i++) {
    const least = least_C[i]!;
    if (least === -Infinity) continue;
    let room = room_C[i]!;
    if (firstRises && i > first.lit_h) room += firstRises[i - first.lit_h]!;
    if (secondRises && i > second.lit_h) room += secondRises[i - second.lit_h]!;
    if (room < least) cost += BELOW_KG_PER_KH * (least - room) + BELOW_KG_PER_H;
    else if (room > most_C[i]!) cost += ABOVE_KG_PER_KH * (room - most_C[i]!);
  }
  return cost;
}

/** Wood whose heat has not yet come out, so that a late fire is not held against a plan. */
function credit(search: Search, fires: readonly PlannedFire[], end_h: number): number {
  const [, large] = search.responses as [Float64Array, Float64Array];
  let sum = 0;
  for (const fire of fires) {
    const age_h = Math.min(large.length - 1, end_h - fire.lit_h);
    if (age_h < FORGOTTEN_H) sum += fire.load_kg * restShare(large, age_h);
  }
  return sum;
}

const rests = new WeakMap<Float64Array, Float64Array>();
function restShare(response: Float64Array, age_h: number): number {
  let rest = rests.get(response);
  if (!rest) {
    rest = new Float64Array(response.length + 1);
    for (let i = response.length - 1; i >= 0; i--) rest[i] = rest[i + 1]! + response[i]!;
    rests.set(response, rest);
  }
  return rest[age_h]! / rest[0]!;
}

/** Kilograms and what discomfort is worth in kilograms, under a course of the room by hours. */
export const costOf = (search: Search, fires: readonly PlannedFire[], room_C: Float64Array): number =>
  fires.reduce((sum, fire) => sum + wood(search, fire), 0) +
  discomfort(search, room_C, [], 0, search.hours) -
  END_CREDIT * credit(search, fires, search.hours);

/** One fire at a time: a little less or more wood, a little earlier or later, or none, while anything gets better. */
function polished(search: Search, start: Found): Found {
  let best = start;
  for (let round = 0, better = true; better && round < ROUNDS; round++) {
    better = false;
    for (let i = 0; i < best.fires.length; i++) {
      const fire = best.fires[i]!;
      const rest = best.fires.filter((_, j) => j !== i);
      const without = plus(search, best.room_C, fire, -1);
      for (const move of [undefined, ...moves(search, fire)]) {
        const fires = move ? [...rest, move].sort((a, b) => a.lit_h - b.lit_h) : rest;
        if (
          move &&
          !fires.every((one) =>
            allowed(
              search,
              fires.filter((other) => other !== one),
              [one],
            ),
          )
        )
          continue;
        const room_C = move ? plus(search, without, move, 1) : without;
        const cost = costOf(search, fires, room_C);
        if (cost >= best.cost - 1e-6) continue;
        best = { fires, room_C, cost };
        better = true;
      }
    }
  }
  return best;
}
const ROUNDS = 6;

const moves = (search: Search, fire: PlannedFire): PlannedFire[] => [
  ...[-4, -1, 1, 4].map((steps) => ({ lit_h: fire.lit_h, load_kg: onStep(search, fire.load_kg + steps * search.step_kg) })),
  ...[-2, -1, 1, 2]
    .map((hours) => ({ lit_h: fire.lit_h + hours, load_kg: fire.load_kg }))
    .filter((move) => move.lit_h >= 0 && move.lit_h < search.hours && search.mayLight(move.lit_h)),
];
