/** When it is warmest, what an open damper costs, touching, absence, an owner's readings. */
import { afterAll, beforeAll, expect, it } from "vitest";
import { reckon } from "../../../src/calculators/index.ts";
import type { Talk } from "../../support/talk.ts";
import { ANA, home, ids } from "./homes.ts";

let talk: Talk;
beforeAll(async () => {
  talk = await home();
});
afterAll(() => talk.close());

it("names the hour of most heat with its range, from the same model as the calculator", async () => {
  const answer = await talk.say("ana", "lit 17:00 with 14 kg, peak when");
  expect(answer.topic).toBe("heat-curve");
  expect(answer.headline).toMatch(/Most heat about Wed 25 Nov, \d\d:\d0 \(between \d\d:\d0 and \d\d:\d0\)/);
  const done = reckon("heat-curve", {
    heater: ANA.heater, house: { ...ANA.house, other_heat_W: 0 }, load_kg: 14, moisture_pct_wet: 17, lit_at: "2026-11-25T17:00:00+02:00", outside: { low_C: -8, high_C: -3 },
  });
  if (!done.ok) throw new Error(done.error);
  expect(answer.numbers.load_kg).toBe(14);
  expect(answer.numbers.peak_output_h).toBeCloseTo(Number(done.result.peak_output_h), 0);
  expect(answer.numbers.bed_black_h).toBeCloseTo(Number(done.result.bed_black_h), 1);
  expect(ids(answer)).toContain("close-flue");
  expect(answer.text).toMatch(/no permission/);
  expect(answer.pictures[0]?.alt).toMatch(/Most heat to the room/);
});

it("reckons backwards from the hour it shall be warmest", async () => {
  const answer = await talk.say("ana", "I want the bench nicest at nine in the evening, so what time do I strike the match?");
  const [, at = ""] = /Light about Wed 25 Nov, (\d\d:\d\d)/.exec(answer.headline) ?? [];
  expect(at).not.toBe("");
  const lit_h = Number(at.slice(0, 2)) + Number(at.slice(3)) / 60;
  expect(lit_h + (answer.numbers.peak_output_h ?? 0)).toBeCloseTo(21, 0);
});

it("prices an open damper and never makes it a reason to close early", async () => {
  const answer = await talk.choose("ana", "topic:heat-curve");
  expect(answer.topic).toBe("heat-curve");
  const damper = await talk.say("ana", "how long does the heat last after a 15 kg fire if the damper stays open all night?");
  expect(damper.topic).toBe("heat-curve");
  expect(damper.text).toMatch(/costs about .* kWh .*never a reason to close early/s);
  expect(ids(damper)).toEqual(expect.arrayContaining(["close-flue", "carbon-monoxide"]));
});

it("reckons with no more than the heater may burn", async () => {
  const answer = await talk.say("ana", "how long will the heater stay warm after a 30 kg fire?");
  expect(answer.numbers.load_kg).toBe(16);
  expect(answer.text).toMatch(/30 kg is more than this heater may burn/);
  expect(ids(answer)).toContain("over-firing");
});

it("never calls a surface safe, and asks for the hottest spot", async () => {
  const answer = await talk.say("ana", "can I touch the face when it is at its warmest?");
  expect(answer.topic).toBe("children-and-clearance");
  expect(ids(answer)).toContain("burns");
  expect(answer.text).not.toMatch(/\b(is|are) safe\b/i);
});

it("says how cold an empty house gets, in a range, and how long it takes to be back", async () => {
  const answer = await talk.say("ana", "how cold will the house be after being away for two weeks with the heater unlit?");
  expect(answer.topic).toBe("heat-curve");
  // all warmth is gone after 14 days of a time constant of two: the room is as cold as it is outside, -5.5 °C
  expect(answer.numbers.room_after_C).toBeCloseTo(-5.5, 0);
  expect(answer.text).toMatch(/pipes/);
  expect(answer.numbers.warm_up_day).toBeGreaterThan(1);
  expect(answer.numbers.warm_up_day).toBeLessThan(5);
  expect(ids(answer)).toEqual(expect.arrayContaining(["first-fires", "close-flue"]));
});

it("tells from two readings how fast the face cools, and that the rest cannot be told", async () => {
  const answer = await talk.say("ana", "the face was 62 at 20:00 and 48 at 6:00, room 19.5, when does it cool");
  // Newton's cooling: 10 h / ln(42.5 / 28.5) = 25.0 h
  expect(answer.numbers.face_time_constant_h).toBeCloseTo(25.02, 0);
  expect(answer.headline).toMatch(/2 readings cannot tell/);
  expect(answer.numbers).not.toHaveProperty("heat_loss_W_per_K");
});

it("finds the heat loss behind twenty readings inside its own range, or says that it cannot", async () => {
  const own = await home({ ...ANA, weather: [{ date: "2026-11-25", low_C: -8, high_C: -3 }], house: { floor_m2: 100, heat_loss_W_per_K: 150, wanted_C: 20 }, fires: [{ lit_at: "2026-11-23T18:00:00+02:00", load_kg: 14, moisture_pct_wet: 17 }] });
  const done = reckon("heat-curve", { heater: ANA.heater, house: { ...ANA.house, other_heat_W: 0 }, load_kg: 14, moisture_pct_wet: 17, lit_at: "2026-11-23T18:00:00+02:00", outside: { low_C: -8, high_C: -3 } });
  if (!done.ok) throw new Error(done.error);
  const series = done.result.series as { t_h: number; facing_C: number; room_C: number }[];
  const said = series.filter(({ t_h }) => t_h > 0 && t_h % 4 === 0 && t_h <= 44).map(({ t_h, facing_C, room_C }) => `face ${facing_C.toFixed(1)} at ${String((18 + t_h) % 24)}:00, room ${room_C.toFixed(1)} at ${String((18 + t_h) % 24)}:00`);
  const answer = await own.say("ana", `My readings, when does it cool: ${said.join(", ")}`);
  await own.close();
  expect(answer.topic).toBe("heat-curve");
  const [, low, high] = /Heat loss \d+ W\/K \((\d+)–(\d+)\)/.exec(answer.text) ?? [];
  if (low === undefined) expect(answer.text).toMatch(/heat loss cannot be told/);
  else {
    expect(Number(low)).toBeLessThanOrEqual(115);
    expect(Number(high)).toBeGreaterThanOrEqual(105);
  }
  expect(answer.text).toMatch(/never changes what the heater may burn/);
});

it("names what it assumed when it knows nothing", async () => {
  const nobody = await home({});
  const answer = await nobody.say("ana", "When is it warmest if I light 12 kg at six?");
  await nobody.close();
  expect(answer.topic).toBe("heat-curve");
  expect(answer.text).toMatch(/Assumed.*masonry.*heat loss.*outside/);
  expect(answer.text).toMatch(/Warmest after lighting: [\d.]+ h \([\d.]+–[\d.]+\)/);
});

it.each([
  ["if I burn 12 kg at 18:00 when is it warmest?", "18:00", 12],
  ["when is the heater warmest if I burn 10 kg at 17:00?", "17:00", 10],
  ["I burnt 11 kg at 16:30, when is it warmest?", "16:30", 11],
])("takes the time beside the burning as when it is lit: %s", async (words, lit, load_kg) => {
  const answer = await talk.say("ana", words);
  expect(answer.topic).toBe("heat-curve");
  expect(answer.numbers.load_kg).toBe(load_kg);
  expect(answer.pictures[0]?.alt).toContain(`lit Wed 25 Nov, ${lit}.`.replace("Wed 25", lit < "18:00" && /\bif\b/.test(words) ? "Thu 26" : "Wed 25"));
  expect(answer.headline).toMatch(/^Most heat about/);
  expect(answer.text).not.toMatch(/At \w{3} \d+ Nov, 1[678]:\d\d/);
});

it("what an open damper costs comes first when it is what was asked, with carbon monoxide named", async () => {
  const answer = await talk.say("ana", "What does an open damper cost overnight?");
  expect(answer.topic).toBe("heat-curve");
  expect(answer.headline).toMatch(/^Leaving the flue damper open from a black bed till morning costs about [\d.]+ kWh \([\d.]+–[\d.]+\), \d+ % \(\d+–\d+\)/);
  expect(answer.text).toMatch(/never a reason to close early/);
  expect(ids(answer)).toEqual(expect.arrayContaining(["close-flue", "carbon-monoxide"]));
});

it("asked for leave to touch it asks for the hottest spot, and a burn or a child gets its own advice", async () => {
  const leave = await talk.say("ana", "can I touch it?");
  expect(leave.topic).toBe("children-and-clearance");
  expect(leave.question?.text).toMatch(/hottest spot/);
  expect(ids(leave)).toContain("burns");
  expect((await talk.say("ana", "can my toddler touch it?")).text).toMatch(/metre/);
  expect((await talk.say("ana", "I burnt my hand on the glass, can I touch it?")).text).toMatch(/cool running water/i);
});

it("how long it lasts is about warmth after talk of warmth, and the room at an hour is named", async () => {
  await talk.say("ana", "if I burn 12 kg at 18:00 when is it warmest?");
  const lasts = await talk.say("ana", "how long will it last?");
  expect(lasts.topic).toBe("heat-curve");
  expect(lasts.headline).toMatch(/^Half of its greatest output is left \d+ h/);
  const morning = await talk.say("ana", "lit at 18:00 with 12 kg, how warm is the room at 6 in the morning?");
  expect(morning.text).toMatch(/At Thu 26 Nov, 06:00 the room is reckoned at [\d.]+ °C \([\d.]+–[\d.]+\)/);
});
