import { table } from "../row.ts";

const NCV_FORMULA = "ISO 18125 form q_d (1 - M/100) - 0.02443 M, worked in Python";

export const fuel = [
  ...table({ of: "fuel", source: "TFZ Straubing table of heat values, spruce 5.20 kWh/kg dry", kind: "seen", abs: 0.05 }, [
    [{ load_kg: 1, moisture_pct_wet: 0, ncv_dry_MJ_per_kg: 18.72 }, { ncv_kWh_per_kg: 5.2 }],
    [{ load_kg: 1, moisture_pct_wet: 10, ncv_dry_MJ_per_kg: 18.72 }, { ncv_kWh_per_kg: 4.64 }],
    [{ load_kg: 1, moisture_pct_wet: 20, ncv_dry_MJ_per_kg: 18.72 }, { ncv_kWh_per_kg: 4.05 }],
    [{ load_kg: 1, moisture_pct_wet: 30, ncv_dry_MJ_per_kg: 18.72 }, { ncv_kWh_per_kg: 3.44 }],
    [{ load_kg: 1, moisture_pct_wet: 40, ncv_dry_MJ_per_kg: 18.72 }, { ncv_kWh_per_kg: 2.86 }],
    [{ load_kg: 1, moisture_pct_wet: 50, ncv_dry_MJ_per_kg: 18.72 }, { ncv_kWh_per_kg: 2.27 }],
  ]),
  ...table({ of: "fuel", source: "TFZ Straubing table of heat values, Scots pine 5.33 kWh/kg dry", kind: "seen", abs: 0.05 }, [
    [{ load_kg: 1, moisture_pct_wet: 10, ncv_dry_MJ_per_kg: 19.188 }, { ncv_kWh_per_kg: 4.75 }],
    [{ load_kg: 1, moisture_pct_wet: 20, ncv_dry_MJ_per_kg: 19.188 }, { ncv_kWh_per_kg: 4.14 }],
    [{ load_kg: 1, moisture_pct_wet: 30, ncv_dry_MJ_per_kg: 19.188 }, { ncv_kWh_per_kg: 3.53 }],
    [{ load_kg: 1, moisture_pct_wet: 40, ncv_dry_MJ_per_kg: 19.188 }, { ncv_kWh_per_kg: 2.94 }],
    [{ load_kg: 1, moisture_pct_wet: 50, ncv_dry_MJ_per_kg: 19.188 }, { ncv_kWh_per_kg: 2.33 }],
  ]),
  ...table({ of: "fuel.ts#ncv_MJ_per_kg", source: "Belgian wood-fuel table in GJ/t from 19.00 dry (its 25 and 50 % rows are misprints)", kind: "seen", abs: 0.03 }, [
    [[19, 15], 15.79],
    [[19, 20], 14.72],
    [[19, 30], 12.58],
    [[19, 40], 10.44],
  ]),
  ...table({ of: "fuel", source: "NIBIO: dry wood 5.3 kWh/kg (conifer) and 5.25 (broadleaf)", kind: "seen", abs: 0.01 }, [
    [{ load_kg: 1, moisture_pct_wet: 0, species: "spruce" }, { ncv_kWh_per_kg: 5.3 }],
    [{ load_kg: 1, moisture_pct_wet: 0, species: "birch" }, { ncv_kWh_per_kg: 5.25 }],
  ]),
  ...table({ of: "fuel", source: NCV_FORMULA, kind: "computed", abs: 0.0015 }, [
    [{ load_kg: 1, moisture_pct_wet: 10, species: "softwood" }, { ncv_kWh_per_kg: 4.707 }],
    [{ load_kg: 1, moisture_pct_wet: 15, species: "softwood" }, { ncv_kWh_per_kg: 4.408 }],
    [{ load_kg: 1, moisture_pct_wet: 25, species: "softwood" }, { ncv_kWh_per_kg: 3.81 }],
    [{ load_kg: 1, moisture_pct_wet: 50, species: "softwood" }, { ncv_kWh_per_kg: 2.313 }],
    [{ load_kg: 1, moisture_pct_wet: 12, species: "hardwood" }, { ncv_kWh_per_kg: 4.539 }],
    [{ load_kg: 1, moisture_pct_wet: 20, species: "hardwood" }, { ncv_kWh_per_kg: 4.064 }],
    [{ load_kg: 1, moisture_pct_wet: 35, species: "hardwood" }, { ncv_kWh_per_kg: 3.175 }],
    [{ load_kg: 1, moisture_pct_wet: 60, species: "hardwood" }, { ncv_kWh_per_kg: 1.693 }],
  ]),
  ...table({ of: "fuel", source: `${NCV_FORMULA}: 25 % dry basis is 20 % wet basis`, kind: "computed", abs: 0.002 }, [
    [{ load_kg: 10, moisture_pct_dry: 25, species: "hardwood" }, { ncv_kWh_per_kg: 4.064, dry_kg: 8, water_kg: 2 }],
  ]),
  ...table({ of: "fuel", source: "EN 15544: 4.16 kWh/kg and 0.78; 15 kg give 48.67 kWh (18.5 MJ/kg dry at 17 % is 4.15)", kind: "memory", rel: 0.005 }, [
    [{ load_kg: 15, moisture_pct_wet: 17, ncv_dry_MJ_per_kg: 18.54, efficiency: 0.78 }, { ncv_kWh_per_kg: 4.16, energy_kWh: 62.4, useful_kWh: 48.67 }],
  ]),
  ...table({ of: "fuel.ts#netFromGross_MJ_per_kg", source: "ISO 18125; composition of Channiwala and Parikh's wood", kind: "memory", abs: 0.01 }, [
    [[20.25, 6.2, 44], 18.899],
    [[20.24, 6.1, 43.2], 18.911],
  ]),
  ...table({ of: "fuel.ts#efficiencyFromFlueGas", source: "EN 15544, 4.10.3", kind: "memory", abs: 0.0002 }, [
    [[240], 0.7851],
    [[180], 0.8415],
  ]),
];

export const ratedLoad = [
  ...table({ of: "rated-load", source: "trade text on EN 15544 and OENORM B 8300: 10 kg is 2.7 kW and 40 kg is 11 kW over 12 h", kind: "seen", rel: 0.016 }, [
    [{ max_load_kg: 10, nominal_heating_time_h: 12 }, { nominal_output_kW: 2.7, min_load_kg: 5 }],
    [{ max_load_kg: 40, nominal_heating_time_h: 12 }, { nominal_output_kW: 11, min_load_kg: 20 }],
    [{ nominal_output_kW: 2.7, nominal_heating_time_h: 12 }, { max_load_kg: 10 }],
    [{ nominal_output_kW: 11, nominal_heating_time_h: 12 }, { max_load_kg: 40 }],
  ]),
  ...table({ of: "rated-load", source: "EN 15544, 4.2, worked by hand", kind: "memory", abs: 0.001 }, [
    [{ nominal_output_kW: 4, nominal_heating_time_h: 12 }, { max_load_kg: 14.769, min_load_kg: 7.385 }],
    [{ nominal_output_kW: 8, nominal_heating_time_h: 12 }, { max_load_kg: 29.538, min_load_kg: 14.769 }],
    [{ nominal_output_kW: 2.8, nominal_heating_time_h: 12 }, { max_load_kg: 10.338 }],
    [{ nominal_output_kW: 5, nominal_heating_time_h: 8 }, { max_load_kg: 12.308 }],
  ]),
  ...table({ of: "rated-load", source: "the same with the useful heat the standard's constant came from: 4.16 x 0.78", kind: "computed", rel: 0.002 }, [
    [{ nominal_output_kW: 4, nominal_heating_time_h: 24, efficiency: 0.78, ncv_kWh_per_kg: 4.16 }, { max_load_kg: 29.586 }],
    [{ max_load_kg: 20, nominal_heating_time_h: 12, efficiency: 0.8, ncv_kWh_per_kg: 4 }, { nominal_output_kW: 5.333 }],
  ]),
  ...table({ of: "load.ts#guessedLoad_kg", source: "common practice, no source: 0.5 kg per 100 kg of masonry or half the firebox, the lower", kind: "computed", abs: 1e-9 }, [
    [[{ masonry_kg: 2500, half_firebox_kg: 14 }], 12.5],
    [[{ masonry_kg: 3000, half_firebox_kg: 9 }], 9],
  ]),
];
