/** Wrong variants of each formula, as a change of the shipped source. Every one must be caught by a published value. */

export interface Mutant {
  /** path in src */
  readonly file: string;
  /** text that occurs once in the file */
  readonly from: string;
  readonly to: string;
  readonly mistake: string;
}

const of = (file: string, changes: readonly (readonly [from: string, to: string, mistake: string])[]): Mutant[] =>
  changes.map(([from, to, mistake]) => ({ file, from, to, mistake }));

export const MUTANTS: readonly Mutant[] = [
  ...of("reckoning/moisture.ts", [
    ["(100 * moisture_pct_dry) / (100 + moisture_pct_dry)", "moisture_pct_dry", "dry basis taken as wet"],
    ["(100 * moisture_pct_dry) / (100 + moisture_pct_dry)", "(100 * moisture_pct_dry) / (100 - moisture_pct_dry)", "sign of the basis turned"],
    ["(100 * moisture_pct_wet) / (100 - moisture_pct_wet)", "(100 * moisture_pct_wet) / (100 + moisture_pct_wet)", "sign of the basis turned"],
    ["(100 * (mass_kg - dry_kg)) / mass_kg", "(100 * (mass_kg - dry_kg)) / dry_kg", "oven sample on dry basis"],
    ["mass_kg * (1 - moisture_pct_wet / 100)", "mass_kg / (1 + moisture_pct_wet / 100)", "wet basis read as dry"],
    ["dry_kg / (1 - moisture_pct_wet / 100)", "dry_kg * (1 + moisture_pct_wet / 100)", "wet basis read as dry"],
    ["WATER_PER_HYDROGEN * hydrogen_share_dry", "hydrogen_share_dry", "hydrogen taken as water"],
    ["(CELL_WALL_DENSITY - basic_density_g_per_cm3)) /", "(1 - basic_density_g_per_cm3)) /", "cell wall taken as water"],
    ["(1 + moisture_pct_dry / 100)) /", "1) /", "water left out of the density"],
    ["1 - 0.265 *", "1 + 0.265 *", "shrinkage turned into swelling"],
    ["(Math.PI / 4) * middle_diameter_m ** 2", "Math.PI * middle_diameter_m ** 2", "diameter taken as radius"],
  ]),
  ...of("reckoning/meter.ts", [
    ["- 0.026 * wood_C", "+ 0.026 * wood_C", "temperature sign turned"],
    ["1.0056 ** wood_C", "1.0056 ** -wood_C", "temperature sign turned"],
    ["reading_pct_dry + 0.567", "reading_pct_dry", "offset lost"],
    ["corrected_pct_dry + at12 +", "corrected_pct_dry - at12 +", "species sign turned"],
    ["/ readings.length", "", "sum instead of mean"],
  ]),
  ...of("reckoning/fuel.ts", [
    ["- LATENT_MJ_PER_KG_PCT * moisture_pct_wet", "+ LATENT_MJ_PER_KG_PCT * moisture_pct_wet", "latent heat added"],
    ["- LATENT_MJ_PER_KG_PCT * moisture_pct_wet", "", "latent heat forgotten: gross instead of net"],
    ["* (1 - moisture_pct_wet / 100)", "/ (1 + moisture_pct_wet / 100)", "wet basis read as dry"],
    ['"MJ", "kWh")', '"kWh", "MJ")', "MJ and kWh swapped"],
    ["- 0.2122 * hydrogen_pct_dry", "+ 0.2122 * hydrogen_pct_dry", "gross and net swapped"],
    ["(101.09 - 0.0941", "(101.09 + 0.0941", "hotter flue gas taken as better"],
    ["load_kg * ncv_kWh_per_kg_now", "load_kg / ncv_kWh_per_kg_now", "divided instead of multiplied"],
    ["typical: 19.1, low", "typical: 18.9, low", "softwood taken as hardwood"],
  ]),
  ...of("reckoning/load.ts", [
    ["KWH_PER_KG = 3.25", "KWH_PER_KG = 4.16", "efficiency forgotten"],
    ["KWH_PER_KG = 3.25", "KWH_PER_KG = 3.25 * 0.78", "efficiency counted twice"],
    ["(nominal_output_kW * nominal_heating_time_h) /", "(nominal_output_kW / nominal_heating_time_h) /", "kW taken as kWh"],
    ["(max_load_kg * useful_kWh_per_kg) / nominal", "(max_load_kg / useful_kWh_per_kg) / nominal", "inverse wrong"],
    ["0.5 * max_load_kg", "max_load_kg", "smallest load is not the largest"],
    ["0.5 / 100", "1 / 100", "masonry guess doubled"],
    ["Math.min(...bounds)", "Math.max(...bounds)", "the higher guess taken"],
  ]),
  ...of("reckoning/stack.ts", [
    ["solid_short: 0.62", "solid_short: 0.85", "trade share instead of measured"],
    ["solid_1m: 0.56", "solid_1m: 0.7", "trade share instead of measured"],
    ["loose_per_stacked: 1.62", "loose_per_stacked: 1 / 1.62", "loose and stacked swapped"],
    ["(log_length_m - 0.33)", "(0.33 - log_length_m)", "log length sign turned"],
    ['"m3", "cord")', '"cord", "m3")', "cord and cubic metre swapped"],
    ["1000 * volume_m3_solid * basic", "1120 * volume_m3_solid * basic", "air-dry density taken for basic"],
    ["length_m * height_m * log_length_m", "length_m * height_m", "log length forgotten"],
  ]),
  ...of("reckoning/air-moisture.ts", [
    ["1.29 * t", "1.29 * (t * 1.8 + 32)", "Fahrenheit in the Celsius form"],
    ["const t = air_C", "const t = air_C + 273.15", "kelvin in the Celsius form"],
    ["const h = rh_pct / 100", "const h = rh_pct", "per cent taken as share"],
    ["2 * K1 * K2 * kh ** 2", "K1 * K2 * kh ** 2", "second hydrate counted once"],
    ["kh / (1 - kh) +", "kh / (1 + kh) +", "sign turned"],
    ["const T = t_C + KELVIN", "const T = t_C + 273.15 * 1.02", "kelvin offset wrong"],
    ["t_C <= 0.01", "false", "ice taken as water"],
    ["(rh_pct / 100) * saturationPressure_Pa(air_C)", "(rh_pct / 100) * saturationPressure_Pa(0)", "wrong saturation temperature"],
    ["if (equilibriumMoisture_pct_dry(air_C, middle) < target_pct_dry) low", "if (equilibriumMoisture_pct_dry(air_C, middle) > target_pct_dry) low", "search turned round"],
  ]),
  ...of("reckoning/draught.ts", [
    ["R_J_per_kgK * (t_C + KELVIN)", "R_J_per_kgK * t_C", "Celsius for kelvin"],
    ["(air_kg_per_m3 - flue_kg_per_m3)", "(flue_kg_per_m3 - air_kg_per_m3)", "sign turned"],
    ["flue_height_m * GRAVITY * (air", "Math.max(0, flue_height_m) * GRAVITY * Math.abs(air", "negative draught hidden"],
    ["flue_height_m * GRAVITY", "flue_height_m", "gravity forgotten"],
    ["(-GRAVITY * altitude_m)", "(GRAVITY * altitude_m)", "pressure rises with altitude"],
    ["PRESSURE_PA = 97000", "PRESSURE_PA = 101325", "two design pressures mixed"],
    ["R_AIR = 288", "R_AIR = 287.05", "two gas constants mixed"],
    ["(-2 * Math.log10", "(-4 * Math.log10", "Fanning for Darcy"],
    ["(gas_kg_per_m3 / 2)", "gas_kg_per_m3", "velocity pressure doubled"],
    ["static_Pa - resistance_in_flue_Pa - wind_Pa", "static_Pa - resistance_in_flue_Pa + wind_Pa", "wind helps"],
    ["+ (flue.bends ?? 0)", "", "bends forgotten"],
  ]),
  ...of("reckoning/flue-cooling.ts", [
    ["Math.PI * flue.diameter_m", "flue.diameter_m", "diameter taken as perimeter"],
    ["rise * Math.exp(-K)", "rise * Math.exp(K)", "gas warms on its way"],
    ["(rise * -Math.expm1(-K)) / K", "rise * Math.exp(-K)", "mouth taken as mean"],
    ["mouth_C - (k_W", "mouth_C + (k_W", "wall warmer than the gas"],
    ["(air_ratio - 1) * WOOD.air_Nm3", "air_ratio * WOOD.air_Nm3", "excess air counted from zero"],
    ["+ (1 - dry) / 18.015", "", "water of the wood forgotten"],
    ["+ humid_air_pct", "", "moist air forgotten"],
    ["/ 100) * pressure_Pa", "/ 100) * 101325", "pressure fixed"],
  ]),
  ...of("reckoning/house-heat.ts", [
    ["WH_PER_M3K = 0.34", "WH_PER_M3K = 1.2", "kJ taken as Wh"],
    ["surface.area_m2 * surface.u_W_per_m2K", "surface.area_m2 / surface.u_W_per_m2K", "U taken as R"],
    ["(inside_C - outside_C) - gains_W", "(inside_C - outside_C) + gains_W", "gains sign turned"],
    ["(inside_C - outside_C)", "(inside_C + outside_C)", "difference taken as sum"],
    ["Math.max(0, heat_loss_W_per_K *", "(heat_loss_W_per_K *", "mild day gives negative wood"],
    ["(24 * heat_loss_W_per_K", "(heat_loss_W_per_K", "days taken as hours"],
    ["heat_kWh / (ncv_kWh_per_kg * efficiency)", "(heat_kWh * efficiency) / ncv_kWh_per_kg", "efficiency turned round"],
    ["Math.max(0, base_C - day_C)", "base_C - 15 - day_C", "degree-day base wrong"],
    ["day_C <= threshold_C ?", "true ?", "threshold forgotten"],
    ["layer.thickness_m / layer.k_W_per_mK", "layer.k_W_per_mK / layer.thickness_m", "R turned round"],
    ["outside_m2K_per_W = 0.04", "outside_m2K_per_W = 0", "surface resistance forgotten"],
  ]),
  ...of("reckoning/drying.ts", [
    ["return equilibrium + (moisture_pct_dry", "return (moisture_pct_dry", "dries to nothing, not to equilibrium"],
    ["Math.exp(-k20_per_d", "Math.exp(k20_per_d", "wood gets wetter"],
    ["t > 0 ? saturationPressure_Pa(t) / at20 : 0", "1", "frost dries like summer"],
    ["(FITTED_SPLIT_MM / stack.split_mm) ** 1.5", "(stack.split_mm / FITTED_SPLIT_MM) ** 1.5", "thick dries faster"],
    ["4: 0.6", "4: 1", "oak dries like beech"],
    ["1: 1.25", "1: 0.6", "spruce dries like oak"],
    ["Math.floor(((day % CALENDAR", "Math.floor((((day + 183) % CALENDAR", "wrong hemisphere"],
    ["typical: 0.016", "typical: 0.025", "rate above the trials"],
    ["typical: 0.016", "typical: 0.011", "rate below the trials"],
    ["(thickness_in ** 1.52)", "(thickness_in ** 2)", "board exponent wrong"],
    ["Math.min(\n    ...climate.mean_C", "Math.max(\n    ...climate.mean_C", "dampest month taken as driest"],
    ["moisture <= target_pct_dry", "moisture <= target_pct_dry - 5", "20 % dry basis for 20 % wet basis"],
  ]),
  ...of("calculators/moisture.ts", [
    ["corrected_pct_wet: over ? undefined : wetFromDry_pct(corrected)", "corrected_pct_wet: over ? undefined : corrected", "dry basis shown as wet"],
    ["speciesCorrected_pct_dry(at_scale, points) : at_scale", "at_scale : at_scale", "species correction forgotten"],
    ["wetFromDry_pct(given.moisture_pct_dry)", "given.moisture_pct_dry", "dry basis taken as wet"],
  ]),
  ...of("calculators/fuel.ts", [
    ["?? wetFromDry_pct(given.moisture_pct_dry ?? 0)", "?? (given.moisture_pct_dry ?? 0)", "dry basis taken as wet"],
    ["energy_kWh * share[end]", "energy_kWh / share[end]", "efficiency turned round"],
  ]),
  ...of("calculators/air-moisture.ts", [
    ["emc_pct_wet: wetFromDry_pct(dry)", "emc_pct_wet: dry", "dry basis shown as wet"],
    ["dryFromWet_pct(target_pct_wet)", "target_pct_wet", "wet basis taken as dry"],
  ]),
  ...of("calculators/seasoning.ts", [
    ["dryFromWet_pct(given.target_pct_wet)", "given.target_pct_wet", "target of 20 % wet basis taken as dry"],
    ["dryFromWet_pct(given.start_pct_wet)", "given.start_pct_wet", "start of 50 % wet basis taken as dry"],
    ["floor_pct_wet = wetFromDry_pct(", "floor_pct_wet = (", "dry basis shown as wet"],
  ]),
  ...of("calculators/stack.ts", [
    ["1 / measured.loose_per_stacked", "measured.loose_per_stacked", "loose and stacked swapped"],
    ["volume_m3_solid: stacked * solid", "volume_m3_solid: stacked / solid", "solid and stacked swapped"],
    ['number("volume_m3_loose") * per_loose', 'number("volume_m3_loose") / per_loose', "loose and stacked swapped"],
  ]),
  ...of("calculators/house-heat.ts", [
    ["woodForHeat_kg(heat_kWh * given.wood_share, ncv", "woodForHeat_kg(heat_kWh / given.wood_share, ncv", "wood share turned round"],
    ["wood_kg / given.mass_kg_per_m3_stacked", "wood_kg * given.mass_kg_per_m3_stacked", "density turned round"],
  ]),
  ...of("calculators/draught.ts", [
    ["gasDensity_kg_per_m3(given.flue_mean_C, pressure_Pa, R_flue)", "gasDensity_kg_per_m3(given.flue_mean_C, pressure_Pa, given.R_air_J_per_kgK)", "gas constant of the flue ignored"],
    ["pressureAtAltitude_Pa(given.altitude_m ?? 0)", "pressureAtAltitude_Pa(0)", "altitude ignored"],
  ]),
];
