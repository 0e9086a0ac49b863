/** The plan keeps every limit, names what it lacks, and says why in two sentences. */
import { expect, it } from "vitest";
import { ANA, home, ids, NOW } from "./homes.ts";

const HOUR_MS = 3_600_000;

it("plans inside limits, bedtime and spacing, with a picture", async () => {
  const talk = await home();
  const answer = await talk.say("ana", "Plan my fires for the week");
  await talk.close();
  expect(answer.topic).toBe("fire-plan");
  expect(ids(answer)).toEqual(expect.arrayContaining(["over-firing", "close-flue"]));
  expect(answer.numbers.load_kg).toBeLessThanOrEqual(16);
  expect(answer.numbers.load_kg).toBeGreaterThanOrEqual(8);
  const fires = [...answer.text.matchAll(/^\w{3} (\d+) Nov, (\d\d):(\d\d) \| ([\d.]+) kg$/gm)].map(([, day, hour, minute, kg]) => ({ at_ms: Date.parse(`2026-11-${day}T${hour}:${minute}:00+02:00`), hour: Number(hour), load_kg: Number(kg) }));
  expect(fires.length).toBeGreaterThan(1);
  fires.forEach((fire, i) => {
    expect(fire.load_kg).toBeGreaterThanOrEqual(8);
    expect(fire.load_kg).toBeLessThanOrEqual(16);
    expect(fire.hour).toBeGreaterThanOrEqual(6);
    expect(fire.hour).toBeLessThanOrEqual(20);
    const before = fires[i - 1];
    if (before) expect(fire.at_ms - before.at_ms).toBeGreaterThanOrEqual(12 * HOUR_MS);
    expect(fires.filter((one) => one.at_ms <= fire.at_ms && one.at_ms > fire.at_ms - 24 * HOUR_MS).reduce((sum, one) => sum + one.load_kg, 0)).toBeLessThanOrEqual(32);
  });
  expect(answer.numbers.wood_kg).toBeCloseTo(fires.reduce((sum, fire) => sum + fire.load_kg, 0), 0);
  expect(answer.pictures[0]?.alt).toMatch(/Plan for 4 days with −12 °C to 4 °C outside/);
  expect(answer.text).toMatch(/Coldest: [\d.]+ °C \([\d.]+–[\d.]+\)/);
});

it("counts what was burnt already: the next fire keeps its distance to the last", async () => {
  const lit = new Date(Date.parse(NOW) - HOUR_MS).toISOString();
  const talk = await home({ ...ANA, fires: [{ lit_at: lit, load_kg: 16 }] });
  const answer = await talk.say("ana", "Plan my fires for the week");
  await talk.close();
  const first = /^\w{3} (\d+) Nov, (\d\d:\d\d) \|/m.exec(answer.text);
  expect(Date.parse(`2026-11-${first?.[1]}T${first?.[2]}:00+02:00`)).toBeGreaterThanOrEqual(Date.parse(lit) + 12 * HOUR_MS);
});

it("takes the days that were said before those on record", async () => {
  const talk = await home();
  const answer = await talk.say("ana", "Plan my fires: Mon -4/2, Tue -9/-1, Wed -11/-5");
  await talk.close();
  expect(answer.pictures[0]?.alt).toMatch(/Plan for 3 days with −11 °C to 2 °C/);
});

it.each([
  [{}, /largest load.*lows and highs.*house/],
  [{ ...ANA, weather: [] }, /lows and highs/],
  [{ ...ANA, house: {} }, /house's size/],
])("names what is missing instead of guessing (%#)", async (records, missing) => {
  const talk = await home(records);
  const answer = await talk.say("ana", "Plan my fires for the week");
  await talk.close();
  expect(answer.topic).toBe("fire-plan");
  expect(answer.headline).toMatch(missing);
  expect(answer.numbers).toEqual({});
  expect(ids(answer)).toContain("over-firing");
});

it("plans nothing with wet wood", async () => {
  const talk = await home({ ...ANA, wood: [{ species: "birch", moisture_pct_wet: 34 }] });
  const answer = await talk.say("ana", "Plan my fires for the week");
  await talk.close();
  expect(answer.headline).toMatch(/too wet to burn/);
});

it.each(["17:20", "18:35", "19:30", "21:05", "22:50"])("asked at %s it plans all the days that are known, from now on", async (clock) => {
  const talk = await home({}, `2026-11-25T${clock}:00+02:00`);
  await talk.records("ana", ANA);
  const answer = await talk.say("ana", "plan my fires");
  await talk.close();
  const days = new Set([...answer.text.matchAll(/^\w{3} (\d+) Nov, \d\d:\d\d \| [\d.]+ kg$/gm)].map(([, day]) => day));
  expect(answer.pictures[0]?.alt).toMatch(/Plan for 4 days/);
  expect([...days]).toEqual(expect.arrayContaining(["26", "27"]));
  expect(answer.numbers.hours_below_h).toBeLessThan(6);
});

it("asked in the evening with nothing but tonight's weather it takes tomorrow to be alike, and says so", async () => {
  const talk = await home({ ...ANA, weather: { low_C: -6, high_C: 0 } }, "2026-11-25T19:40:00+02:00");
  const answer = await talk.say("ana", "plan my fires");
  await talk.close();
  expect(answer.pictures[0]?.alt).toMatch(/Plan for 2 days with −6 °C to 0 °C/);
  expect(answer.text).toMatch(/^Thu 26 Nov, \d\d:00 \| /m);
  expect(answer.text).toMatch(/Assumed[^\n]*today's weather for all of those days/);
});

it("plans tonight with the days that are named after it, seven in all, above freezing too", async () => {
  const talk = await home({ ...ANA, weather: [] });
  const answer = await talk.say("ana", "plan my fires: tonight low -5 high 1, tomorrow -7/0, Fri -9/-2, Sat -4/2, Sun 0/5, Mon 1/6, Tue 2/9");
  await talk.close();
  expect(answer.pictures[0]?.alt).toMatch(/Plan for 7 days with −9 °C to 9 °C/);
});

it("days named after a gap are planned alone", async () => {
  const talk = await home({ ...ANA, weather: { low_C: -8, high_C: -3 } });
  const answer = await talk.say("ana", "plan my fires: Sat -4/2, Sun -6/1");
  await talk.close();
  expect(answer.pictures[0]?.alt).toMatch(/Plan for 2 days with −6 °C to 2 °C/);
});
