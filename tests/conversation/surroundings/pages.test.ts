/** Pages asked for in a talk: for guests, for the season, for whoever is called in. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { openTalk, type Talk } from "../../support/talk.ts";

const HEATER = { name: "The <old> one", max_load_kg: 15, max_load_source: "sheet", gas_exit: "top", shut_off_damper: true };

describe("asked for", () => {
  let talk: Talk;
  beforeEach(async () => {
    talk = await openTalk({ now: "2026-11-25T18:00:00Z" });
    await talk.records("ana", { country: "FI", heater: HEATER });
  });
  afterEach(() => talk.close());

  test.each(["a page for my guests", "can I have instructions for the house sitter?", "make me a sheet for my tenants", "guest page please"])("%s", async (words) => {
    const said = await talk.say("ana", words);
    expect(said.text).toMatch(/for-guests\.html/);
    expect(said.text).toMatch(/ring 112 from outside/);
    expect(said.text).toMatch(/At most 15 kg/);
    expect(said.cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(["carbon-monoxide", "close-flue", "over-firing"]));
  });
  test("the season's report counts more fires than a talk looks at, and only the last twelve months", async () => {
    const fires = Array.from({ length: 150 }, (_, day) => ({ lit_at: new Date(Date.parse("2026-11-24T17:00:00Z") - day * 86_400_000).toISOString(), load_kg: 10 }));
    await talk.records("ana", { fires: [...fires, { lit_at: "2025-03-01T17:00:00Z", load_kg: 99 }] });
    const said = await talk.say("ana", "season report for my insurer");
    expect(said.headline).toMatch(/150 fires/);
    expect(said.text).toMatch(/Wood burnt: 1,500 kg/);
    expect(said.text).toMatch(/fires\.csv/);
    expect(said.text).not.toMatch(/99 kg \||2025/);
    expect(said.text).toMatch(/Last sweep: not on record/);
    expect(said.text).not.toMatch(/since the last sweep/i);
  });
  test("troubles talked about stand in report and brief; nothing is sent by itself", async () => {
    await talk.records("ana", { fires: [{ lit_at: "2026-11-24T17:00:00Z", load_kg: 6, moisture_pct_wet: 27, species: "birch" }], upkeep: { swept_on: "2026-09-01" } });
    await talk.say("ana", "why did my glass go black?");
    const brief = await talk.say("ana", "a brief for my sweep, please");
    expect(brief.headline).toMatch(/Nothing has been sent/);
    expect(brief.text).toMatch(/What it is about: .*glass/i);
    expect(brief.text).toMatch(/6 kg, birch and 27 % water/);
    expect(brief.text).toMatch(/Swept on 1 Sept? 2026/);
    expect(brief.cautions.length).toBeGreaterThan(0);
    expect((await talk.choose("ana", "page:brief-builder")).text).toMatch(/brief-for-builder\.txt/);
    expect((await talk.say("ana", "season report")).text).toMatch(/glass.* - likeliest: /i);
    expect(await talk.advance("P2D")).toEqual([]);
  });
  test.each(["why did my glass go black?", "how do I light a fire?", "my guests are cold", "what does the sweep do?", "tell me about the winter"])("no page for: %s", async (words) => {
    expect((await talk.say("ana", words)).text).not.toMatch(/\.html|\.csv|\.txt/);
  });
});
