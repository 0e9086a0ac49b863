/** Reminders by talking, through the whole of Gleed: set, said, put off, done; quiet hours, rooms, downtime. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openTalk, type Talk } from "../support/talk.ts";

const ANA = {
  country: "FI", timezone: "Europe/Helsinki", latitude: 60.2, longitude: 24.9, asleep: { from: "22:30", to: "06:30" },
  heater: { kind: "contraflow", max_load_kg: 16, max_load_source: "sheet", shut_off_damper: true, grate: false },
  upkeep: { swept_on: "2026-09-01" }, alarms: { co: { present: true, tested_on: "2026-11-24", ends_on: "2031-05-01" } },
};
let talk: Talk;
beforeEach(async () => {
  talk = await openTalk({ now: "2026-11-25T16:00:00Z" });
  await talk.records("ana", ANA);
});
afterEach(() => talk.close());

const at = (list: readonly { at: string; headline: string }[]): string[] => list.map((one) => `${one.at.slice(0, 16)} ${one.headline}`);
const named = (list: readonly { at: string; headline: string }[], words: string): string[] => at(list).filter((one) => one.includes(words));

describe("setting one", () => {
  it.each([
    ["remind me to weigh the basket every first Sunday at 9", "weigh the basket", "2026-12-06T07:00"],
    ["remind me to book the sweep on 1 August", "book the sweep", "2027-08-01T06:00"],
    ["please remind me tomorrow at 7 to look at the stack", "look at the stack", "2026-11-26T05:00"],
    ["set a reminder for 3 December at 18:30: order wood", "order wood", "2026-12-03T16:30"],
    ["remind me every month to look at the gasket", "look at the gasket", "2026-12-25T07:00"],
    ["remind me in 20 minutes to ring the neighbour", "ring the neighbour", "2026-11-25T16:20"],
    ["remind me on the 31st of every month to weigh the basket", "weigh the basket", "2026-11-30T07:00"],
    ["remind me to call the mason at 5", "call the mason", "2026-11-26T15:00"],
  ])("%s", async (words, what, due) => {
    const answer = await talk.say("ana", words);
    expect(answer.topic).toBe("reminder-set");
    expect(answer.headline).toContain(what);
    const said = await talk.advance("P300D");
    expect(at(said.filter(({ headline }) => headline === what))[0]).toContain(due);
  });

  it("asks for what is missing, once, and takes a button or words", async () => {
    expect((await talk.say("ana", "remind me to weigh the basket")).question?.id).toBe("reminder-when");
    expect((await talk.say("ana", "every month")).headline).toContain("every month");
    expect((await talk.say("ana", "remind me")).question?.id).toBe("reminder-what");
    expect((await talk.say("ana", "weigh the ash")).question?.id).toBe("reminder-when");
    expect((await talk.choose("ana", "reminder:in=week")).headline).toContain("2 Dec");
  });
  it("a message with a topic of its own is no answer to that question", async () => {
    await talk.say("ana", "remind me to weigh the basket");
    expect((await talk.say("ana", "log: 12 kg birch 17 % wet basis, lit 18:10")).topic).toBe("log-fire");
  });
  it("before winter is reckoned from the season, early enough to book", async () => {
    const answer = await talk.say("ana", "remind me before winter to call the sweep");
    expect(answer.text).toContain("29 Jun");
    expect((await talk.say("bob", "remind me before winter to call the sweep")).headline).toContain("do not know when your season is");
  });
  it("a time that is over is said so", async () => {
    expect((await talk.say("ana", "remind me yesterday at 9 to weigh the basket")).text).toContain("has passed");
  });
});

describe("a clock never says that a bed is black", () => {
  it("when it is set, when it is said and when it comes late: look first, with the cautions", async () => {
    const set = await talk.say("ana", "remind me at 23:30 to close the damper");
    expect(set.cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(["close-flue", "carbon-monoxide"]));
    const [said] = await talk.advance("PT8H");
    expect(said?.at).toBe("2026-11-25T21:30:00.000Z");
    expect(said?.question?.text).toContain("What you see decides");
    expect(said?.cautions.map(({ id }) => id)).toContain("close-flue");
  });
});

describe("quiet hours", () => {
  it("a reminder waits for the morning and says when it was for", async () => {
    expect((await talk.say("ana", "remind me at 23:30 to write to the builder")).text).toContain("You sleep then");
    const said = await talk.advance("PT14H");
    expect(at(said)).toEqual(["2026-11-26T04:30 write to the builder"]);
    expect(said[0]?.text).toContain("23:30");
  });
  it("a guide's check-in does not wait", async () => {
    await talk.records("ana", { asleep: { from: "17:00", to: "06:30" }, heater: { gas_exit: "top" } });
    await talk.say("ana", "walk me through a fire");
    await talk.choose("ana", "guide:lit-now");
    const said = await talk.advance("PT2H");
    expect(said.filter(({ topic }) => topic === "light-fire").length).toBeGreaterThan(0);
  });
});

describe("clocks that change", () => {
  it("nine in the morning stays nine in the morning", async () => {
    await talk.say("ana", "remind me every Sunday at 9 to weigh the basket");
    const said = named(await talk.advance("P160D"), "weigh the basket");
    expect(said.filter((one) => one.startsWith("2027-03-21") || one.startsWith("2027-03-28"))).toEqual(["2027-03-21T07:00 weigh the basket", "2027-03-28T06:00 weigh the basket"]);
    expect(new Set(said).size).toBe(said.length);
  });
  it("somebody who moves keeps their morning", async () => {
    await talk.say("ana", "remind me every day at 9 to weigh the basket");
    await talk.advance("PT20H");
    await talk.records("ana", { timezone: "Australia/Hobart", latitude: -42.9, longitude: 147.3 });
    const said = named(await talk.advance("P4D"), "weigh the basket");
    expect(said.at(-1)?.slice(11, 16)).toBe("22:00");
  });
});

describe("done, later, gone", () => {
  it("done writes the record and waits for the next time", async () => {
    await talk.say("ana", "remind me to test the CO alarm every first Sunday at 9");
    await talk.advance("P12D");
    const done = await talk.say("ana", "done");
    expect(done.text).toMatch(/CO alarm tested, 7 Dec 2026/);
    expect((await talk.say("ana", "when did I test my CO alarm?")).text).toContain("7 Dec 2026");
    expect(named(await talk.advance("P30D"), "test the CO alarm")).toEqual(["2027-01-03T07:00 test the CO alarm"]);
  });
  it("booked is not swept", async () => {
    await talk.say("ana", "remind me on 3 December to book the sweep");
    await talk.advance("P10D");
    expect((await talk.say("ana", "done")).headline).toContain("Done");
    expect((await talk.say("ana", "when is the sweep due?")).text).toContain("1 Sept 2026");
  });
  it("sweeping the yard is not sweeping the flue, and a new battery is no test", async () => {
    await talk.say("ana", "remind me on 3 December to sweep the yard");
    await talk.say("ana", "remind me on 4 December to change the battery of the CO alarm");
    await talk.advance("P12D");
    expect((await talk.say("ana", "done with the yard")).text).not.toContain("Flue");
    expect((await talk.say("ana", "the battery is done")).text).not.toContain("tested");
  });
  it("an alarm of which nobody said whether it smells gas or smoke is asked about", async () => {
    await talk.say("bob", "remind me tomorrow at 9 to test the alarm");
    await talk.advance("P1D");
    const asked = await talk.say("bob", "done");
    expect(asked.question?.id).toBe("which-alarm");
    expect((await talk.choose("bob", "upkeep:done=smoke-test")).headline).toContain("Smoke alarm tested");
    expect((await talk.say("bob", "when did I test my CO alarm?")).text).toContain("Carbon monoxide alarm: nothing on record");
  });
  it.each([["snooze it for 3 days", "P3DT1H", "2026-11-29T"], ["later please, in 2 hours", "PT3H", "2026-11-26T09:"], ["postpone the reminder by a week", "P8D", "2026-12-03T"]])("%s", async (words, wait, due) => {
    await talk.say("ana", "remind me tomorrow at 9 to weigh the basket");
    await talk.advance("PT15H");
    expect((await talk.say("ana", words)).topic).toBe("reminder-done");
    const [again] = named(await talk.advance(wait), "weigh the basket");
    expect(again).toContain(due);
  });
  it("by name or number, and asks which when it cannot tell", async () => {
    await talk.say("ana", "remind me on 3 December to weigh the basket");
    await talk.say("ana", "remind me on 4 December to order wood");
    expect((await talk.say("ana", "remove the reminder about wood")).headline).toContain("order wood");
    await talk.say("ana", "remind me on 5 December to ring the neighbour");
    expect((await talk.say("ana", "delete reminder 2")).headline).toContain("ring the neighbour");
    await talk.say("ana", "remind me on 5 December to paint the bench");
    expect((await talk.say("ana", "cancel the reminder")).question?.id).toBe("reminder-which");
    expect(named(await talk.advance("P12D"), "order wood")).toEqual([]);
  });
  it("an old button of a reminder that is gone says so", async () => {
    expect((await talk.choose("ana", "reminder:done=nothing")).headline).toContain("No reminder is open");
  });
});

describe("rooms", () => {
  it("what is set in a room is said there, and anybody there may tick it off; private ones stay private", async () => {
    await talk.say("ana", "remind us every Sunday at 18:00 to sweep the yard", "village");
    await talk.say("ana", "remind me tomorrow at 9 to hide the presents");
    const listed = await talk.say("bob", "show our reminders", "village");
    expect(listed.text).toContain("sweep the yard");
    expect((await talk.say("ana", "show our reminders", "village")).text).not.toContain("presents");
    expect(listed.audience).toBe("room");
    await talk.advance("P5D");
    expect((await talk.say("bob", "done", "village")).headline).toContain("sweep the yard");
    expect((await talk.say("cem", "show my reminders")).headline).toContain("no reminders");
  });
});

describe("the list and the calendar", () => {
  it("says what, when and how often", async () => {
    await talk.say("ana", "remind me every 2 weeks on Friday at 8 to weigh the basket");
    await talk.say("ana", "remind me every first Sunday at 9 to look at the stack");
    const list = await talk.say("ana", "show my reminders");
    expect(list.text).toContain("every month on the first Sunday");
    expect((await talk.choose("ana", "reminder:calendar")).text).toContain("reminders.ics");
  });
});

describe("upkeep nobody asked about", () => {
  it("the sweep is spoken of after the last fire, once, and not when it was swept", async () => {
    const year = await talk.advance("P210D");
    expect(named(year, "Time to book the sweep")).toEqual(["2027-06-14T07:00 Time to book the sweep. The flue is due by 24 Aug 2027."]);
    expect((await talk.say("ana", "the sweep was here today")).headline).toContain("Flue swept");
    expect(named(await talk.advance("P180D"), "sweep")).toEqual([]);
  });
  it("can be silenced, and spoken to again", async () => {
    await talk.choose("ana", "upkeep:silent");
    expect(at(await talk.advance("P300D"))).toEqual([]);
    await talk.choose("ana", "upkeep:speak");
    expect((await talk.advance("P30D")).length).toBeGreaterThan(0);
  });
  it("swept on a date, an alarm tested, and what is still to come", async () => {
    expect((await talk.say("ana", "swept on 3 October")).headline).toContain("3 Oct 2026");
    expect((await talk.say("ana", "I tested the CO alarm yesterday")).headline).toContain("24 Nov 2026");
    expect((await talk.say("ana", "undo")).headline).toMatch(/back|undone/i);
    expect((await talk.say("ana", "I have not tested the alarm yet")).headline).not.toContain("Written down");
  });
  it("black glass three times brings the sweep forward", async () => {
    for (const _ of [1, 2, 3]) {
      await talk.say("ana", "the glass went black again last night");
      await talk.say("ana", "cancel");
      await talk.advance("P1D");
    }
    expect((await talk.say("ana", "when is the sweep due?")).text).toContain("The glass went black");
  });
});
