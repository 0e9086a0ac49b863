/** The organiser's lists: who may open them, what members add by a press or a plain word, and what the sums are. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { openTalk, type Said, type Talk } from "../../support/talk.ts";

const MODERATOR: Said = { moderates: true };
let talk: Talk;
beforeEach(async () => {
  talk = await openTalk({ networks: ["second"] });
  for (const person of ["ana", "ben", "cid"]) await talk.say(person, "hello", "valley");
});
afterEach(() => talk.close());
const told = async (): Promise<string[]> => (await talk.advance("PT0S")).map(({ place, headline }) => `${place}: ${headline}`);

describe("the joint order", () => {
  beforeEach(async () => {
    expect((await talk.say("ben", "open a joint wood order", "valley")).headline).toMatch(/Only a moderator/);
    expect((await talk.say("ben", "add 3 m3 to the joint order")).headline).toMatch(/No joint order is open/);
    expect((await talk.say("ana", "open a joint wood order", "valley", MODERATOR)).headline).toMatch(/open for valley/);
    expect(await told()).toEqual(["group:valley: A joint wood order is open for valley."]);
  });

  test("any unit is summed in solid and stacked cubic metres and dry kilograms", async () => {
    const one = await talk.say("ben", "add 3 stacked m3 of birch to the joint order");
    // birch: 0.62 solid in a stacked cubic metre, 325.5 kg of dry wood (calculators' own figures, checked in tests/published)
    expect(one.numbers).toMatchObject({ volume_m3_stacked: 3, volume_m3_solid: 1.86 });
    expect(one.numbers.dry_kg).toBeCloseTo(976.5, 0);
    await talk.say("cid", "add 2 cords of birch to the joint order");
    await talk.say("ana", "Put me down for 5 loose m3 of birch in the joint order.");
    await talk.say("ana", "add 500 kg of birch at 20 % wet basis to the joint order");
    const all = await talk.say("ben", "show the joint order", "valley");
    // 3 + 2 * 3.6246 + 5 / 1.48 + 400 / 325.5
    expect(all.numbers.volume_m3_stacked).toBeCloseTo(3 + 7.249 + 3.378 + 1.229, 1);
    expect(all.numbers.volume_m3_solid).toBeCloseTo(0.62 * 14.856, 1);
    expect(all.numbers.dry_kg).toBeCloseTo(325.5 * 14.856, -1);
    expect(all.text).toMatch(/ben \| 3 m³/);
    expect(all.headline).toMatch(/3 members/);
  });

  test("added twice is summed, taken out is gone, closed is said in every place with the sum", async () => {
    await talk.say("ben", "add 3 m3 to the joint order");
    expect((await talk.say("ben", "add 1 m3 to the joint order")).headline).toMatch(/4 m³ stacked/);
    await talk.say("cid", "add 2 m3 to the joint order");
    expect((await talk.choose("ben", "list:leave=order")).headline).toMatch(/out of the joint order/);
    expect((await talk.say("ben", "close the joint order", "valley")).headline).toMatch(/Only a moderator/);
    expect((await talk.say("ana", "close the joint order", "valley", MODERATOR)).numbers.volume_m3_stacked).toBeUndefined();
    const [closed] = await talk.advance("PT0S");
    expect(closed?.headline).toMatch(/closed, with 1 member/);
    expect(closed?.numbers.volume_m3_stacked).toBe(2);
    expect(closed?.text).not.toMatch(/cid/);
    expect((await talk.say("cid", "show the joint order")).headline).toMatch(/No joint order/);
  });

  test("no amount, or an impossible one", async () => {
    expect((await talk.say("ben", "add some wood to the joint order")).headline).toMatch(/How much/);
    expect((await talk.say("ben", "add 900 m3 to the joint order")).headline).toMatch(/200 solid/);
  });
});

describe("sweep day", () => {
  test("is set by a moderator, joined by a press, reminded of the evening before, moved and called off", async () => {
    expect((await talk.say("ben", "sweep day on 5 December", "valley")).headline).toMatch(/Only a moderator/);
    expect((await talk.say("ana", "sweep day on 5 December", "valley", MODERATOR)).headline).toMatch(/5 Dec 2026/);
    const [said] = await talk.advance("PT0S");
    const join = said?.choices.find(({ label }) => label === "Put me on the list")?.id ?? "";
    expect((await talk.choose("ben", join)).headline).toMatch(/on the list for 5 Dec/);
    await talk.say("cid", "I join the sweep day");
    expect((await talk.say("ana", "who joins the sweep day?")).text).toMatch(/- ben\n- cid/);
    await talk.say("ana", "sweep day on 8 December", "valley", MODERATOR);
    await talk.choose("cid", join.replace("join", "leave"));
    const reminders = (await talk.advance("P20D")).filter(({ headline }) => /sweep comes/i.test(headline));
    expect(reminders.map(({ at, place }) => `${place} ${at.slice(0, 16)}`)).toEqual(["private:ben 2026-12-07T18:00"]);
    expect(reminders[0]?.hazard).toBe(true);
    await talk.say("ana", "sweep day on 4 January", "valley", MODERATOR);
    await talk.say("ana", "cancel the sweep day", "valley", MODERATOR);
    expect((await talk.advance("P30D")).filter(({ headline }) => /sweep comes/i.test(headline))).toEqual([]);
  });

  test("without a day it asks for one", async () => {
    expect((await talk.say("ana", "sweep day on whenever", "valley", MODERATOR)).headline).toMatch(/Which day/);
    expect((await talk.say("ben", "I join the sweep day")).headline).toMatch(/No sweep day is set/);
  });
});

test("alarm-test day: a reminder to all who want one, and who that is stays with them", async () => {
  await talk.say("ana", "alarm test day on 6 December", "valley", MODERATOR);
  await talk.advance("PT0S");
  await talk.say("ben", "remind me of the alarm test day");
  await talk.records("cid", { asleep: { from: "22:00", to: "11:00" } });
  await talk.say("cid", "remind me of the alarm day", "valley");
  expect((await talk.say("ana", "when is the alarm test day?", "valley")).text).not.toMatch(/ben|cid/);
  const reminders = (await talk.advance("P14D")).filter(({ headline }) => /^Alarm-test day/.test(headline));
  expect(reminders.map(({ at, place }) => `${place} ${at.slice(0, 16)}`)).toEqual(["private:ben 2026-12-06T10:00", "private:cid 2026-12-06T11:00"]);
});

describe("the meter", () => {
  test("who has it, since when, and who is next", async () => {
    expect((await talk.say("ben", "who has the meter?")).headline).toMatch(/Nobody/);
    expect((await talk.say("ben", "I have the meter")).headline).toMatch(/Noted down/);
    expect((await talk.say("cid", "I need the moisture meter")).headline).toMatch(/number 1 in line/);
    await talk.advance("PT1M");
    await talk.say("ana", "put me in line for the meter");
    const who = await talk.say("ana", "Who has the meter?", "valley");
    expect(who.headline).toBe("ben has the meter, since 25 Nov 2026.");
    expect(who.text).toMatch(/Next in line: cid and ana/);
    expect((await talk.say("cid", "I gave the meter on")).headline).toMatch(/do not have the meter/);
    expect((await talk.say("ben", "I gave the meter on")).headline).toMatch(/cid is next and is told/);
    expect((await told()).slice(-1)).toEqual(["private:cid: The meter is free, and you are next in line."]);
    await talk.choose("cid", "list:have=meter");
    expect((await talk.say("ben", "who has the meter?")).text).toMatch(/^cid has the meter.*\nNext in line: ana\./);
  });

  test("two who take it at once: one has it", async () => {
    await Promise.all([talk.say("ben", "I have the meter"), talk.say("cid", "I have the meter"), talk.say("ana", "I have the meter")]);
    const lists = await Promise.all(["ana", "ben", "cid"].map(async (person) => (await talk.kept(person))?.lists as { has?: boolean }[]));
    expect(lists.flat().filter(({ has }) => has)).toHaveLength(1);
  });

  test("without a group, or in two, nothing is taken for granted", async () => {
    expect((await talk.say("dora", "who has the meter?")).topic).not.toBe("help");
    await talk.say("ben", "hello", "hill");
    const asked = await talk.say("ben", "I have the meter");
    expect(asked.choices.map(({ label }) => label).sort()).toEqual(["hill", "valley"]);
    const shown = await talk.choose("ben", asked.choices.find(({ label }) => label === "hill")?.id ?? "");
    await talk.choose("ben", shown.choices.find(({ label }) => label === "I have it now")?.id ?? "");
    expect((await talk.say("ana", "who has the meter?")).headline).toMatch(/Nobody/);
    expect((await talk.say("ben", "who has the meter?", "hill")).headline).toMatch(/^ben has/);
  });
});
