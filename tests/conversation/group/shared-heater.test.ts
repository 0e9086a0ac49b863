/** Firing somebody else's heater: asked in chat, granted by its owner and by nobody else. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { openTalk, type Talk } from "../../support/talk.ts";

let talk: Talk;
beforeEach(async () => {
  talk = await openTalk();
  await talk.records("Ana", { heater: { max_load_kg: 13, max_load_source: "sheet" }, fires: [{ lit_at: "2026-11-25T08:00:00Z", load_kg: 9 }] });
  for (const person of ["Ana", "ben"]) await talk.say(person, "hello", "valley");
});
afterEach(() => talk.close());
const fires = async (person: string): Promise<unknown[]> => ((await talk.kept(person))?.fires as unknown[]) ?? [];

test("nothing is shared until the owner says yes", async () => {
  expect((await talk.say("ben", "I fire Ana's heater too")).headline).toBe("I have asked Ana.");
  expect(await fires("ben")).toEqual([]);
  const [asked] = await talk.advance("PT0S");
  expect([asked?.place, asked?.headline]).toEqual(["private:Ana", "ben would like to fire your heater too."]);
  const yes = asked?.choices.find(({ label }) => label === "Yes, let them")?.id ?? "";
  // pressed by anybody else it concerns no heater of Ana's
  expect((await talk.choose("ben", yes)).headline).not.toMatch(/fire your heater too now/);
  expect(await fires("ben")).toEqual([]);
  expect((await talk.choose("Ana", yes)).headline).toMatch(/They fire your heater too now/);
  expect((await talk.advance("PT0S")).map(({ place, headline }) => `${place} ${headline}`)).toEqual(["private:ben Ana lets you fire their heater."]);
  expect(await fires("ben")).toHaveLength(1);
  expect((await talk.say("ben", "I fire Ana's heater too")).headline).toMatch(/already/);
});

test("a no changes nothing, strangers are not asked for, and records given as data share at once", async () => {
  await talk.say("ben", "let me fire ana's heater");
  const [asked] = await talk.advance("PT0S");
  expect((await talk.choose("Ana", asked?.choices[1]?.id ?? "")).headline).toMatch(/Nothing changes/);
  expect(await fires("ben")).toEqual([]);
  await talk.say("dora", "hello", "hill");
  expect((await talk.say("dora", "I fire Ana's heater")).headline).toMatch(/nobody of that name/);
  expect(await talk.advance("PT0S")).toEqual([]);
  await talk.records("cid", { fires_heater_of: "Ana" });
  expect(await fires("cid")).toHaveLength(1);
});
