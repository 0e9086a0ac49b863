import { table } from "../row.ts";

/** Monthly means, January first: typical weather years, Fairbanks recalled. */
const CLIMATE = {
  Munich: {
    mean_C: [-0.5, -2.6, 2.7, 7.4, 12.4, 14.4, 18.0, 17.3, 13.6, 9.0, 3.6, -0.2],
    rh_pct: [83, 85, 80, 69, 69, 73, 69, 74, 82, 80, 88, 92],
  },
  Salzburg: {
    mean_C: [-0.7, 1.6, 4.0, 8.8, 14.0, 15.9, 19.2, 18.1, 14.3, 9.9, 4.5, 1.0],
    rh_pct: [82, 76, 74, 74, 67, 73, 68, 70, 80, 74, 82, 73],
  },
  Vienna: {
    mean_C: [-0.1, -0.5, 5.3, 10.6, 15.2, 17.3, 20.2, 20.0, 15.5, 10.7, 4.7, -0.2],
    rh_pct: [75, 78, 70, 61, 64, 67, 66, 65, 68, 75, 83, 88],
  },
  Helsinki: {
    mean_C: [-3.9, -5.7, -1.0, 3.7, 9.9, 14.0, 16.7, 15.8, 10.2, 5.9, -1.3, -3.0],
    rh_pct: [88, 86, 84, 74, 62, 70, 68, 79, 82, 84, 87, 87],
  },
  Seattle: {
    mean_C: [4.5, 5.8, 8.3, 10.9, 13.0, 15.6, 17.7, 18.8, 15.1, 11.4, 8.1, 5.4],
    rh_pct: [81, 77, 71, 72, 72, 67, 65, 67, 77, 77, 83, 83],
  },
  London: {
    mean_C: [4.4, 3.9, 6.8, 8.3, 12.5, 15.0, 17.3, 16.7, 13.8, 10.6, 7.8, 5.1],
    rh_pct: [82, 84, 78, 76, 73, 71, 75, 75, 75, 86, 87, 89],
  },
  Christchurch: {
    mean_C: [16.2, 16.5, 14.8, 11.6, 9.1, 5.9, 5.1, 7.5, 9.7, 11.4, 12.4, 15.8],
    rh_pct: [70, 74, 76, 81, 80, 82, 84, 78, 71, 70, 72, 70],
  },
  Hobart: {
    mean_C: [16.8, 15.5, 15.6, 13.3, 10.6, 8.6, 8.3, 9.1, 11.0, 12.5, 13.5, 14.8],
    rh_pct: [62, 66, 69, 68, 77, 80, 75, 70, 67, 63, 65, 69],
  },
  Denver: {
    mean_C: [0.8, -0.1, 6.1, 5.8, 15.5, 23.1, 22.3, 22.6, 19.2, 10.0, 2.9, 1.4],
    rh_pct: [47, 54, 41, 62, 53, 42, 50, 45, 41, 61, 52, 49],
  },
  Fairbanks: {
    mean_C: [-22.2, -19.0, -11.4, 0.2, 9.4, 15.9, 16.9, 13.4, 7.1, -3.9, -16.1, -20.0],
    rh_pct: [68, 66, 60, 52, 47, 55, 64, 71, 69, 76, 74, 71],
  },
} as const;

type Place = keyof typeof CLIMATE;

const split = { species: "beech", split_mm: 100, start_pct_wet: 50, target_pct_wet: 20 } as const;
/** Moisture of the trials' wood so many months after stacking. */
const month = (months: number, place: Place, more: object): Record<string, unknown> => ({ ...split, stacked_on: "2026-03-01", climate: CLIMATE[place], months, ...more });

const BAVARIA = "Bavarian trials (press): split, covered, from spring: below 20 % after 6 months, about 15 % after 9; read as 18.5 within 3.5 and 15 within 4";
const UPPER_AUSTRIA = "Upper Austrian trial: spruce and beech, 33 cm and 1 m, all below 20 % within 28 weeks, spruce clearly faster";
const PALATINATE = "Rhineland-Palatinate forest office: split, airy, roofed, 15 to 20 % of dry mass after one year (13 to 16.7 % wet basis)";
const FRAME = "first-order run in Python on the same monthly means, weeks from 50 to 20 % wet basis; rate 0.016 per day";
const BOARD = "Simpson and Tschernitz red-oak board, saturation pressure by CoolProp 8.0.0";

/** Weeks to the target through the drying course itself: climate, start day of the year, rate. */
const weeks = (place: Place, first_day: number, rate: number): readonly unknown[] => [CLIMATE[place], 100, first_day, rate];
const [APRIL, OCTOBER] = [90, 273];

export const seasoning = [
  ...table({ of: "seasoning@month", source: BAVARIA, kind: "seen" }, [
    [month(6, "Munich", {}), 18.5, { abs: 3.5 }],
    [month(9, "Munich", {}), 15, { abs: 4 }],
    [month(6, "Munich", { species: "spruce" }), 18.5, { abs: 3.5 }],
    [month(9, "Munich", { species: "spruce" }), 15, { abs: 4 }],
  ]),
  ...table({ of: "seasoning@days", source: UPPER_AUSTRIA, kind: "seen" }, [
    [month(0, "Salzburg", {}), 185, { abs: 25 }],
    [month(0, "Salzburg", { species: "spruce" }), 150, { abs: 30 }],
  ]),
  ...table({ of: "seasoning@month", source: PALATINATE, kind: "seen", abs: 1.9 }, [
    [month(12, "Vienna", {}), 14.85],
    [month(12, "London", {}), 14.85, { abs: 3.5 }],
  ]),
  ...table({ of: "seasoning@floor", source: "lowest monthly equilibrium by the Wood Handbook equation, dry basis turned wet, by hand", kind: "computed", abs: 0.06 }, [
    [month(0, "Denver", {}), 7.32],
    [month(0, "Helsinki", {}), 10.39],
    [month(0, "Christchurch", {}), 11.66],
  ]),
  ...table({ of: "seasoning@weeks", source: FRAME, kind: "computed", abs: 0.4 }, [
    [weeks("Munich", APRIL, 0.016), 28.4], [weeks("Munich", OCTOBER, 0.016), 45.1],
    [weeks("Vienna", APRIL, 0.016), 21.1], [weeks("Vienna", OCTOBER, 0.016), 40.7],
    [weeks("Helsinki", APRIL, 0.022), 22.0], [weeks("Helsinki", OCTOBER, 0.022), 44.1],
    [weeks("Seattle", APRIL, 0.016), 23.9], [weeks("London", OCTOBER, 0.016), 39.7],
    [weeks("Christchurch", OCTOBER, 0.016), 26.3], [weeks("Hobart", OCTOBER, 0.016), 24.1],
    [weeks("Denver", APRIL, 0.012), 22.3], [weeks("Hobart", APRIL, 0.04), 14.0],
  ]),
  ...table({ of: "drying.ts#boardDrying_d", source: BOARD, kind: "library", rel: 0.01 }, [
    [[1, 17.54, 80, 25, 12], 20.1],
    [[2, 17.54, 80, 25, 12], 57.6],
    [[3, 12.8, 80, 25, 13], 120.7],
  ]),
  ...table({ of: "drying.ts#stackRate_per_d", source: "board exponent 1.5 (1.52 for red oak boards) by hand", kind: "computed", rel: 0.001 }, [
    [[0.016, { split_mm: 50, seasoning_class: 2, bark: true }], 0.04525],
    [[0.016, { split_mm: 100, seasoning_class: 4, bark: true }], 0.0096],
    [[0.016, { split_mm: 200, seasoning_class: 2, bark: true }], 0.005657],
  ]),
];
