/** Time grows with the length of the text alone, whatever the text: walls of one piece repeated, twenty thousand characters long. */
import { beforeAll, describe, expect, test } from "vitest";
import { readAmounts } from "../../../src/conversation/reading/amounts.ts";
import { readCorrection } from "../../../src/conversation/reading/corrections.ts";
import { readFigures } from "../../../src/conversation/reading/figures.ts";
import { readAlarms, readFire, readHeater, readHouse, readUnits, readWeather,
  readWood } from "../../../src/conversation/reading/records.ts";
import { readSpecies } from "../../../src/conversation/reading/species.ts";
import { loadTimes, readTimes } from "../../../src/conversation/reading/times.ts";
import { readYesNo } from "../../../src/conversation/reading/yes-no.ts";

const NOW = Date.parse("2026-11-25T22:40:00+02:00");
const ZONE = "Europe/Helsinki";
const HERE = { now_ms: NOW, timezone: ZONE };
const READERS: Readonly<Record<string, (text: string) => unknown>> = {
  readFigures, readSpecies, readAmounts, readYesNo, readCorrection, readUnits, readTimes: (text) => readTimes(text, NOW, ZONE),
    readHeater: (text) => readHeater(text, HERE), readHouse: (text) => readHouse(text, HERE),
  readWood: (text) => readWood(text, HERE), readFire: (text) => readFire(text, NOW, ZONE), readAlarms: (text) => readAlarms(text, HERE),
    readWeather: (text) => readWeather(text, HERE),
};
const PIECES = [
  "log: 12kg birch 17% 18:10 damper 22:00, ", "1", "1 ", "1,", "1.", "a ", "- ", "max 5 kg ", "\u200b", "½ ", "one and ", "hundred ",
    "18:10 ", "co alarm ", "not ", "birch ", "4x", "3.10.2026 ", "👍", "12 kg plus ", "(", "8 to ", "m3 3 m3 birch, ", "2 days ",
    "ten twelve ", "5 kg from 3 ", "a kilo and a half ", "temp 3 ", "1-1/2 ", "6 ft 2 in ", "8 of 9', 3 for a ",
];
const wall = (piece: string, length: number): string => piece.repeat(Math.ceil(length / piece.length)).slice(0, length);
/** Runs up to five times until it is fast enough: a busy machine is no reason to fail. */
function quickest_ms(run: () => unknown, enough_ms: number): number {
  let best = Infinity;
  for (let i = 0; i < 5 && best > enough_ms; i += 1) {
    const start = performance.now();
    run();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

beforeAll(loadTimes);

describe("twenty thousand characters", () => {
  test.each(Object.keys(READERS))("%s", (name) => {
    const read = READERS[name]!;
    read(wall("12 kg birch at 18:10, ", 4000));
    for (const piece of PIECES) {
      // some 10 ms on a quiet machine; anything quadratic takes seconds
      expect(quickest_ms(() => read(wall(piece, 20_000)), 20), JSON.stringify(piece)).toBeLessThan(200);
    }
  });
});
