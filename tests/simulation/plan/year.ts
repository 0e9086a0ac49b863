/** A year of one owner in one climate on the true house, and what it cost. */
import { dayShape } from "../../../src/reckoning/heater-room.ts";
import { type Climate, type Day, forecast, random, yearOf } from "./climates.ts";
import { AWAKE, type Believed, type Owner, WANTED } from "./owners.ts";
import { houseAt, light, tick, type Truth } from "./plant.ts";

export interface Outcome {
  readonly wood_kg: number;
  readonly fires: number;
  readonly below_h: number;
  readonly below_Kh: number;
  readonly above_h: number;
  readonly breaches: string[];
}

export interface Trial {
  readonly climate: Climate;
  readonly seed: number;
  readonly believed: Believed;
  readonly truth: Truth;
  /** share of fires that are not lit after all, and are logged as not lit */
  readonly forgotten: number;
  /** hours a bed takes to be black in this heater at most, for the check against bedtime */
  readonly black_h: number;
}

export function trialOf(climate: Climate, seed: number): Trial {
  const { uniform } = random(seed);
  const off = (): number => 0.7 + 0.6 * uniform();
  const coldest = Math.min(...climate.mean_C);
  // a house the heater can just hold on two fires in the coldest month
  const heat_loss_W_per_K = Math.round((0.75 * 32 * 4.2 * 0.8 * 1000) / 24 / (20 - coldest + 6));
  const believed: Believed = {
    heater: { max_load_kg: 16, masonry_kg: 2400, shut_off_damper: true, facing_material: "brick" },
    house: { heat_loss_W_per_K, heat_capacity_kWh_per_K: 9, other_heat_W: 350 },
    bounds: { max_load_kg: 16, min_load_kg: 8, max_day_kg: 32, spacing_h: 10 },
    moisture_pct_wet: 17,
  };
  const truth: Truth = {
    heat_loss_W_per_K: heat_loss_W_per_K * off(),
    capacity_kWh_per_K: [6 * off(), 5 * off()],
    between_W_per_K: 350 * off(),
    gains_W: 350 * off(),
    sun_W: 500 * off(),
    masonry_kWh_per_K: (2400 * 0.9 * 0.25 * off()) / 1000,
    through_W_per_K: 110 * off(),
    face_m2: 6.4 * off(),
    efficiency: 0.8 * (0.9 + 0.2 * uniform()),
    load_error: 0.95 + 0.1 * uniform(),
  };
  return { climate, seed, believed, truth, forgotten: 0.03, black_h: 3 };
}

/** Mornings on which nobody reads the thermometer, and on which no forecast comes: then yesterday's stands. */
const UNREAD = 0.1;
const NO_FORECAST = 0.05;

/** Live from one day of the year to another; the first five days do not count. */
export function live(trial: Trial, owner: Owner, [first, last]: readonly [number, number] = [1, 365]): Outcome {
  const {
    climate,
    seed,
    truth,
    believed: { bounds },
  } = trial;
  const year = yearOf(climate, seed);
  const chance = random(seed + 17);
  const gaps = random(seed + 29);
  const house = houseAt(20, 30);
  const breaches: string[] = [];
  let wood_kg = 0;
  let count = 0;
  let below_h = 0;
  let below_Kh = 0;
  let above_h = 0;
  let logged: { lit_h: number; load_kg: number }[] = [];
  const all: { at_h: number; load_kg: number }[] = [];
  for (let day = first; day < last; day++) {
    const reading_C = house.room_C + 0.3 * chance.normal();
    const fires = owner({
      day,
      room_C: gaps.uniform() < UNREAD ? null : reading_C,
      yesterday: year[day - 1]!,
      forecast: day > 1 && gaps.uniform() < NO_FORECAST ? forecast(year, day - 1, 8, seed).slice(1) : forecast(year, day, 7, seed),
      fires: logged,
    }).sort((a, b) => a.lit_h - b.lit_h);
    logged = fires.filter(() => chance.uniform() > trial.forgotten);
    const misread = logged.map(() => 1 + 0.05 * chance.normal());
    for (const fire of logged) {
      const at_h = day * 24 + fire.lit_h;
      const latest_h = AWAKE.to_h - AWAKE.from_h - trial.black_h * 0.9;
      if (fire.load_kg > bounds.max_load_kg + 1e-9 || fire.load_kg < bounds.min_load_kg - 1e-9)
        breaches.push(`day ${day}: ${fire.load_kg} kg`);
      if (fire.lit_h < 0 || fire.lit_h > latest_h) breaches.push(`day ${day}: lit ${fire.lit_h} h after six`);
      if (all.some((other) => at_h - other.at_h < bounds.spacing_h - 1e-9)) breaches.push(`day ${day}: too soon`);
      all.push({ at_h, load_kg: fire.load_kg });
      const sum = all.reduce((kg, other) => kg + (other.at_h > at_h - 24 ? other.load_kg : 0), 0);
      if (sum > bounds.max_day_kg + 1e-9) breaches.push(`day ${day}: ${sum} kg in 24 h`);
    }
    if (all.length > 8) all.splice(0, all.length - 8);
    for (let i = 0; i < 144; i++) {
      const hour = (6 + i / 6) % 24;
      const today = 6 + i / 6 < 24 ? day : day + 1;
      logged.forEach((fire, j) => {
        if (Math.round(fire.lit_h * 6) === i) {
          light(house, truth, fire.load_kg * misread[j]!);
          wood_kg += fire.load_kg * misread[j]!;
          count++;
        }
      });
      const { low_C, high_C, sun } = year[today] as Day;
      tick(house, truth, low_C + (high_C - low_C) * dayShape(hour), hour > 9 && hour < 16 ? sun : 0);
      if (day >= first + WARM_UP_D && hour >= WANTED.from_h && hour < WANTED.to_h) {
        if (house.room_C < WANTED.min_C) {
          below_h += 1 / 6;
          below_Kh += (WANTED.min_C - house.room_C) / 6;
        } else if (house.room_C > WANTED.max_C) above_h += 1 / 6;
      }
    }
  }
  return { wood_kg, fires: count, below_h, below_Kh, above_h, breaches };
}
const WARM_UP_D = 5;
