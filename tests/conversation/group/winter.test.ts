/** The group's winter through the whole of Gleed: who is counted when, what is frozen and said, the watcher's attack, quiet hours, forgetting. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { openTalk, type Talk } from "../../support/talk.ts";

/** A Wednesday; Monday of that week is 23 November 2026. */
const NOW = "2026-11-25T18:00:00Z";
const open: Talk[] = [];
afterEach(async () => {
  for (const talk of open.splice(0)) await talk.close();
});
async function start(now = NOW, database = ":memory:"): Promise<Talk> {
  const talk = await openTalk({ now, database });
  open.push(talk);
  return talk;
}

const HEATER = { heater: { max_load_kg: 20, max_load_source: "sheet" } };
const names = (count: number): string[] => Array.from({ length: count }, (_, n) => `m${n}`);

/** Seven fires in the week from this Monday on, at 0 °C: 18 Kd a day, so `load_kg` a day is load/18 kg/Kd. */
const week = (monday: string, load_kg: number, moisture_pct_wet = 17) => ({
  fires: Array.from({ length: 7 }, (_, n) => ({ lit_at: `${Temporal.PlainDate.from(monday).add({ days: n })}T06:00:00Z`, load_kg, moisture_pct_wet, outside_C: 0 })),
});

/** From a Monday evening to the next: on Sunday evening everybody has written down their fires of the week. */
async function lived(talk: Talk, monday: string, people: readonly string[], load_kg = 14, moisture = 17): Promise<Awaited<ReturnType<Talk["advance"]>>> {
  const before = await talk.advance("P6D");
  for (const person of people) expect((await talk.records(person, week(monday, load_kg, moisture))).text).not.toMatch(/future/);
  return [...before, ...(await talk.advance("P1D"))];
}

/** Everybody joins in the week of the 23rd and counts from the 30th on. */
async function joined(talk: Talk, people: readonly string[]): Promise<void> {
  for (const person of people) {
    await talk.records(person, HEATER);
    await talk.say(person, "hello", "valley");
    expect((await talk.say(person, "join the group's winter")).headline).toMatch(/You take part in the winter of valley, from Monday on/);
  }
}
const digests = (sent: Awaited<ReturnType<Talk["advance"]>>) => sent.filter(({ headline }) => /winter of/.test(headline));

describe("the group's winter", () => {
  test("counts from the next week on, and is said once a week where five lie in a band", async () => {
    const talk = await start();
    const people = names(6);
    await joined(talk, people);
    for (const person of people) await talk.records(person, week("2026-11-23", 14));
    // Monday the 30th freezes the week in which they joined: nobody is counted yet
    expect(digests(await talk.advance("P5D"))).toEqual([]);
    expect((await talk.say("m0", "how does the group do?")).headline).toMatch(/Nothing can be shown/);
    const [digest, ...more] = digests(await lived(talk, "2026-11-30", people));
    expect(more).toEqual([]);
    expect(digest?.at).toBe("2026-12-07T18:00:00.000Z");
    expect(digest?.place).toBe("group:valley");
    expect(digest?.text).toMatch(/Wood for each degree day: 0\.75 to 1\.5 kg - at least five/);
    expect(digest?.text).toMatch(/Water in the wood burnt: 15 to 20 % - at least five/);
    expect(digest?.pictures[0]?.alt).toMatch(/week from 30 Nov 2026 in coarse bands/);
    expect(digest?.text).not.toMatch(/\bm\d\b|0\.77|0\.78|14 kg/);
    const own = await talk.say("m0", "how does the group do?");
    expect(own.text).toMatch(/Your own place, for you alone:\n- Wood for each degree day: 0\.75 to 1\.5 kg/);
    expect((await talk.say("stranger", "how does the group do?")).headline).toMatch(/no group of yours/);
  });

  test("four in a band are never shown, and a heater counts once however many fire it", async () => {
    const talk = await start();
    await joined(talk, names(4));
    await talk.say("twin", "hello", "valley");
    await talk.records("twin", { fires_heater_of: "m0" });
    await talk.say("twin", "join the group's winter");
    await talk.advance("P5D");
    expect(digests(await lived(talk, "2026-11-30", names(4)))).toEqual([]);
  });

  test("leaving counts from the next week; being forgotten at once; what was frozen stays and holds nobody", async () => {
    const talk = await start();
    const people = names(5);
    await joined(talk, people);
    await talk.advance("P5D");
    // leaves in the week that is being counted: still counted
    expect((await talk.say("m4", "leave the group's winter")).headline).toMatch(/no longer take part/);
    expect(digests(await lived(talk, "2026-11-30", people))).toHaveLength(1);
    expect(digests(await lived(talk, "2026-12-07", people))).toEqual([]);
    expect((await talk.say("m4", "join the group's winter")).headline).toMatch(/from Monday on/);
    expect(digests(await lived(talk, "2026-12-14", people))).toEqual([]);
    expect(digests(await lived(talk, "2026-12-21", people))).toHaveLength(1);
    await talk.advance("P6D");
    for (const person of people) await talk.records(person, week("2026-12-28", 14));
    await talk.choose("m3", "data:delete-yes");
    expect(await talk.kept("m3")).toBeNull();
    expect(digests(await talk.advance("P1D"))).toEqual([]);
    expect((await talk.kept("m0"))?.winter).toMatchObject([{ from_week: "2026-W49" }]);
  });

  test("a frozen week stays as it is, whatever is written down later", async () => {
    const talk = await start();
    await joined(talk, names(6));
    await talk.advance("P5D");
    await lived(talk, "2026-11-30", names(6));
    const before = (await talk.say("m5", "the group's winter", "valley")).text;
    for (const person of names(3)) await talk.records(person, week("2026-11-30", 19));
    expect((await talk.say("m5", "the group's winter", "valley")).text.split("Your own")[0]).toBe(before.split("Your own")[0]);
  });

  test("never at night; a moderator sets day and hour, or stops it", async () => {
    const talk = await start();
    await joined(talk, names(5));
    expect((await talk.say("m0", "group digest on Sunday at 23:00", "valley", { moderates: true })).headline).toMatch(/between 8 and 21/);
    expect((await talk.say("m0", "group digest on Sunday at 10:00", "valley")).headline).toMatch(/Only a moderator/);
    expect((await talk.say("m0", "group digest on Sunday at 10:00", "valley", { moderates: true })).headline).toMatch(/on Sunday at 10:00/);
    await talk.advance("P5D");
    const sent = [...(await lived(talk, "2026-11-30", names(5))), ...(await talk.advance("P6D"))];
    expect(digests(sent).map(({ at }) => at.slice(0, 16))).toEqual(["2026-12-13T10:00"]);
    await talk.say("m0", "no group digest", "valley", { moderates: true });
    await talk.advance("P1D");
    await lived(talk, "2026-12-14", names(5));
    expect(digests(await talk.advance("P7D"))).toEqual([]);
    expect((await talk.say("m0", "how does the group do?")).headline).toMatch(/week from 14 Dec/);
  });
});

test("a digest held up into the night waits for the morning, and is said once", async () => {
  const folder = mkdtempSync(join(tmpdir(), "gleed-winter-"));
  try {
    const before = await start(NOW, join(folder, "gleed.db"));
    await joined(before, names(5));
    await before.advance("P10D");
    for (const person of names(5)) await before.records(person, week("2026-11-30", 14));
    await before.close();
    // down over Monday evening, back on Tuesday at two in the morning
    const after = await start("2026-12-08T02:00:00Z", join(folder, "gleed.db"));
    open.splice(open.indexOf(before), 1);
    expect(digests(await after.advance("PT0S"))).toEqual([]);
    expect(digests(await after.advance("P1D")).map(({ at }) => at.slice(0, 16))).toEqual(["2026-12-08T08:00"]);
  } finally {
    await Promise.all(open.splice(0).map((talk) => talk.close()));
    rmSync(folder, { recursive: true, force: true });
  }
});

describe("a watcher who is everybody but one", () => {
  /** Three months of digests, with sybils who join, leave and burn as they please; the victim's figures stay within a band or not. */
  async function watch(victim: (week: number) => { load_kg: number; moisture: number }): Promise<string> {
    const talk = await start();
    const sybils = names(7);
    await joined(talk, ["victim", ...sybils.slice(0, 5)]);
    await talk.advance("P5D");
    const seen: string[] = [];
    for (let n = 0; n < 8; n++) {
      const monday = Temporal.PlainDate.from("2026-11-30").add({ days: 7 * n }).toString();
      const { load_kg, moisture } = victim(n);
      if (n === 2) await joined(talk, sybils.slice(5));
      if (n === 4) await talk.say("m1", "leave the group's winter");
      if (n === 5) await talk.say("m1", "join the group's winter");
      seen.push(digests(await talk.advance("P6D")).map(({ text }) => text).join("|"));
      await talk.records("victim", week(monday, load_kg, moisture));
      for (const [i, sybil] of sybils.entries()) if (i < 5 || n > 2) await talk.records(sybil, week(monday, i < 4 || n % 2 === 0 ? 14 + (n % 3) : 4, 16 + (i === 4 ? 8 * (n % 2) : 0)));
      seen.push(digests(await talk.advance("P1D")).map(({ text }) => text).join("|"));
    }
    return seen.join("\n");
  }

  test("sees the same for every figure of the last one within a band", async () => {
    // 13.5 to 27 kg a day over 18 Kd lie in the band from 0.75 to 1.5 kg/Kd; 15 to 20 % in the middle band of water
    const low = await watch(() => ({ load_kg: 13.6, moisture: 15.1 }));
    const high = await watch((n) => ({ load_kg: n % 2 ? 19.9 : 14, moisture: n % 3 ? 19.9 : 15.2 }));
    expect(low).toBe(high);
    expect(low).toMatch(/0\.75 to 1\.5 kg - at least five/);
    // the attack is one: another band can be told
    expect(await watch(() => ({ load_kg: 5, moisture: 25 }))).not.toBe(low);
  });
});
