/** The builder's desk by talking: an owner notes what the builder says, accepts the builder's account, shows first fires, hands a trouble over. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openTalk, type Talk } from "../support/talk.ts";

const HEATER = { name: "Kitchen", kind: "contraflow", max_load_kg: 16, max_load_source: "sheet", shut_off_damper: true, commissioned_on: "2026-11-15" };
let talk: Talk;
beforeEach(async () => {
  talk = await openTalk({ now: "2026-11-25T18:00:00Z" });
  await talk.records("ana", { country: "FI", heater: HEATER, weather: { low_C: -20, high_C: -12 }, house: { heat_loss_W_per_K: 300 } });
});
afterEach(() => talk.close());

const codeIn = (words: string): string => /\b[A-Z0-9]{4}-[A-Z0-9]{4}\b/.exec(words)?.[0] ?? "";

/** Ana invites, Ben comes with the code, Ana says yes. */
async function accepted(): Promise<void> {
  const code = codeIn((await talk.say("ana", "invite my builder")).headline);
  expect((await talk.say("ben", `builder code ${code}`)).headline).toBe("I asked ana whether you are the builder. I tell you when the answer is there.");
  const [asked] = await talk.advance("PT0S");
  expect(asked?.headline).toBe("ben says to be the builder of your heater, with your code.");
  const yes = asked?.choices.find(({ label }) => label.startsWith("Yes"))?.id ?? "";
  expect((await talk.choose("ana", yes)).headline).toBe("ben may set rules for this heater now.");
  expect((await talk.advance("PT0S")).map(({ headline }) => headline)).toEqual(["ana accepted you as the builder of the Kitchen."]);
}

describe("what an owner notes", () => {
  it("tightens the load, says who and when, and is taken back by the owner only", async () => {
    const noted = await talk.say("ana", "my builder says never more than 5 kg");
    expect(noted.headline).toBe("The builder's rule is noted.");
    expect(noted.topic).toBe("set-heater");
    const rules = await talk.say("ana", "show my builder's rules");
    expect(rules.text).toMatch(/Version 1, noted by you, 25 Nov 2026[\s\S]*At most 5 kg a fire/);
    await talk.records("cleo", { fires_heater_of: "ana" });
    expect((await talk.say("cleo", "withdraw the builder's rules")).headline).toBe("Only the owner of the heater can do that.");
    expect((await talk.say("ana", "withdraw my builder's rules")).headline).toBe("The builder's rules are taken back.");
  });
  it("a larger load is refused with the reason, and the heater's own figure stands", async () => {
    const refused = await talk.say("ana", "my builder says never more than 20 kg");
    expect(refused.headline).toBe("This cannot be a builder's rule here.");
    expect(refused.text).toMatch(/At most 20 kg would be more than the 16 kg that hold/);
    expect(refused.hazard).toBe(true);
  });
  it("words stand beside the cautions of closing down, as plain text", async () => {
    await talk.say("ana", "my builder says leave the damper **open** till <b>morning</b>");
    const closing = await talk.say("ana", "when can I close the damper?");
    expect(closing.cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(["close-flue", "carbon-monoxide"]));
    expect(closing.text).toContain("leave the damper **open** till <b>morning</b>");
    expect(closing.text.indexOf("Glowing embers")).toBeLessThan(closing.text.indexOf("**open**"));
  });
  it("in a guide, over red embers, the damper stays open whatever was said", async () => {
    await talk.say("ana", "my builder says wait until the bed is black, then close the damper");
    await talk.say("ana", "light the fire");
    await talk.say("ana", "it's lit");
    await talk.advance("PT2H30M");
    const embers = await talk.say("ana", "no flames, but the embers glow red");
    expect(embers.cautions.map(({ id }) => id)).toContain("close-flue");
    expect(embers.headline + embers.text).not.toMatch(/damper may be (?:shut|closed)|may (?:now )?(?:shut|close) the (?:flue )?damper/i);
  });
  it("words that let the damper be closed early are not kept", async () => {
    const refused = await talk.say("ana", "my builder says close the damper after two hours");
    expect(refused.text).toMatch(/not kept/);
    expect((await talk.say("ana", "show my builder's rules")).headline).toBe("No builder's rules are noted.");
  });
  it("danger comes first, whatever it is said as", async () => {
    expect((await talk.say("ana", "my builder says: the CO alarm is going off and I feel dizzy")).emergency).toBe(true);
  });
});

describe("a builder's account", () => {
  it("is accepted by the owner, sets rules by talking and by a file, and the owner is told", async () => {
    await accepted();
    const done = await talk.say("ben", "rule for Kitchen: at most 9 kg, wait 14 hours between fires");
    expect(done.text).toMatch(/Kitchen of ana[\s\S]*At most 9 kg a fire[\s\S]*At least 14 h/);
    const [told] = await talk.advance("PT0S");
    expect(told?.headline).toBe("Your builder, ben, set rules for your heater.");
    expect(told?.text).toMatch(/At most 9 kg/);
    const file = await talk.say("ben", "builder: Kiln Works\nrules:\n  - kind: contraflow\n    max_load_kg: 8\n    call: Ben, 0123 4567\n  - heater: Kitchen\n    spacing_h: 10\n");
    expect(file.headline).toBe("Noted, but not all of it.");
    expect(file.text).toMatch(/10 h between fires would be less than the 14 h/);
    const load = await talk.say("ana", "how much wood tonight?");
    expect(load.numbers.load_kg).toBeLessThanOrEqual(8);
    expect((await talk.say("ana", "show my builder's rules")).text).toMatch(/Kiln Works/);
    expect((await talk.say("ben", "builder's desk")).headline).toBe("1 heater you look after");
  });
  it("a file with a mistake changes nothing and names the line", async () => {
    await accepted();
    const wrong = await talk.say("ben", "rules:\n  - kind: contraflow\n    max_load: 8\n");
    expect(wrong.text).toMatch(/line 3: rule 1: "max_load" is not a word this place knows; was "max_load_kg" meant\?/);
    expect((await talk.say("ana", "show my builder's rules")).headline).toBe("No builder's rules are noted.");
  });
  it("a stranger, a wrong code, a used code and a decliner's builder set nothing", async () => {
    expect((await talk.say("mal", "rule for Kitchen: at most 3 kg")).headline).not.toMatch(/noted/);
    expect((await talk.say("mal", "builder code AAAA-2222")).headline).toMatch(/unknown, used up or over/);
    const code = codeIn((await talk.say("ana", "invite my builder")).headline);
    await talk.say("mal", `builder code ${code}`);
    expect((await talk.say("eve", `builder code ${code}`)).headline).toMatch(/unknown, used up or over/);
    const [asked] = await talk.advance("PT0S");
    await talk.choose("ana", asked?.choices.find(({ label }) => label === "No")?.id ?? "");
    await talk.say("mal", "rules:\n  - max_load_kg: 3\n");
    expect((await talk.say("ana", "show my builder's rules")).headline).toBe("No builder's rules are noted.");
  });
  it("sees the first fires only while the owner shows them", async () => {
    await accepted();
    await talk.records("ana", { fires: [{ lit_at: "2026-11-24T17:00:00Z", load_kg: 1.5, note: "first fires: dry" }] });
    expect((await talk.say("ben", "first fires of ana")).headline).toMatch(/does not show/);
    expect((await talk.say("ana", "show my first fires to my builder")).headline).toBe("ben can see the first fires of this heater.");
    const seen = await talk.say("ben", "first fires of ana");
    expect(seen.text).toMatch(/Kitchen of ana[\s\S]*1\.5 kg/);
    expect(seen.cautions.map(({ id }) => id)).toContain("first-fires");
    await talk.say("ana", "stop showing my first fires");
    expect((await talk.say("ben", "first fires of ana")).headline).toMatch(/does not show/);
  });
  it("gets a trouble handed over after the owner saw what would be sent", async () => {
    await accepted();
    await talk.say("ana", "there are new cracks in my heater");
    await talk.choose("ana", "sign:cracks:leak=none");
    const brief = await talk.say("ana", "brief for my builder");
    expect(brief.choices).toContainEqual({ id: "builder:hand-over", label: "Hand over to ben" });
    const preview = await talk.say("ana", "hand this over to my builder");
    expect((await talk.choose("ana", "builder:hand-over")).text).toBe(preview.text);
    expect(preview.headline).toBe("This is what ben would get. Nothing is sent yet.");
    expect(await talk.advance("PT0S")).toEqual([]);
    await talk.choose("ana", preview.choices.find(({ label }) => label === "Send to ben")?.id ?? "");
    const [told] = await talk.advance("PT0S");
    expect(told?.headline).toBe("ana hands a trouble over to you: Kitchen");
    expect(told?.text).toMatch(/What it is about: A crack/);
    expect(told?.hazard).toBe(true);
  });
  it("removed by the owner sets nothing more; forgotten, the figures stay without name and words", async () => {
    await accepted();
    await talk.say("ben", "builder: Kiln Works\nrules:\n  - max_load_kg: 9\n    words: Only birch from my shed.\n");
    await talk.choose("ben", "data:delete-yes");
    const rules = await talk.say("ana", "show my builder's rules");
    expect(rules.text).toMatch(/At most 9 kg/);
    expect(rules.text).not.toMatch(/Kiln|shed|ben/);
    expect((await talk.say("ana", "remove my builder")).headline).toBe("No builder is connected with this heater yet.");
  });
});

describe("in German", () => {
  it("noted, refused with the reason, shown, and said beside the cautions", async () => {
    await talk.records("ana", { locale: "de-DE" });
    expect((await talk.say("ana", "mein Ofenbauer sagt: nie mehr als 9 kg")).headline).toBe("Die Regel des Ofenbauers ist notiert.");
    expect((await talk.say("ana", "mein Ofenbauer sagt: höchstens 14 kg")).text).toMatch(/Höchstens 14 kg wäre mehr als die 9 kg/);
    const early = await talk.say("ana", "mein Ofenbauer sagt: den Schieber nach zwei Stunden schließen");
    if (!early.emergency) expect(early.text).toMatch(/behalte ich nicht/);
    await talk.say("ana", "mein Ofenbauer sagt: den Schieber bis zum Morgen offen lassen");
    expect((await talk.say("ana", "was sagt mein Ofenbauer?")).text).toMatch(/Fassung 2, von dir notiert[\s\S]*Höchstens 9 kg je Feuer[\s\S]*den Schieber bis zum Morgen offen lassen/);
    expect(codeIn((await talk.say("ana", "lade meinen Ofenbauer ein")).headline)).not.toBe("");
  });
});
