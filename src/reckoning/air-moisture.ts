/** What air does to wood: equilibrium moisture of wood in air, and the dew point. */

/** Coefficients at a temperature: W, K, K1, K2 of the two-hydrate sorption model. */
function coefficients(air_C: number): { W: number; K: number; K1: number; K2: number } {
  const t = air_C;
  return {
    W: 349 + 1.29 * t + 0.0135 * t ** 2,
    K: 0.805 + 0.000736 * t - 0.00000273 * t ** 2,
    K1: 6.27 - 0.00938 * t - 0.000303 * t ** 2,
    K2: 1.91 + 0.0407 * t - 0.000293 * t ** 2,
  };
}

/**
 * Equilibrium moisture of sheltered wood (Hailwood and Horrobin):
 * EMC = 1800/W [ Kh/(1-Kh) + (K1 K h + 2 K1 K2 K2 h2)/(1 + K1 K h + K1 K2 K2 h2) ].
 * @param air_C -30 to 60; below 0 the fit is extrapolated
 * @param rh_pct relative humidity, 0 to 100; above 97 wood takes up liquid water and this is only a lower bound
 * @returns DRY basis, %. Species differ by about 1 point; wood that is drying lags above it.
 * Source: FPL-GTR-282 (2021) eq. 4-5. Worked example: 20 °C and 65 % is 12.0 % dry basis (10.7 % wet basis).
 */
export function equilibriumMoisture_pct_dry(air_C: number, rh_pct: number): number {
  const { W, K, K1, K2 } = coefficients(air_C);
  const h = rh_pct / 100;
  const kh = K * h;
  return (1800 / W) * (kh / (1 - kh) + (K1 * kh + 2 * K1 * K2 * kh ** 2) / (1 + K1 * kh + K1 * K2 * kh ** 2));
}

/**
 * The relative humidity that holds wood at a moisture, by bisection on {@link equilibriumMoisture_pct_dry}.
 * @returns %, at most 100 (then any air dries sheltered wood below that moisture)
 * Source: inverse of FPL-GTR-282 eq. 4-5. Worked example: 12.0 % dry basis at 20 °C is held at 65 %.
 */
export function humidityForMoisture_pct(air_C: number, target_pct_dry: number): number {
  if (target_pct_dry >= equilibriumMoisture_pct_dry(air_C, 100)) return 100;
  let low = 0;
  let high = 100;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (equilibriumMoisture_pct_dry(air_C, middle) < target_pct_dry) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const KELVIN = 273.15;

/**
 * Saturation pressure of water vapour, over ice below 0.01 °C (Hyland and Wexler 1983).
 * @param t_C -100 to 200
 * @returns Pa. Source: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5 and 6. Worked example: 20 °C is 2338.8 Pa.
 */
export function saturationPressure_Pa(t_C: number): number {
  const T = t_C + KELVIN;
  const exponent =
    t_C <= 0.01
      ? -5.6745359e3 / T +
        6.3925247 -
        9.677843e-3 * T +
        6.2215701e-7 * T ** 2 +
        2.0747825e-9 * T ** 3 -
        9.484024e-13 * T ** 4 +
        4.1635019 * Math.log(T)
      : -5.8002206e3 / T + 1.3914993 - 4.8640239e-2 * T + 4.1764768e-5 * T ** 2 - 1.4452093e-8 * T ** 3 + 6.5459673 * Math.log(T);
  return Math.exp(exponent);
}

/**
 * The temperature at which a vapour pressure saturates, by bisection on {@link saturationPressure_Pa}; below 0 °C the frost point.
 * @param vapour_Pa 1 Pa to 1 MPa
 * @returns °C. Source: as above. Worked example: 8877 Pa is 43.5 °C.
 */
export function saturationTemperature_C(vapour_Pa: number): number {
  let low = -100;
  let high = 200;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (saturationPressure_Pa(middle) < vapour_Pa) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Dew point of room or outside air.
 * @param rh_pct above 0, to 100
 * @returns °C. Source: ASHRAE Handbook Fundamentals 2017, ch. 1. Worked example: 20 °C and 50 % is 9.27 °C.
 */
export const dewPoint_C = (air_C: number, rh_pct: number): number => saturationTemperature_C((rh_pct / 100) * saturationPressure_Pa(air_C));
