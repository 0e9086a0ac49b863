import { table } from "../row.ts";

export const airMoisture = [
  ...table({ of: "air-moisture", source: "forum adviser's rule at room temperature: 30, 50, 65, 80, 99 % air is 6, 9, 12, 16, 28 %", kind: "seen", abs: 0.4 }, [
    [{ air_C: 20, rh_pct: 30 }, { emc_pct_dry: 6 }],
    [{ air_C: 20, rh_pct: 50 }, { emc_pct_dry: 9 }],
    [{ air_C: 20, rh_pct: 65 }, { emc_pct_dry: 12 }],
    [{ air_C: 20, rh_pct: 80 }, { emc_pct_dry: 16 }],
    [{ air_C: 20, rh_pct: 99 }, { emc_pct_dry: 28 }],
  ]),
  ...table({ of: "air-moisture", source: "encyclopaedia entry: 140 °F and 55 % is 8.4 % in the newer Wood Handbook", kind: "seen", abs: 0.06 }, [
    [{ air_C: 60, rh_pct: 55 }, { emc_pct_dry: 8.4 }],
  ]),
  ...table({ of: "air-moisture", source: "OSU EM 8612: wood under cover outdoors ends at 12 to 14 % in western Oregon; its summer and September means", kind: "seen", abs: 1.2 }, [
    [{ air_C: 19.9, rh_pct: 65 }, { emc_pct_dry: 13 }],
    [{ air_C: 17.3, rh_pct: 73 }, { emc_pct_dry: 13 }],
  ]),
  ...table({ of: "air-moisture", source: "Wood Handbook eq. 4-6 (Glass 2014), another model fitted to the same data, worked in Python", kind: "computed", abs: 0.65 }, [
    [{ air_C: 20, rh_pct: 30 }, { emc_pct_dry: 6.094 }],
    [{ air_C: 20, rh_pct: 50 }, { emc_pct_dry: 9.471 }],
    [{ air_C: 20, rh_pct: 65 }, { emc_pct_dry: 12.476 }],
    [{ air_C: 20, rh_pct: 80 }, { emc_pct_dry: 16.567 }],
    [{ air_C: 30, rh_pct: 50 }, { emc_pct_dry: 8.933 }],
    [{ air_C: 30, rh_pct: 80 }, { emc_pct_dry: 15.753 }],
  ]),
  ...table({ of: "air-moisture", source: "basis by hand: 16 % dry basis is 13.8 % wet basis", kind: "computed", abs: 0.05 }, [
    [{ air_C: 20, rh_pct: 80 }, { emc_pct_wet: 13.8 }],
  ]),
  ...table({ of: "air-moisture", source: "the same rule read backwards, 12 and 16 % dry basis as wet basis", kind: "computed", abs: 1.5 }, [
    [{ air_C: 20, target_pct_wet: 10.71 }, { rh_pct: 65 }],
    [{ air_C: 20, target_pct_wet: 13.79 }, { rh_pct: 80 }],
    [{ air_C: 20, target_pct_wet: 30 }, { rh_pct: 100 }],
  ]),
  ...table({ of: "air-moisture", source: "PsychroLib 2.5.0 (dew point), cross-checked with CoolProp 8.0.0", kind: "library", abs: 0.02 }, [
    [{ air_C: 20, rh_pct: 50 }, { dew_point_C: 9.272 }],
    [{ air_C: 10, rh_pct: 80 }, { dew_point_C: 6.713 }],
    [{ air_C: 0, rh_pct: 90 }, { dew_point_C: -1.273 }],
    [{ air_C: -10, rh_pct: 85 }, { dew_point_C: -11.818 }],
    [{ air_C: 25, rh_pct: 60 }, { dew_point_C: 16.701 }],
    [{ air_C: 5, rh_pct: 95 }, { dew_point_C: 4.267 }],
  ]),
  ...table({ of: "air-moisture.ts#saturationPressure_Pa", source: "PsychroLib 2.5.0, CoolProp 8.0.0", kind: "library", rel: 0.0005 }, [
    [[20], 2338.8], [[0], 611.15], [[-10], 259.9],
  ]),
  ...table({ of: "air-moisture", source: "Wood Handbook table 4-2, recalled", kind: "emc-cell", abs: 0.06 }, [
    [{ air_C: -1.111, rh_pct: 20 }, { emc_pct_dry: 4.6 }], [{ air_C: -1.111, rh_pct: 40 }, { emc_pct_dry: 7.9 }], [{ air_C: -1.111, rh_pct: 50 }, { emc_pct_dry: 9.5 }],
    [{ air_C: -1.111, rh_pct: 65 }, { emc_pct_dry: 12.4 }], [{ air_C: -1.111, rh_pct: 80 }, { emc_pct_dry: 16.5 }], [{ air_C: -1.111, rh_pct: 90 }, { emc_pct_dry: 21.0 }],
    [{ air_C: 10.0, rh_pct: 20 }, { emc_pct_dry: 4.6 }], [{ air_C: 10.0, rh_pct: 40 }, { emc_pct_dry: 7.9 }], [{ air_C: 10.0, rh_pct: 50 }, { emc_pct_dry: 9.5 }],
    [{ air_C: 10.0, rh_pct: 65 }, { emc_pct_dry: 12.3 }], [{ air_C: 10.0, rh_pct: 80 }, { emc_pct_dry: 16.4 }], [{ air_C: 10.0, rh_pct: 90 }, { emc_pct_dry: 20.9 }],
    [{ air_C: 15.556, rh_pct: 20 }, { emc_pct_dry: 4.6 }], [{ air_C: 15.556, rh_pct: 40 }, { emc_pct_dry: 7.8 }], [{ air_C: 15.556, rh_pct: 50 }, { emc_pct_dry: 9.4 }],
    [{ air_C: 15.556, rh_pct: 65 }, { emc_pct_dry: 12.1 }], [{ air_C: 15.556, rh_pct: 80 }, { emc_pct_dry: 16.2 }], [{ air_C: 15.556, rh_pct: 90 }, { emc_pct_dry: 20.7 }],
    [{ air_C: 21.111, rh_pct: 20 }, { emc_pct_dry: 4.5 }], [{ air_C: 21.111, rh_pct: 40 }, { emc_pct_dry: 7.7 }], [{ air_C: 21.111, rh_pct: 50 }, { emc_pct_dry: 9.2 }],
    [{ air_C: 21.111, rh_pct: 65 }, { emc_pct_dry: 12.0 }], [{ air_C: 21.111, rh_pct: 80 }, { emc_pct_dry: 16.0 }], [{ air_C: 21.111, rh_pct: 90 }, { emc_pct_dry: 20.5 }],
    [{ air_C: 32.222, rh_pct: 20 }, { emc_pct_dry: 4.3 }], [{ air_C: 32.222, rh_pct: 40 }, { emc_pct_dry: 7.4 }], [{ air_C: 32.222, rh_pct: 50 }, { emc_pct_dry: 8.9 }],
    [{ air_C: 32.222, rh_pct: 65 }, { emc_pct_dry: 11.5 }], [{ air_C: 32.222, rh_pct: 80 }, { emc_pct_dry: 15.4 }], [{ air_C: 32.222, rh_pct: 90 }, { emc_pct_dry: 19.8 }],
    [{ air_C: 43.333, rh_pct: 20 }, { emc_pct_dry: 4.0 }], [{ air_C: 43.333, rh_pct: 40 }, { emc_pct_dry: 7.0 }], [{ air_C: 43.333, rh_pct: 50 }, { emc_pct_dry: 8.4 }],
    [{ air_C: 43.333, rh_pct: 65 }, { emc_pct_dry: 11.0 }], [{ air_C: 43.333, rh_pct: 80 }, { emc_pct_dry: 14.7 }], [{ air_C: 43.333, rh_pct: 90 }, { emc_pct_dry: 19.1 }],
  ]),
];
