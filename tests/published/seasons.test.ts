/**
 * Seasons reckoned from our climate table against published climate normals. Where no mean is published, the mean of mean daily maximum and
 * minimum stands for it: the year's is 0.3 K above the mean of 24 hours at Oslo, where both are known.
 *
 * How far off a season may be: a row of the table is a typical year, every month of it a month that was. From year to year, the means of
 * April, May, September and October have a standard deviation of 0.7 to 2.0 K at the Canadian stations below (published with their
 * normals), 1.34 K on average; a day between two such months has 1.34 / sqrt 2 = 0.95 K. So on the day a season of ours begins or ends, the
 * published mean is within 2 K of the limit (2.1 standard deviations), and all of them together are nearer on average than months drawn
 * by lot would be (0.8 standard deviations, 0.76 K). Nothing is added for the distance of the stations, nor for the periods: Stockholm has
 * warmed from 1961-1990 to 1991-2018 by 1.3 K in spring and 0.7 K in autumn (the city's environment office, from SMHI's record).
 */
import { describe, expect, it } from "vitest";
import { nearestPlace } from "../../src/calculators/reference-data.ts";
import { heatingDays } from "../../src/upkeep/season.ts";

const LIMIT_C = 12;
const SLACK_K = 2;
const BY_LOT_K = 0.76;
const FARTHEST_KM = 60;

interface Normal {
  readonly place: string;
  /** authority, years, station */
  readonly from: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly mean_C: readonly number[];
}
const meanOf = (min_C: readonly number[], max_C: readonly number[]): number[] =>
  min_C.map((min, month) => (min + (max_C[month] ?? Number.NaN)) / 2);

/**
 * Looked up in stored copies of public pages on 2026-11-25; a page of somebody else's that relays the authority's figures is said to do so.
 * Latitudes and longitudes are ours, good to a few kilometres.
 */
const LOOKED_UP: readonly Normal[] = [
  {
    place: "Toronto",
    from: "Environment Canada, 1971-2000, Toronto",
    latitude: 43.67,
    longitude: -79.4,
    mean_C: [-4.2, -3.2, 1.3, 7.6, 14.2, 19.2, 22.2, 21.3, 17.0, 10.6, 4.8, -0.9],
  },
  {
    place: "Montreal",
    from: "Environment Canada, 1971-2000, Montreal Trudeau airport",
    latitude: 45.47,
    longitude: -73.75,
    mean_C: [-10.2, -8.4, -2.3, 5.7, 13.4, 18.2, 20.9, 19.6, 14.6, 8.1, 1.6, -6.3],
  },
  {
    place: "Vancouver",
    from: "Environment Canada, 1971-2000, Vancouver airport",
    latitude: 49.2,
    longitude: -123.18,
    mean_C: [3.3, 4.8, 6.6, 9.2, 12.5, 15.2, 17.5, 17.6, 14.6, 10.1, 6.0, 3.5],
  },
  {
    place: "Calgary",
    from: "Environment Canada, 1971-2000, Calgary airport",
    latitude: 51.11,
    longitude: -114.02,
    mean_C: [-8.9, -6.1, -1.9, 4.6, 9.8, 13.8, 16.2, 15.6, 10.8, 5.4, -3.1, -7.4],
  },
  {
    place: "Port Angeles",
    from: "Environment Canada, 1971-2000, Victoria Gonzales Heights, across the strait",
    latitude: 48.41,
    longitude: -123.32,
    mean_C: [5.0, 6.2, 7.6, 9.6, 12.1, 14.0, 15.6, 15.9, 14.6, 10.9, 7.2, 5.2],
  },
  {
    place: "Seattle",
    from: "NOAA, 1981-2010, Seattle-Tacoma airport",
    // monthly means of the hourly normals, as a public package of sample data holds them
    latitude: 47.45,
    longitude: -122.31,
    mean_C: [5.4, 6.1, 7.7, 9.8, 12.9, 15.6, 18.3, 18.4, 15.7, 11.2, 7.3, 4.7],
  },
  {
    place: "Oslo",
    from: "Norwegian Meteorological Institute, 1961-1990, Oslo-Blindern",
    // relayed by a guide to the city; the least and greatest of each season are those its tourist office has from Statistics Norway
    latitude: 59.94,
    longitude: 10.72,
    mean_C: [-4.3, -4.0, -0.2, 4.5, 10.8, 15.2, 16.4, 15.2, 10.8, 6.3, 0.7, -3.1],
  },
  {
    place: "Stockholm",
    from: "SMHI, 1961-1990, Stockholm",
    // relayed by a guide to the city; the seasons lie 0.0 to 0.4 K above the 24-hour means of 1961-1990 the city has from SMHI
    latitude: 59.34,
    longitude: 18.06,
    mean_C: meanOf(
      [-5.0, -5.3, -2.7, 1.1, 6.3, 11.3, 13.4, 12.7, 9.0, 5.3, 0.7, -3.2],
      [-0.7, -0.6, 3.0, 8.6, 15.7, 20.7, 21.9, 20.4, 15.1, 9.9, 4.5, 1.1],
    ),
  },
  {
    place: "Vienna",
    from: "ZAMG by the World Meteorological Organization's city pages, 1971-2000, Vienna",
    // relayed by a guide for travellers
    latitude: 48.25,
    longitude: 16.36,
    mean_C: meanOf(
      [-2.0, -0.9, 2.4, 5.8, 10.5, 13.5, 15.4, 15.3, 11.7, 7.0, 2.4, -0.5],
      [2.9, 5.1, 10.3, 15.2, 20.5, 23.4, 25.6, 25.4, 20.3, 14.2, 7.5, 4.0],
    ),
  },
  {
    place: "London",
    from: "Met Office, 1991-2020, Heathrow (WMO 03772)",
    // relayed by a page of the world's stations; the years by the maxima of June and July, which another page gives for 1991-2020
    latitude: 51.48,
    longitude: -0.45,
    mean_C: meanOf(
      [2.7, 2.6, 4.1, 6.0, 9.1, 12.0, 14.2, 14.1, 11.6, 8.8, 5.3, 3.1],
      [8.4, 9.0, 11.7, 15.0, 18.4, 21.6, 23.9, 23.4, 20.2, 15.8, 11.5, 8.8],
    ),
  },
  {
    place: "Melbourne",
    from: "Bureau of Meteorology, all years of record, Melbourne Regional Office (086071)",
    // relayed by a weather service for farmers
    latitude: -37.81,
    longitude: 144.97,
    mean_C: meanOf(
      [14.3, 14.6, 13.3, 10.8, 8.7, 6.9, 6.0, 6.7, 8.0, 9.6, 11.2, 13.0],
      [25.9, 25.8, 23.9, 20.3, 16.7, 14.1, 13.5, 15.0, 17.3, 19.7, 22.0, 24.2],
    ),
  },
  {
    place: "Canberra",
    from: "Bureau of Meteorology, all years since 1939, Canberra airport",
    // relayed by a guide to the city, with the 108 days of rain the Bureau's own page on the area has
    latitude: -35.3,
    longitude: 149.2,
    mean_C: meanOf(
      [13.0, 12.9, 10.7, 6.6, 3.2, 0.9, -0.2, 0.9, 3.1, 6.0, 8.6, 11.2],
      [27.7, 27.0, 24.4, 19.8, 15.3, 12.1, 11.2, 12.9, 16.0, 19.2, 22.4, 26.0],
    ),
  },
  {
    place: "Hobart",
    from: "Bureau of Meteorology, all years since 1882, Hobart",
    // relayed by a guide to the city; December and January are within 0.2 K of what a newspaper's weather page has for 1882-2017
    latitude: -42.89,
    longitude: 147.33,
    mean_C: meanOf(
      [11.8, 12.0, 10.8, 8.9, 6.9, 5.2, 4.5, 5.2, 6.4, 7.7, 9.2, 10.8],
      [21.6, 21.6, 20.1, 17.3, 14.4, 11.9, 11.6, 13.0, 15.0, 16.9, 18.6, 20.3],
    ),
  },
  {
    place: "Ballarat",
    from: "Bureau of Meteorology, all years of record, Ballarat",
    // relayed by the city's visitors' office; January and July are within 0.3 K of what a gardeners' page has from the Bureau
    latitude: -37.51,
    longitude: 143.79,
    mean_C: meanOf(
      [11.0, 11.5, 10.0, 7.5, 5.7, 4.0, 3.2, 3.7, 4.8, 6.2, 7.8, 9.5],
      [25.2, 25.1, 22.3, 17.7, 13.7, 10.8, 10.1, 11.4, 13.9, 16.7, 19.7, 22.7],
    ),
  },
  {
    place: "Wellington",
    from: "the World Meteorological Organization's city pages, years not said, Wellington",
    // relayed by a handbook of countries
    latitude: -41.29,
    longitude: 174.77,
    mean_C: meanOf(
      [14.4, 14.3, 13.5, 11.3, 9.1, 7.3, 6.4, 6.9, 8.3, 9.7, 11.3, 13.2],
      [21.3, 21.1, 19.8, 17.3, 14.8, 12.8, 12.0, 12.7, 14.2, 15.9, 17.8, 19.6],
    ),
  },
];

const memory = (place: string, from: string, latitude: number, longitude: number, mean_C: readonly number[]): Normal => ({
  place,
  from: `from memory: ${from}`,
  latitude,
  longitude,
  mean_C,
});
/** Not looked up, so they prove less. Only places of which our table has a typical year: memory is no check of memory. */
const FROM_MEMORY: readonly Normal[] = [
  memory("Helsinki", "FMI, 1991-2020", 60.3, 25.0, [-3.1, -3.8, -0.7, 4.4, 10.4, 14.9, 18.1, 16.9, 12.3, 6.6, 2.4, -0.7]),
  memory("Berlin", "DWD, 1991-2020", 52.5, 13.4, [1.0, 1.8, 5.0, 9.8, 14.3, 17.6, 19.6, 19.1, 14.8, 9.8, 5.2, 2.2]),
  memory("Boston", "NOAA, 1991-2020", 42.4, -71.0, [-1.2, -0.1, 3.5, 9.2, 14.7, 20.0, 23.4, 22.6, 18.7, 12.7, 7.1, 2.1]),
  memory("Minneapolis", "NOAA, 1991-2020", 44.9, -93.2, [-8.8, -6.3, 0.7, 8.4, 15.3, 20.9, 23.5, 22.1, 17.5, 9.7, 1.6, -5.6]),
  memory("Christchurch", "NIWA, 1981-2010", -43.5, 172.5, [17.5, 17.2, 15.5, 12.7, 9.8, 7.1, 6.6, 7.9, 10.3, 12.2, 14.1, 16.1]),
  memory("Dunedin", "NIWA, 1981-2010", -45.9, 170.5, [15.3, 15.0, 13.7, 11.7, 9.3, 7.3, 6.6, 7.7, 9.5, 10.9, 12.4, 13.9]),
];

const MIDDLES = [15, 45, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349];

/** A published mean so close to the limit decides nothing: the change may lie in the month before or after. */
const UNSURE_C = 0.5;
/** Ten days of spring or autumn are 0.5 to 2.5 K at these places. */
const SLACK_DAYS = 10;

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

/** Below this people heat there: no lower than 2.5 K above the coldest month, no higher than 1.5 K below the warmest. */
const heatedBelow_C = (mean_C: readonly number[]): number =>
  Math.min(Math.max(LIMIT_C, Math.min(...mean_C) + 2.5), Math.max(...mean_C) - 1.5);

/** The published mean of a day of the year, straight between the middles of the months. */
function meanOn(day: number, mean_C: readonly number[]): number {
  const month = MIDDLES.findLastIndex((middle) => middle <= day);
  const [from, to] = [(month + 12) % 12, (month + 1) % 12];
  const days = (later: number, earlier: number): number => (later - earlier + 365) % 365;
  const share = days(day, MIDDLES[from] ?? 0) / days(MIDDLES[to] ?? 0, MIDDLES[from] ?? 0);
  return (mean_C[from] ?? 0) * (1 - share) + (mean_C[to] ?? 0) * share;
}

function seasonOf({ latitude, longitude }: Normal): { start: number; end: number } {
  const near = nearestPlace(latitude, longitude);
  expect(near.distance_km).toBeLessThan(FARTHEST_KM);
  const found = heatingDays(near.place.mean_C, LIMIT_C);
  if (!found) throw new Error("no season");
  return found;
}

/** How much warmer than the limit the published mean is on the days on which our season begins and ends. */
const offBy_K = (normal: Normal): [number, number] => {
  const { start, end } = seasonOf(normal);
  const limit = heatedBelow_C(normal.mean_C);
  return [meanOn(start, normal.mean_C) - limit, meanOn(end, normal.mean_C) - limit];
};

describe("heating seasons against published climate normals", () => {
  it.each([...LOOKED_UP, ...FROM_MEMORY])("$place ($from)", (normal) => {
    const { start, end } = seasonOf(normal);
    const [first, last] = [between(normal.mean_C, true), between(normal.mean_C, false)];
    expect(within(start, first), `start on day ${start}, published ${first}`).toBe(true);
    expect(within(end, last), `end on day ${end}, published ${last}`).toBe(true);
    for (const off_K of offBy_K(normal)) expect(Math.abs(off_K)).toBeLessThan(SLACK_K);
  });

  it("those looked up are in both hemispheres, and on average nearer than months drawn by lot", () => {
    expect(LOOKED_UP.length).toBeGreaterThanOrEqual(12);
    expect(LOOKED_UP.filter(({ latitude }) => latitude < 0).length).toBeGreaterThanOrEqual(4);
    const off_K = LOOKED_UP.flatMap(offBy_K);
    const average = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;
    expect(average(off_K.map(Math.abs))).toBeLessThan(BY_LOT_K);
    expect(Math.abs(average(off_K))).toBeLessThan(BY_LOT_K / 2);
  });
});
