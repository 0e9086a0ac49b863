/** Seasoning, the stock and buying, each with its range. */
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Talk } from "../../support/talk.ts";
import { ANA, home, NOW } from "./homes.ts";

let talk: Talk;
beforeAll(async () => {
  talk = await home();
});
afterAll(() => talk.close());

it("gives a range of dates, never a bare one, and the floor of the place", async () => {
  const answer = await talk.say("ana", "When will oak split now be ready?");
  expect(answer.topic).toBe("seasoning");
  expect(answer.headline).toMatch(/From .* at best, or else only after one winter more, by .*; most likely about/);
  expect(answer.numbers.floor_pct_wet).toBeGreaterThan(8);
  expect(answer.numbers.floor_pct_wet).toBeLessThan(14);
  expect(answer.text).toMatch(/Little dries in winter/);
  expect(answer.pictures[0]?.alt).toMatch(/Drying forecast: 47 % water/);
});

it("reads size, start, day and place from the message", async () => {
  const answer = await talk.say("ana", "split 10 cm birch, start 45%, stacked 20 April, 47.1 N 11.4 E, when dry");
  expect(answer.text).toMatch(/Innsbruck/);
  expect(answer.pictures[0]?.alt).toMatch(/45 % water on 20 Apr 2026/);
  expect(answer.text).not.toMatch(/splits .* thick/);
});

it("names no date for uncovered wood", async () => {
  const answer = await talk.say("ana", "beech rounds under nothing, how long to season");
  expect(answer.headline).toMatch(/No date/);
  expect(answer.text).toMatch(/Split it now/);
});

it("says until when the wood lasts, from what was said", async () => {
  const answer = await talk.say("ana", "1.8 t remaining, 13 kg/day, will it last?");
  expect(answer.topic).toBe("wood-stock");
  expect(answer.numbers).toMatchObject({ wood_kg: 1800, use_per_day_kg: 13 });
  // at a steady 13 kg it would be 138 days; December to February are colder than late November
  expect(answer.numbers.lasts_day).toBeLessThan(138);
  expect(answer.numbers.lasts_day).toBeGreaterThan(110);
  expect(answer.headline).toMatch(/Until about \d+ \w+ 2027; \d+ \w+ 2027 at the earliest/);
});

it("takes the pace from one's own fires, and shows the season", async () => {
  const fires = Array.from({ length: 28 }, (_, i) => ({ lit_at: new Date(Date.parse("2026-11-25T04:00:00Z") - i * 86_400_000).toISOString(), load_kg: 12 }));
  const burning = await home({ ...ANA, fires });
  const answer = await burning.say("ana", "Will my wood last the winter?");
  await burning.close();
  expect(answer.text).toMatch(/Your last fires took 12\.\d kg/);
  expect(answer.pictures.map(({ alt }) => alt.split(":")[0])).toEqual(["Wood left", "Wood burnt so far"]);
  expect(answer.pictures[1]?.alt).toMatch(/336 kg in 28 fires over 5 weeks/);
});

it("asks for what it lacks", async () => {
  const nobody = await home({});
  expect((await nobody.say("ana", "Will my wood last the winter?")).question?.id).toBe("wood-left");
  expect((await nobody.say("ana", "2.5 m3 left. enough wood until spring?")).question?.id).toBe("wood-use");
  await nobody.close();
});

it("puts offers on one footing: the kilowatt hour that reaches the room", async () => {
  const answer = await talk.say("ana", "Which wood is cheaper to buy, $350 a cord or $180 per ton at 30%?");
  expect(answer.topic).toBe("wood-volume");
  // a tonne of birch at 30 %: EN ISO 18125 gives about 3.47 kWh/kg, at 80 % 2780 kWh: 0.065 a kWh
  expect(answer.text).toMatch(/\$180 per ton at 30%: 0\.065 \$/);
  expect(answer.text).toMatch(/\$350 a cord: 0\.07\d \$ \(0\.0\d+–0\.\d+\)/);
  expect(answer.text).toMatch(/By weight you pay for water/);
  expect(answer.text).toMatch(/30 % on most pin meters is dry basis, which is 23 % wet basis/);
});

it("prices a measured stack by the cubic metre", async () => {
  const answer = await talk.say("ana", "stack 6 m x 1.8 m x 33 cm, price 480, what is that per cubic metre");
  // 6 x 1.8 x 0.33 = 3.564 m3: 134.7 each
  expect(answer.text).toMatch(/135 +a stacked cubic metre/);
});

it("does not compare bags and crates nobody measured", async () => {
  const answer = await talk.say("ana", "He quoted 95 a bulk bag or 140 a crate. Which would you take?");
  expect(answer.headline).toMatch(/without a measure/);
  expect(answer.text).toMatch(/95 a bulk bag and 140 a crate/);
});

it("the fires come with a picture of the season once there are weeks of them", async () => {
  const fires = Array.from({ length: 24 }, (_, i) => ({ lit_at: new Date(Date.parse(NOW) - (i + 1) * 26 * 3_600_000).toISOString(), load_kg: 10 }));
  const talk = await home({ ...ANA, fires });
  const many = await talk.say("ana", "show my fires");
  await talk.close();
  expect(many.topic).toBe("show-fires");
  expect(many.pictures.map((one) => one.alt).join()).toMatch(/240 kg in 24 fires over 5 weeks/);
  const other = await home({ ...ANA, fires: fires.slice(0, 2) });
  expect((await other.say("ana", "show my fires")).pictures).toEqual([]);
  await other.close();
});
