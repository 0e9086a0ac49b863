/** Questions as owners ask them, in English and German: the first line is the answer, whatever tree stands open. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Written } from "../../adapters/lines/render.ts";
import { openTalk, type Talk } from "../support/talk.ts";

let talk: Talk;
let people = 0;
beforeAll(async () => { talk = await openTalk({ now: "2026-11-25T22:00:00Z" }); });
afterAll(() => talk.close());
async function last(...lines: string[]): Promise<Written & { readonly person: string }> {
  const person = `q${people++}`;
  let answer: Written | undefined;
  for (const line of lines) answer = await talk.say(person, line);
  return { ...(answer as Written), person };
}
const kept = async (person: string): Promise<string> => JSON.stringify(await talk.kept(person));
const HEATER = "my heater: contraflow, max 14 kg from the sheet, 2400 kg, flue damper";
const ids = ({ cautions }: Written): string[] => cautions.map(({ id }) => id);

describe("how long a fire burns", () => {
  it.each(["how long should the fire burn", "how long will it burn?", "how long does 8 kg burn", "wie lang soll das Feuer brennen"])("%s", async (asked) => {
    const answer = await last(HEATER, asked);
    expect(answer.topic).toBe("light-fire");
    // flames 1 to 2 h, black 2 to 4 h: common practice, no source
    expect(answer.headline).toMatch(/One to two hours of flames|Ein bis zwei Stunden Flammen/);
    expect(ids(answer)).toEqual(expect.arrayContaining(["unattended", "close-flue", "close-air"]));
  });
  it("names hours for the load and never one above the largest", async () => {
    const { text } = await last(HEATER, "how long does 40 kg burn");
    expect(text).toContain("For 14 kg");
    expect(text).not.toContain("For 40 kg");
  });
  it.each(["how long does the burn ban last", "how long will 6 m3 of birch last if I burn 10 kg a day"])("%s is another matter", async (asked) => {
    expect((await last(HEATER, asked)).headline).not.toContain("hours of flames");
  });
});

describe("twice or once", () => {
  it.each([
    ["is it better to burn twice 8 kg or once 16", /^Twice 8 kg, 12 h or more apart\. 16 kg at once is more/],
    ["is it better to burn twice 6 kg or once 12", /^Once 12 kg\. 6 kg is less than/],
    ["two fires of 7 kg or one of 14?", /^Both suit this heater/],
    ["better twice 15 kg or once 30?", /^Neither/],
    ["lieber zweimal 8 kg oder einmal 16?", /^Zweimal 8 kg, mindestens 12 h auseinander/],
  ])("%s", async (asked, headline) => {
    const answer = await last(HEATER, asked);
    expect(answer.topic).toBe("load-size");
    expect(answer.headline).toMatch(headline);
    expect(ids(answer)).toContain("over-firing");
  });
  it("without a known limit no kilogram is named", async () => {
    expect((await last("is it better to burn twice 8 kg or once 16")).text).not.toMatch(/\d kg/);
  });
  it("is answered in the middle of a tree, and the tree goes on", async () => {
    const { topic, person } = await last(HEATER, "smoke comes out when I open the door", "is it better to burn twice 8 kg or once 16");
    expect(topic).toBe("load-size");
    expect((await talk.say(person, "no")).topic).toBe("smoke-on-opening");
  });
});

describe("bed and sleep", () => {
  it.each(["can I leave the fire and go to bed", "is it ok to light another one at 10 pm and go to sleep?"])("%s", async (asked) => {
    const answer = await last(HEATER, asked);
    expect(answer.headline).toMatch(/^No\. Somebody awake/);
    expect(ids(answer)).toEqual(expect.arrayContaining(["unattended", "close-flue", "carbon-monoxide"]));
    expect(answer.text).toContain("flue damper left fully open till morning");
  });
  it.each(["how do i know the bed is black", "woran erkenne ich, dass die Glut schwarz ist?"])("%s reports no black bed", async (asked) => {
    const { topic, headline, text } = await last(HEATER, asked);
    expect(topic).toBe("close-down");
    expect(headline).toMatch(/ten seconds|zehn Sekunden/);
    expect(text).not.toMatch(/may be closed now|darf jetzt/);
  });
});

describe("when again", () => {
  it("by spacing from the last fire", async () => {
    expect((await last(HEATER, "log: 9 kg birch 16 % wet basis, lit 17:00", "how long until I can light again")).headline).toBe("Not yet. The next fire can be lit from Thu 26 Nov, 05:00.");
  });
  it("says so where nothing is written down", async () => {
    expect((await last(HEATER, "wann darf ich wieder einheizen?")).headline).toMatch(/^Frühestens 12 h/);
  });
});

describe("wood", () => {
  it.each(["is oak better than spruce?", "was ist besser, Buche oder Fichte"])("%s", async (asked) => {
    const { topic, headline } = await last(HEATER, asked);
    expect(topic).toBe("what-to-burn");
    expect(headline).toMatch(/^Kilo f/);
  });
  it.each(["what wood should I buy", "welches Holz soll ich kaufen?", "can i burn my ex's letters"])("%s", async (asked) => {
    expect((await last(asked)).topic).toBe("what-to-burn");
  });
  it("a price is still weighed", async () => {
    expect((await last("is 300 euro for 3 rm beech good")).headline).toMatch(/^0\.\d+ EUR for each kilowatt hour/);
  });
  it("what one wants is no pile", async () => {
    const { topic, person } = await last("I want 4 m3 stacked");
    expect(topic).toBe("wood-volume");
    expect(await kept(person)).toContain('"home":null');
  });
});

describe("an old heater nobody knows", () => {
  it.each(["hi, we just bought a house from 1920 with an old tiled stove in it, I have no idea what it is", "wir haben ein altes Haus mit einem Kachelofen gekauft, keine Ahnung wie der geht"])("%s", async (said) => {
    const answer = await last(said);
    expect(answer.headline).toMatch(/^(Do not light it yet|Noch nicht anzünden)/);
    expect(ids(answer)).toEqual(expect.arrayContaining(["blocked-flue", "carbon-monoxide", "asbestos"]));
  });
  it("what the owner before said is kept as a guess", async () => {
    const { person, headline } = await last("the previous owner said 10 kg", "no, it was 8 kg");
    expect(headline).toBe("Corrected.");
    expect(await kept(person)).toMatch(/"max_load_kg":8\b/);
    expect((await talk.say(person, "how much wood tonight?")).text).toContain("A guess, for want of papers: at most 8 kg");
  });
  it("hearsay moves no limit that is known", async () => {
    const { person } = await last(HEATER, "the previous owner said 30 kg");
    expect(await kept(person)).toContain('"max_load_kg":14');
  });
});

describe("figures decide", () => {
  it("a load for the weather, then another tree and another night", async () => {
    const { topic, person } = await last(HEATER, "house heat loss 210 W/K, 21 C inside", "what load for -2 outside, spruce at 16 % wet basis?");
    expect(topic).toBe("load-size");
    const birch = await talk.say(person, "and if it's birch?");
    expect(birch.topic).toBe("load-size");
    expect(birch.text).toContain("Kilo for kilo");
    expect((await talk.say(person, "and at -20?")).text).toContain("Outside −20 °C");
  });
  it("draught at a temperature", async () => {
    expect((await last("my heater: bell, chimney 6.5 m", "what is the draught at -5 outside with 180 C flue gas?")).topic).toBe("draught");
  });
  it("a sum is none of ours", async () => {
    expect((await last(HEATER, "how much wood tonight? low of -7", "what's 2+2")).topic).toBe("out-of-scope");
  });
  it.each(["how thick should the firebrick be", "what is the longest flue run for 16 kg?"])("%s is the mason's, tree or not", async (asked) => {
    expect((await last(HEATER, "there is a crack about 2 mm in the tiles", asked)).headline).toBe("That is sized by a heater mason, not by me.");
  });
  it("another trouble in the middle of a tree is that trouble", async () => {
    expect((await last("there is a crack about 2 mm in the tiles", "bypass stuck open, what now")).topic).toBe("stuck-damper");
  });
});

describe("what cannot be", () => {
  it.each([["max 0 kg", "0 kg cannot be right"], ["my heater: max 5000 kg", "A largest load of 5000 kg cannot be right"], ["log: 12 kg birch lit 18:00 tomorrow", "is still to come"]])("%s", async (said, sentence) => {
    const { headline, person } = await last(said);
    expect(headline).toContain(sentence);
    expect(await kept(person)).not.toMatch(/"load_kg":12|"max_load_kg":/);
  });
});

describe("corrected and taken back", () => {
  it("a pile", async () => {
    expect(await kept((await last("5 m3 stacked birch, split last March", "no, 3")).person)).toContain('"volume_m3_stacked":3');
  });
  it("the first heater", async () => {
    const { headline, person } = await last(HEATER, "undo");
    expect(headline).not.toContain("nothing");
    expect(await kept(person)).not.toContain('"max_load_kg"');
  });
});

describe("deleting", () => {
  it.each([["delete everything about me", "yes"], ["lösche alles über mich", "ja"]])("%s / %s", async (asked, yes) => {
    const { choices, person } = await last(HEATER, asked);
    expect(JSON.stringify(choices)).toContain("data:delete-yes");
    await talk.say(person, yes);
    expect(await kept(person)).not.toContain("max_load_kg");
  });
  it.each([["what is a bypass", "yes"], ["no", "yes"], ["maybe", "ok"]])("not after %s / %s", async (...between) => {
    const { person } = await last(HEATER, "delete everything about me", ...between);
    expect(await kept(person)).toContain("max_load_kg");
  });
});
describe("a larger load than the sheet's", () => {
  it("does not take the sheet's word with it, unless the sheet is named again", async () => {
    const facts = async (said: string): Promise<unknown> => (await talk.kept((await last(HEATER, said)).person))?.heaters;
    expect(await facts("my heater: max 18 kg")).toMatchObject([{ facts: { max_load_kg: 18 } }]);
    expect(await facts("my heater: max 18 kg")).not.toMatchObject([{ facts: { max_load_source: "sheet" } }]);
    expect(await facts("my heater: max 18 kg from the sheet")).toMatchObject([{ facts: { max_load_kg: 18, max_load_source: "sheet" } }]);
    expect(await facts("my heater: max 12 kg")).toMatchObject([{ facts: { max_load_kg: 12, max_load_source: "sheet" } }]);
  });
});

describe("while a question of a tree stands open", () => {
  it("a heater that is described is written down, and is no answer", async () => {
    const { topic, person } = await last("why did my glass go black?", "my heater is a 3000 kg bell, rated 16 kg, walls 110 mm, facing 12 m2 of brick");
    expect(topic).toBe("set-heater");
    expect((await talk.kept(person))?.heaters).toMatchObject([{ facts: { kind: "bell", masonry_kg: 3000 } }]);
  });
  it("what is said after an emergency is no answer to it", async () => {
    const { topic } = await last("why did my glass go black?", "the chimney is on fire!", "it is out, all fine now");
    expect(topic).not.toBe("black-glass");
  });
  it("a few words that mean nothing to it are asked about once more", async () => {
    const { topic, text } = await last("warum ist meine Scheibe schwarz?", "das Holz liegt seit zwei Jahren");
    expect(topic).toBe("black-glass");
    expect(text).toMatch(/nicht verstanden/);
  });
});
