/** Where a forecast comes from, should the host want one. Gleed works without; what a person says comes first. */
import type { DayWeatherFacts } from "../records/schemas.ts";

export interface Spot {
  readonly latitude: number;
  readonly longitude: number;
  readonly timezone: string;
}

export interface ForecastSource {
  /**
   * Lows and highs of the coming days by the clock of the place, today first, at most seven.
   * @throws NoForecast with one sentence
   */
  days(spot: Spot, now_ms: number): Promise<readonly DayWeatherFacts[]>;
}

export class NoForecast extends Error {
  override readonly name = "NoForecast";
}
