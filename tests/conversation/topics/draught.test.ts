/** Draught cold and warm, the mild evening, thin air, and whether the flue gets wet. */
import { expect, it } from "vitest";
import { reckon } from "../../../src/calculators/index.ts";
import { ANA, home, ids } from "./homes.ts";

it("says in pascals why a mild evening smokes", async () => {
  const talk = await home({ ...ANA, weather: [{ date: "2026-11-25", low_C: 12, high_C: 16 }] });
  const answer = await talk.say("ana", "What draught in pascals does my chimney have?");
  await talk.close();
  expect(answer.topic).toBe("draught");
  expect(answer.numbers.draught_cold_Pa).toBeLessThan(3);
  expect(answer.text).toMatch(/mild evening smokes: at 12 °C a cold flue pulls only 1\.\d Pa, on a night of −5 °C it would pull 6 Pa/);
  expect(ids(answer)).toContain("weak-draught");
});

it("takes flue, gas, air and altitude from the message", async () => {
  const talk = await home();
  const answer = await talk.say("ana", "8 m flue, gas mean 140 C, outside -5, 900 m altitude, draught?");
  await talk.close();
  const done = reckon("draught", { flue_height_m: 8, outside_C: -5, flue_mean_C: 140, altitude_m: 900 });
  if (!done.ok) throw new Error(done.error);
  expect(answer.numbers.draught_Pa).toBeCloseTo(Number(done.result.draught_Pa), 0);
});

it("checks the flue for condensation, with a range, when damp is asked about", async () => {
  const talk = await home({ ...ANA, heater: { ...ANA.heater, max_load_kg: 6, flue_on_outside_wall: true, flue_height_m: 10 }, wood: [{ species: "birch", moisture_pct_wet: 28 }] });
  const answer = await talk.say("ana", "does condensation form in my flue, what draught have I got?");
  await talk.close();
  expect(answer.text).toMatch(/inner wall at the top is reckoned at −?\d+ °C \(−?\d+–\d+\)/);
  expect(answer.numbers.flue_mouth_wall_C).toBeLessThan(45);
  expect(ids(answer)).toContain("tar");
});

it.each([
  ["a chimney that is known", ANA, /^(?!.*a flue 6 m high)/s],
  ["one that is not", {}, /Assumed[^\n]*a flue 6 m high/],
])("a mild day that is asked about outweighs tonight's frost, for %s", async (_, records, assumed) => {
  const talk = await home(records);
  const answer = await talk.say("ana", "why is my draught weak on warm days?");
  await talk.close();
  expect(answer.topic).toBe("draught");
  expect(answer.text).toMatch(/mild evening smokes: at 14 °C a cold flue pulls only 0\.9 Pa/);
  expect(answer.text).toMatch(/Assumed[^\n]*14 °C outside for a mild evening/);
  expect(answer.text).toMatch(assumed);
  expect(ids(answer)).toContain("weak-draught");
});
