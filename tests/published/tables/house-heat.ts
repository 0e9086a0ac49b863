import { table } from "../row.ts";

const BURNED = { ncv_kWh_per_kg: 4.15, efficiency: 0.8 };

export const houseHeat = [
  ...table({ of: "house-heat", source: "EN 12831-1 simplified, worked in Python", kind: "computed", rel: 0.001 }, [
    [{ heat_loss_W_per_K: 90, inside_C: 20, outside_C: -5, hours_h: 24, internal_gains_W: 300, ...BURNED }, { heat_kWh: 46.8, wood_kg: 14.096 }],
    [{ heat_loss_W_per_K: 200, inside_C: 20, outside_C: 0, hours_h: 24, ...BURNED }, { heat_kWh: 96, wood_kg: 28.916 }],
    [{ heat_loss_W_per_K: 200, inside_C: 20, outside_C: -15, hours_h: 24, ...BURNED }, { heat_kWh: 168, wood_kg: 50.602 }],
    [{ heat_loss_W_per_K: 350, inside_C: 20, outside_C: -5, hours_h: 12, ...BURNED }, { heat_kWh: 105, wood_kg: 31.627 }],
    [{ heat_loss_W_per_K: 200, inside_C: 20, outside_C: 16, hours_h: 24, internal_gains_W: 900, ...BURNED }, { heat_kWh: 0, wood_kg: 0 }],
    [{
      walls_m2: 160, walls_W_per_m2K: 0.4, windows_m2: 20, windows_W_per_m2K: 1.4, roof_m2: 100, roof_W_per_m2K: 0.2,
      floor_m2: 60, floor_W_per_m2K: 0.4, volume_m3: 250, air_changes_per_h: 0.5, inside_C: 20, outside_C: -12, hours_h: 1,
    }, { heat_loss_W_per_K: 178.5, heat_kWh: 5.712 }],
  ]),
  ...table({ of: "house-heat.ts#uValue_W_per_m2K", source: "ISO 6946 with R_si 0.13 and R_se 0.04, by hand", kind: "computed", abs: 0.001 }, [
    [[[{ thickness_m: 0.24, k_W_per_mK: 0.8 }, { thickness_m: 0.015, k_W_per_mK: 0.8 }]], 2.046],
    [[[{ thickness_m: 0.24, k_W_per_mK: 0.8 }, { thickness_m: 0.14, k_W_per_mK: 0.035 }]], 0.2237],
    [[[{ thickness_m: 0.06, k_W_per_mK: 0.13 }]], 1.5834],
  ]),
  ...table({ of: "house-heat.ts#uValue_W_per_m2K", source: "UK guide: solid brick wall of 9 in is 2.2 W/m2K", kind: "seen", abs: 0.1 }, [
    [[[{ thickness_m: 0.229, k_W_per_mK: 0.8 }]], 2.2],
  ]),
  ...table({ of: "house-heat.ts#degreeDays_Kd", source: "CBS: base 18, days of 10, -4 and 20 °C count 8, 22 and 0", kind: "seen", abs: 1e-9 }, [
    [[[10], 18], 8], [[[-4], 18], 22], [[[20], 18], 0],
  ]),
  ...table({ of: "house-heat.ts#degreeDays_Kd", source: "EEA base 15.5 (seen), US 18.3 and Eurostat 18 up to 15 (recalled), by hand", kind: "memory", abs: 1e-6 }, [
    [[[-3, 1, 7, 12, 16, 19, 14.9, 15.1], 18.3], 65.1],
    [[[-3, 1, 7, 12, 16, 19, 14.9, 15.1], 15.5], 46],
    [[[-3, 1, 7, 12, 16, 19, 14.9, 15.1], 18, 15], 58.1],
  ]),
];

export const season = [
  ...table({ of: "season", source: "Q = 24 H HDD by hand", kind: "computed", rel: 0.001 }, [
    [{ heat_loss_W_per_K: 200, degree_days_Kd: 3000, ...BURNED }, { heat_kWh: 14400, wood_kg: 4337.35 }],
    [{ heat_loss_W_per_K: 200, degree_days_Kd: 3000, useful_kWh_per_kg: 3.2, wood_share: 0.6 }, { heat_kWh: 14400, wood_kg: 2700 }],
    [{ heat_loss_W_per_K: 150, degree_days_Kd: 2500, useful_kWh_per_kg: 3, mass_kg_per_m3_stacked: 450 }, { heat_kWh: 9000, wood_kg: 3000, wood_m3_stacked: 6.6667 }],
    [{ heat_loss_W_per_K: 100, degree_days_Kd: 4000 }, { heat_kWh: 9600, wood_kg: 2953.8 }],
    [{ heat_loss_W_per_K: 100, degree_days_Kd: 0 }, { heat_kWh: 0, wood_kg: 0 }],
    [{ heat_loss_W_per_K: 178.5, degree_days_Kd: 3738, ncv_kWh_per_kg: 4.16, efficiency: 0.78 }, { heat_kWh: 16013.6, wood_kg: 4935.2 }],
  ]),
];
