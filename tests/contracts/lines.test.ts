/** The outside interface: its schemas as shipped, and one golden talk a topic. `npm test -- -u` writes them anew after a wanted change. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { AnswerOut, jsonSchemas, LineIn } from "../../adapters/lines/schemas.ts";
import { TOPICS, type TopicId } from "../../src/topics.ts";
import { openTalk, type Talk } from "../support/talk.ts";

const OWNER = {
  country: "FI", timezone: "Europe/Helsinki", latitude: 60.2, longitude: 24.9, asleep: { from: "23:00", to: "06:30" },
  heater: { kind: "contraflow", max_load_kg: 16, max_load_source: "sheet", masonry_kg: 2400, wall_mm: 180, flue_height_m: 6.5, shut_off_damper: true, bypass_damper: true, grate: false, gas_exit: "top", oven: "white", commissioned_on: "2009-08-15" },
  house: { heat_loss_W_per_K: 190, floor_m2: 120, wanted_C: 20.5, vented_hood: true, hood_interlock: false },
  wood: [{ species: "birch", moisture_pct_wet: 17, measured_on: "2026-11-01", volume_m3_stacked: 6, split_on: "2025-03-20", basket_kg: 8 }],
  fires: [{ lit_at: "2026-11-24T16:10:00Z", load_kg: 12, moisture_pct_wet: 17, air: "half" }, { lit_at: "2026-11-23T16:10:00Z", load_kg: 11 }],
  upkeep: { swept_on: "2026-09-11" },
  alarms: { co: { present: true, room: "living room", tested_on: "2026-11-01", ends_on: "2031-05-01" } },
  weather: { low_C: -7, high_C: -1 },
};

/** One plain message for each topic. */
const ASKED: Readonly<Record<TopicId, string>> = {
  "smoke-at-lighting": "smoke comes into the room every time I light the heater",
  "smoke-on-opening": "smoke rolls out when I open the door during the fire",
  "smoke-mid-burn": "I smell smoke in the living room while the fire burns with the door shut",
  "black-glass": "why did my glass go black last night?",
  "hazy-glass": "the glass has a white haze that will not come off",
  "slow-ignition": "it takes 40 minutes until the logs catch",
  "fire-dies": "the fire goes out before the wood is burnt",
  "over-firing": "the fire burns far too fast and too hot",
  "cold-morning": "the heater is cold every morning",
  "hot-surface": "the tiles are 95 degrees, is that too hot?",
  "room-too-warm": "the room gets much too warm in the evening",
  "uneven-heat": "one side of the heater stays cold",
  "cracks": "there is a crack above the door",
  "co-alarm": "where does the carbon monoxide alarm belong and why would it go off?",
  "chimney-fire": "how do I know if I had a chimney fire last week?",
  "heavy-soot": "there is thick shiny soot in the flue",
  "damp-flue": "brown drips run down the chimney",
  "cold-smell": "the heater smells like an old bonfire in summer with no fire",
  "back-puff": "why did the stove go whump last month when I opened the air?",
  "charcoal-left": "there is a lot of charcoal left after every fire",
  "door-leak": "the door gasket is worn and leaks air",
  "stuck-damper": "the damper is stuck half way",
  "nest-in-flue": "birds are nesting in the chimney",
  "high-wood-use": "I use twice as much wood as my neighbour",
  "visible-smoke": "thick smoke comes out of the chimney for half an hour and the neighbours complain",
  "noise": "the heater ticks and whistles",
  "first-fire-smell": "the first fire of the season smells of burnt dust",
  "oven-trouble": "the bake oven does not get hot",
  "light-fire": "walk me through lighting a fire",
  "close-down": "when can I close the damper?",
  "first-fires": "how do I do the first fires in a new heater?",
  "deep-cold": "how do I fire in very cold weather?",
  "mild-weather": "how should I fire on mild spring days?",
  "reload": "can I add more wood during the fire?",
  "ash-removal": "how do I remove the ash?",
  "use-oven": "how do I bake bread in the oven?",
  "what-to-burn": "can I burn pallet wood?",
  "clean-glass": "how do I clean the glass?",
  "power-cut": "can I use the heater during a power cut?",
  "children-and-clearance": "how far must things stay from the heater with children around?",
  "load-size": "how many kilos of wood in one load tonight?",
  "wood-dryness": "is my wood dry enough?",
  "meter-reading": "my moisture meter reads 22 %, what does that mean?",
  "fuel-energy": "how much heat is in 12 kg of birch?",
  "wood-volume": "how many kilos is 3 cubic metres stacked birch?",
  "wood-stock": "will my wood last the winter?",
  "seasoning": "how long does birch take to dry?",
  "heat-curve": "when will the heater be warmest and how long does it stay warm?",
  "fire-plan": "make me a firing plan for the next days",
  "draught": "how strong is the draught of my chimney tonight?",
  "upkeep-list": "what upkeep is due this year?",
  "sweep-due": "when is the chimney sweep due?",
  "reminder-set": "remind me to test the alarm every first Sunday at 9",
  "reminder-list": "show my reminders",
  "reminder-done": "tick off the reminder, the alarm is tested",
  "log-fire": "log: 12 kg birch 17 % wet basis, lit 18:10",
  "show-fires": "show my fires",
  "set-heater": "my heater: bell, 1800 kg, max 15 kg from the sheet",
  "set-house": "house 120 m2, built 1950, no insulation",
  "set-units": "switch to pounds and Fahrenheit",
  "woodpile": "note my woodpile: 4 cubic metres stacked beech, 18 % wet basis",
  "share-result": "share my result with the group",
  "help": "help",
  "my-data": "what is stored about me?",
  "out-of-scope": "who won the football last night?",
};

let talk: Talk;
beforeAll(async () => {
  talk = await openTalk({ now: "2026-11-25T16:00:00Z" });
});
afterAll(() => talk.close());

describe("lines, as an outsider sees them", () => {
  for (const side of ["in", "out"] as const) {
    it(`the schema of what goes ${side}`, async () => {
      await expect(`${JSON.stringify(jsonSchemas()[side], null, 2)}\n`).toMatchFileSnapshot(`lines/${side}.schema.json`);
    });
  }

  it.each(TOPICS)("%s", async (topic) => {
    const person = `owner-of-${topic}`;
    const records = { person, room: "private", records: OWNER };
    const line = { person, room: "private", text: ASKED[topic] };
    expect(LineIn.safeParse(records).success).toBe(true);
    await talk.records(person, OWNER);
    const answer = await talk.say(person, line.text);
    expect(AnswerOut.safeParse(answer).error?.issues ?? []).toEqual([]);
    expect([answer.topic, ...answer.also]).toContain(topic);
    const pair = { now: "2026-11-25T16:00:00Z", in: [records, line], out: { answers: [{ ...answer, pictures: answer.pictures.map(({ alt }) => ({ alt, file: "" })) }] } };
    await expect(`${JSON.stringify(pair, null, 2)}\n`).toMatchFileSnapshot(`lines/${topic}.json`);
  });
});
