import { table } from "../row.ts";

const TFZ = "TFZ Straubing, measured, January 2006";
const DRY_PER_SOLID = "Belgian table: dry kg per solid m3 (trees scatter by 10 %)";
const DERIVED = "basic density, TFZ share and ISO 18125 formula, worked in Python";

export const stack = [
  ...table({ of: "stack", source: `${TFZ}, per stacked m3 of 33 cm splits`, kind: "seen", abs: 0.015 }, [
    [{ volume_m3_stacked: 1, species: "beech" }, { volume_m3_solid: 0.62, volume_m3_loose: 1.48 }],
    [{ volume_m3_stacked: 1, species: "spruce" }, { volume_m3_solid: 0.64, volume_m3_loose: 1.62 }],
  ]),
  ...table({ of: "stack", source: `${TFZ}, per stacked m3 of 1 m splits`, kind: "seen", abs: 0.01 }, [
    [{ length_m: 1, height_m: 1, log_length_m: 1, species: "beech" }, { volume_m3_solid: 0.5 }],
    [{ length_m: 1, height_m: 1, log_length_m: 1, species: "spruce" }, { volume_m3_solid: 0.56 }],
  ]),
  ...table({ of: "stack", source: "LWF leaflet: 1 solid m3 in stacked and loose m3 of 33 cm", kind: "memory", abs: 0.03 }, [
    [{ volume_m3_solid: 1, species: "beech" }, { volume_m3_stacked: 1.61, volume_m3_loose: 2.38 }],
    [{ volume_m3_solid: 1, species: "spruce" }, { volume_m3_stacked: 1.55, volume_m3_loose: 2.52 }],
  ]),
  ...table({ of: "stack", source: "NIST Handbook 130, 2.4: a cord is 128 ft3, 3.6246 m3", kind: "seen", abs: 0.0001 }, [
    [{ cords: 1 }, { volume_m3_stacked: 3.6246 }],
    [{ volume_m3_stacked: 1 }, { cords: 0.2759 }],
    [{ length_ft: 8, height_ft: 4, log_length_in: 48 }, { cords: 1, volume_m3_stacked: 3.6246 }],
  ]),
  ...table({ of: "stack", source: "encyclopaedia entry on the cord: face cord of 16 in logs", kind: "seen", abs: 0.0001 }, [
    [{ length_ft: 8, height_ft: 4, log_length_in: 16 }, { cords: 0.3333, volume_m3_stacked: 1.2082 }],
  ]),
  ...table({ of: "stack", source: "Maine law: a thrown cord of 12 to 16 in wood is 180 ft3", kind: "seen", rel: 0.002 }, [
    [{ volume_m3_loose: 5.097, stacked_per_loose: 0.7111 }, { cords: 1 }],
  ]),
  ...table({ of: "stack", source: "engineering table: solid wood in a cord typically 85 ft3, 66 %", kind: "seen", rel: 0.01 }, [
    [{ cords: 1, solid_share: 0.664 }, { volume_m3_solid: 2.407 }],
  ]),
  ...table({ of: "stack", source: DRY_PER_SOLID, kind: "seen", rel: 0.1 }, [
    [{ volume_m3_solid: 1, species: "beech", moisture_pct_wet: 0 }, { mass_kg: 570 }],
    [{ volume_m3_solid: 1, species: "oak", moisture_pct_wet: 0 }, { mass_kg: 570 }],
    [{ volume_m3_solid: 1, species: "birch", moisture_pct_wet: 0 }, { mass_kg: 510 }],
    [{ volume_m3_solid: 1, species: "larch", moisture_pct_wet: 0 }, { mass_kg: 460 }],
    [{ volume_m3_solid: 1, species: "pine", moisture_pct_wet: 0 }, { mass_kg: 420 }],
    [{ volume_m3_solid: 1, species: "alder", moisture_pct_wet: 0 }, { mass_kg: 420 }],
    [{ volume_m3_solid: 1, species: "spruce", moisture_pct_wet: 0 }, { mass_kg: 400 }],
    [{ volume_m3_solid: 1, species: "poplar", moisture_pct_wet: 0 }, { mass_kg: 350 }],
  ]),
  ...table({ of: "stack", source: DERIVED, kind: "computed", rel: 0.003 }, [
    [{ volume_m3_stacked: 1, species: "beech", moisture_pct_wet: 20 }, { mass_kg: 453.4, energy_kWh: 1843 }],
    [{ length_m: 1, height_m: 1, log_length_m: 1, species: "beech", moisture_pct_wet: 20 }, { mass_kg: 365.6, energy_kWh: 1486 }],
    [{ volume_m3_stacked: 1, species: "spruce", moisture_pct_wet: 20 }, { mass_kg: 296, energy_kWh: 1216 }],
    [{ volume_m3_stacked: 1, species: "oak", moisture_pct_wet: 20 }, { mass_kg: 434, energy_kWh: 1764 }],
    [{ volume_m3_loose: 1, species: "spruce", moisture_pct_wet: 20 }, { mass_kg: 182.7, energy_kWh: 751 }],
    [{ volume_m3_loose: 1, species: "beech", moisture_pct_wet: 20 }, { mass_kg: 306.3, energy_kWh: 1245 }],
    [{ cords: 1, species: "sugar maple", moisture_pct_wet: 20, solid_share: 0.664 }, { mass_kg: 1685, energy_kWh: 6848 }],
  ]),
];
