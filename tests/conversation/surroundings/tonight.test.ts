/** What the house and the weather add to tonight's fire: fans, deep cold, mild weather; and the alarms on record. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { tooWarmToDraw, weatherKind } from "../../../src/firing/weather.ts";
import { gasDensity_kg_per_m3 as density, R_AIR, STANDARD_PRESSURE_PA, staticDraught_Pa } from "../../../src/reckoning/draught.ts";
import { openTalk, type Talk } from "../../support/talk.ts";

const HEATER = { max_load_kg: 15, max_load_source: "sheet", gas_exit: "top", shut_off_damper: true };
const ids = (list: readonly { id: string }[]): string[] => list.map(({ id }) => id);

let talk: Talk;
beforeEach(async () => {
  talk = await openTalk({ now: "2026-11-25T18:00:00Z" });
  await talk.records("ana", { heater: HEATER });
});
afterEach(() => talk.close());

describe("hood and ventilation", () => {
  test("are asked about once, remembered, and said at every lighting", async () => {
    const first = await talk.say("ana", "walk me through a fire");
    expect(ids(first.choices)).toContain("house:vented_hood=yes");
    expect(ids((await talk.choose("ana", "house:vented_hood=yes")).choices)).toContain("house:hood_interlock=no");
    await talk.choose("ana", "house:hood_interlock=no");
    await talk.choose("ana", "house:ventilation=extract");
    await talk.say("ana", "stop the guide");
    const second = await talk.say("ana", "walk me through a fire");
    expect(ids(second.choices).filter((id) => id.startsWith("house:"))).toEqual([]);
    expect(second.text).toMatch(/hood blows outdoors/);
    expect(second.text).toMatch(/only sucks/);
    expect(ids(second.cautions)).toContain("extractor");
  });
  test("not answered, they are not asked again", async () => {
    await talk.say("ana", "walk me through a fire");
    await talk.say("ana", "stop the guide");
    const again = ids((await talk.say("ana", "walk me through a fire")).choices);
    expect(again).not.toContain("house:vented_hood=yes");
  });
});

describe("weather", () => {
  test("deep cold and mild by the day's low (common practice)", () => {
    expect([-30, -15, -14, 0, 9, 10, 18].map(weatherKind)).toEqual(["deep-cold", "deep-cold", null, null, null, "mild-weather", "mild-weather"]);
  });
  test("less than five degrees of difference: a cold 5 m flue makes less than 1 Pa of draught (hydrostatics)", () => {
    const air = (t_C: number) => density(t_C, STANDARD_PRESSURE_PA, R_AIR);
    expect(staticDraught_Pa(5, air(15.5), air(20))).toBeLessThan(1);
    expect(staticDraught_Pa(5, air(10), air(20))).toBeGreaterThan(1.5);
    expect([15, 16].map((low) => tooWarmToDraw(low, 20))).toEqual([false, true]);
  });
  test("deep cold: a second fire, never a bigger one, and the closing rule said again", async () => {
    await talk.records("ana", { weather: { low_C: -24, high_C: -15 }, house: { heat_loss_W_per_K: 400 } });
    const begun = await talk.say("ana", "help me light a fire with 25 kg");
    expect(begun.text).toMatch(/a second fire helps, a bigger one never/);
    expect(begun.text).toMatch(/25 kg is more than this heater may take/);
    expect(ids(begun.cautions)).toContain("close-flue");
  });
  test("the second fire waits for hours and for the first fire's end", async () => {
    await talk.records("ana", { weather: { low_C: -24, high_C: -15 } });
    await talk.say("ana", "walk me through a fire");
    await talk.choose("ana", "guide:lit-now");
    expect((await talk.say("ana", "walk me through a fire")).choices.map(({ id }) => id)).toContain("guide:all-alight");
    await talk.choose("ana", "guide:leave-open");
    expect((await talk.say("ana", "walk me through a fire")).headline).toMatch(/Not yet/);
    await talk.advance("PT12H");
    expect(ids((await talk.say("ana", "walk me through a fire")).choices)).toContain("guide:lit-now");
  });
  test("mild: warm the flue first; too mild: no fire", async () => {
    await talk.records("ana", { weather: { low_C: 11, high_C: 16 } });
    expect((await talk.say("ana", "walk me through a fire")).text).toMatch(/Warm the flue first/);
    await talk.say("ana", "stop the guide");
    await talk.records("ana", { weather: { low_C: 17, high_C: 24 } });
    const refused = await talk.say("ana", "walk me through a fire");
    expect(refused.headline).toMatch(/No fire now/);
    expect(ids(refused.cautions)).toEqual(expect.arrayContaining(["weak-draught", "carbon-monoxide"]));
  });
  test("yesterday's forecast says nothing of tonight", async () => {
    await talk.records("ana", { weather: [{ date: "2026-11-20", low_C: -30, high_C: -20 }] });
    expect((await talk.say("ana", "walk me through a fire")).text).not.toMatch(/Deep cold/);
  });
});

describe("alarms", () => {
  test.each(["when did I test my alarm?", "When was the CO alarm last tested?", "show my alarms", "when does the carbon monoxide detector expire?"])("%s", async (words) => {
    await talk.records("ana", { alarms: { co: { present: true, room: "living room", tested_on: "2026-10-01", ends_on: "2027-01-10" } } });
    const said = await talk.say("ana", words);
    expect(said.headline).toMatch(/tested the carbon monoxide alarm on 1 Oct 2026, 55 days ago/);
    expect(said.text).toMatch(/living room.*due again.*10 Jan 2027 - buy the new one/);
    expect(said.text).toMatch(/Smoke alarm: nothing on record/);
  });
  test("an alarm that sounds is never a question about records", async () => {
    const said = await talk.say("ana", "my CO alarm is going off, when did I test it?");
    expect(said.emergency).toBe(true);
  });
});
