/**
 * Seasons reckoned from our climate table (typical years) against published 30-year normals, monthly means in degrees Celsius, from memory:
 * FMI, SMHI, DWD, Met Office and NOAA 1991-2020; Environment Canada 1981-2010; Bureau of Meteorology long-term; NIWA 1981-2010; DMC and SMN
 * 1991-2020. A season must begin between the middle of the last month that is warmer than the heating limit and the middle of the first one that
 * is colder, give or take ten days for the difference between a typical year and a normal; the same for its end.
 */
import { describe, expect, it } from "vitest";
import { nearestPlace } from "../../src/calculators/reference-data.ts";
import { heatingDays } from "../../src/upkeep/season.ts";

const LIMIT_C = 12;
const SLACK_DAYS = 10;
const NORMALS: readonly { place: string; latitude: number; longitude: number; mean_C: readonly number[] }[] = [
  { place: "Helsinki", latitude: 60.3, longitude: 25.0, mean_C: [-3.1, -3.8, -0.7, 4.4, 10.4, 14.9, 18.1, 16.9, 12.3, 6.6, 2.4, -0.7] },
  { place: "Stockholm", latitude: 59.6, longitude: 17.9, mean_C: [-1.0, -0.9, 1.9, 6.4, 11.7, 16.1, 18.7, 17.9, 13.2, 7.7, 3.5, 0.5] },
  { place: "Berlin", latitude: 52.5, longitude: 13.4, mean_C: [1.0, 1.8, 5.0, 9.8, 14.3, 17.6, 19.6, 19.1, 14.8, 9.8, 5.2, 2.2] },
  { place: "London", latitude: 51.2, longitude: -0.2, mean_C: [4.9, 5.0, 7.0, 9.4, 12.5, 15.5, 17.7, 17.5, 14.9, 11.4, 7.7, 5.3] },
  { place: "Boston", latitude: 42.4, longitude: -71.0, mean_C: [-1.2, -0.1, 3.5, 9.2, 14.7, 20.0, 23.4, 22.6, 18.7, 12.7, 7.1, 2.1] },
  { place: "Minneapolis", latitude: 44.9, longitude: -93.2, mean_C: [-8.8, -6.3, 0.7, 8.4, 15.3, 20.9, 23.5, 22.1, 17.5, 9.7, 1.6, -5.6] },
  { place: "Toronto", latitude: 43.7, longitude: -79.6, mean_C: [-5.5, -4.5, 0.1, 7.1, 13.1, 18.6, 21.5, 20.6, 16.2, 9.5, 3.7, -2.2] },
  { place: "Vancouver", latitude: 49.2, longitude: -123.2, mean_C: [4.1, 4.9, 6.9, 9.4, 12.8, 15.7, 18.0, 18.0, 14.9, 10.3, 6.3, 3.6] },
  { place: "Melbourne", latitude: -37.8, longitude: 145.0, mean_C: [20.1, 20.2, 18.6, 15.6, 12.7, 10.5, 9.8, 10.9, 12.6, 14.6, 16.6, 18.6] },
  { place: "Hobart", latitude: -42.9, longitude: 147.3, mean_C: [16.9, 17.0, 15.6, 13.2, 10.8, 8.7, 8.2, 9.2, 10.8, 12.5, 14.1, 15.7] },
  { place: "Christchurch", latitude: -43.5, longitude: 172.5, mean_C: [17.5, 17.2, 15.5, 12.7, 9.8, 7.1, 6.6, 7.9, 10.3, 12.2, 14.1, 16.1] },
  { place: "Dunedin", latitude: -45.9, longitude: 170.5, mean_C: [15.3, 15.0, 13.7, 11.7, 9.3, 7.3, 6.6, 7.7, 9.5, 10.9, 12.4, 13.9] },
  { place: "Santiago", latitude: -33.4, longitude: -70.7, mean_C: [21.5, 20.6, 18.7, 15.0, 11.6, 9.1, 8.5, 9.9, 12.0, 14.9, 17.8, 20.2] },
  { place: "Bariloche", latitude: -41.1, longitude: -71.2, mean_C: [15.0, 14.9, 12.1, 8.2, 5.1, 2.9, 2.2, 3.1, 5.2, 8.0, 10.8, 13.3] },
];
const MIDDLES = [15, 45, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349];

/** A published mean so close to the limit decides nothing: the change may lie in the month before or after. */
const UNSURE_C = 0.5;

/** Middles of the two months between which the published mean passes the limit, downwards for the start, upwards for the end. */
function between(mean_C: readonly number[], down: boolean): [number, number] {
  const side = mean_C.map((mean) => (Math.abs(mean - LIMIT_C) < UNSURE_C ? 0 : mean > LIMIT_C ? 1 : -1));
  const [from, to] = down ? [1, -1] : [-1, 1];
  for (let month = 0; month < 12; month += 1) {
    if (side[month] !== from) continue;
    let next = (month + 1) % 12;
    while (side[next] === 0) next = (next + 1) % 12;
    if (side[next] === to) return [MIDDLES[month] ?? 0, MIDDLES[next] ?? 0];
  }
  throw new Error("the published means never pass the limit");
}
const within = (day: number, [from, to]: readonly [number, number]): boolean => {
  const span = (to - from + 365) % 365;
  return (day - from + SLACK_DAYS + 365) % 365 <= span + 2 * SLACK_DAYS;
};

describe("heating seasons against published climate normals", () => {
  it.each(NORMALS)("$place", ({ latitude, longitude, mean_C }) => {
    const near = nearestPlace(latitude, longitude);
    expect(near.distance_km).toBeLessThan(60);
    const found = heatingDays(near.place.mean_C, LIMIT_C);
    if (!found) throw new Error("no season");
    expect(within(found.start, between(mean_C, true)), `start on day ${found.start}, published ${between(mean_C, true)}`).toBe(true);
    expect(within(found.end, between(mean_C, false)), `end on day ${found.end}, published ${between(mean_C, false)}`).toBe(true);
    // the published normals by the same rule: the two tables agree within the slack of a typical year
    const published = heatingDays(mean_C, LIMIT_C);
    expect(Math.abs(((found.start - (published?.start ?? 0) + 547) % 365) - 182)).toBeLessThanOrEqual(25);
  });
});
