import { describe, expect, it } from "vitest";
import { gasDensity_kg_per_m3, pressureAtAltitude_Pa, staticDraught_Pa } from "../../src/reckoning/draught.ts";
import { condensation, coolingCoefficient, flueDewPoint_C, gasTemperatures_C, innerWall_C } from "../../src/reckoning/flue-cooling.ts";
import { mean } from "../../src/reckoning/meter.ts";

const draught = (outside_C: number, flue_C: number, altitude_m = 0): number => {
  const pressure = pressureAtAltitude_Pa(altitude_m);
  return staticDraught_Pa(6, gasDensity_kg_per_m3(outside_C, pressure, 288), gasDensity_kg_per_m3(flue_C, pressure, 288));
};

describe("draught", () => {
  it("falls when it is mild, reverses in a flue colder than the air, and is weaker high up", () => {
    expect(draught(15, 150)).toBeLessThan(draught(-10, 150));
    expect(draught(25, 18)).toBeLessThan(0);
    expect(draught(20, 20)).toBeCloseTo(0, 12);
    expect(draught(15, 150, 1000) / draught(15, 150)).toBeCloseTo(0.89, 2);
  });
});

describe("a cooling flue", () => {
  const flue = { diameter_m: 0.2, length_m: 8, k_W_per_m2K: 5 };

  it("goes from the inlet's temperature to that around it, the mean between inlet and mouth", () => {
    const hardly = gasTemperatures_C(180, 15, 1e-12);
    expect(hardly.mouth_C).toBeCloseTo(180, 6);
    expect(hardly.mean_C).toBeCloseTo(180, 6);
    const { mouth_C, mean_C } = gasTemperatures_C(180, 15, coolingCoefficient(flue, 0.03));
    expect(mouth_C).toBeLessThan(mean_C);
    expect(mean_C).toBeLessThan(180);
    expect(gasTemperatures_C(180, 15, 60).mouth_C).toBeCloseTo(15, 6);
  });

  it("condenses with a smouldering fire in a cold brick flue and not with a hot one", () => {
    const wall = (inlet_C: number, mass_flow_kg_per_s: number, k_W_per_m2K: number): number => {
      const { mouth_C } = gasTemperatures_C(inlet_C, 0, coolingCoefficient({ ...flue, k_W_per_m2K }, mass_flow_kg_per_s));
      return innerWall_C(mouth_C, 0, k_W_per_m2K, 6);
    };
    const dewPoint_C = flueDewPoint_C(2.95, 20, 97000);
    expect(dewPoint_C).toBeGreaterThan(40);
    expect(condensation(wall(90, 0.01, 5), dewPoint_C)).toBe("wet");
    expect(condensation(wall(180, 0.05, 2), dewPoint_C)).toBe("dry");
    expect(condensation(43, dewPoint_C)).toBe("marginal");
  });

  it("has a higher dew point with wetter wood and with less air", () => {
    expect(flueDewPoint_C(2.5, 30, 97000)).toBeGreaterThan(flueDewPoint_C(2.5, 15, 97000));
    expect(flueDewPoint_C(1.8, 20, 97000)).toBeGreaterThan(flueDewPoint_C(3, 20, 97000));
  });
});

describe("mean", () => {
  it("refuses no readings", () => expect(() => mean([])).toThrow(RangeError));
});
