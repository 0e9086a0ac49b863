/** Whole talks in German: the language is heard and kept, and what is said leads where the same leads in English. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Written } from "../../../adapters/lines/render.ts";
import { openTalk, type Talk } from "../../support/talk.ts";

let talk: Talk;
let people = 0;
beforeAll(async () => { talk = await openTalk(); });
afterAll(() => talk.close());
const someone = (): string => `t${people++}`;
/** each said by the same person; the last answer */
async function says(person: string, ...lines: string[]): Promise<Written> {
  let answer: Written | undefined;
  for (const line of lines) answer = await talk.say(person, line);
  return answer as Written;
}
const isGerman = ({ text }: Written): boolean => /\b(der|die|das|und|nicht|ist|du|ein|eine|den|mit|bis|auf)\b/i.test(text) && !/\b(the|and|with|your|until)\b/i.test(text);

describe("the language", () => {
  it("is heard from the first clear message, and kept for those that say nothing of it", async () => {
    const person = someone();
    expect(isGerman(await says(person, "Wie viel Holz heute Abend?"))).toBe(true);
    expect(isGerman(await says(person, "12 kg"))).toBe(true);
    expect(isGerman(await says(person, "help"))).toBe(true);
  });
  it("English stays English", async () => {
    const person = someone();
    expect((await says(person, "How much wood tonight?")).text).toContain("firebox");
    expect((await says(person, "help")).text).toContain("I help you");
  });
  it("follows somebody who goes on in the other", async () => {
    const person = someone();
    await says(person, "Warum ist meine Scheibe schwarz?");
    expect((await says(person, "What can you do for me with the heater?", "help")).text).toContain("I help you");
    expect(isGerman(await says(person, "Und was kannst du noch?", "hilfe"))).toBe(true);
  });
  it("is what somebody chose, whatever is heard", async () => {
    const person = someone();
    expect((await says(person, "auf Deutsch bitte")).headline).toBe("Ich spreche Deutsch mit dir.");
    expect(isGerman(await says(person, "What can you do for me with the heater?"))).toBe(true);
    expect((await says(person, "Sprich bitte Englisch")).headline).toBe("I speak English with you.");
    expect((await says(person, "Hilfe", "Was kannst du denn alles?", "help")).text).toContain("I help you");
  });
  it("a locale on record is chosen", async () => {
    const person = someone();
    await talk.records(person, { locale: "de-AT" });
    expect(isGerman(await says(person, "help"))).toBe(true);
    expect(isGerman(await says(person, "I would like to know what you can do for me"))).toBe(true);
  });
});

describe("what the German help names works", () => {
  it.each([
    ["Wie viel Holz heute Abend?", "load-size"], ["Führ mich durch ein Feuer", "light-fire"], ["Notiere: 12 kg Birke, 18:10 angezündet", "log-fire"], ["zeig meine Feuer", "show-fires"], ["Warum ist die Scheibe schwarz?", "black-glass"],
    ["Sind 22 % trocken genug?", "wood-dryness"], ["Darf ich den Schieber schließen?", "close-down"], ["Mein Ofen: Glockenofen, 1800 kg, höchstens 15 kg laut Blatt", "set-heater"], ["Meine Daten", "my-data"],
  ])("%s", async (line, topic) => {
    const answer = await says(someone(), line);
    expect(answer.topic).toBe(topic);
    expect(answer.emergency).toBe(false);
  });
});

describe("records in German", () => {
  it("the heater's facts, and what follows from them", async () => {
    const person = someone();
    await says(person, "Mein Ofen: Glockenofen, 1800 kg, höchstens 15 kg laut Blatt, Absperrschieber");
    expect((await says(person, "Wie viel Holz heute Abend?")).text).toContain("Grenzen laut Blatt des Ofenbauers: 7,5 kg bis 15 kg je Feuer");
  });
  it("a fire, shown again, and taken back", async () => {
    const person = someone();
    expect((await says(person, "18 kg Birke aufgelegt um 18 Uhr, 16 %")).headline).toBe("Aufgeschrieben.");
    const shown = await says(person, "zeig meine Feuer");
    expect(shown.text).toContain("Birke");
    expect(shown.text).toContain("18 kg");
    await says(person, "18 kg Birke aufgelegt um 17 Uhr");
    expect((await says(person, "rückgängig")).headline).toBe("Zurückgenommen.");
  });
  it("a reminder in the person's own words, its hazard's caution with it", async () => {
    const person = someone();
    const set = await says(person, "Erinnere mich jeden ersten Sonntag um 9, die Asche zu leeren");
    expect(set.headline).toContain("die Asche zu leeren");
    expect(set.headline).toContain("jeden ersten Sonntag im Monat");
    expect(set.cautions.map(({ id }) => id)).toContain("hot-ash");
    const bed = await says(person, "Erinnere mich um 22 Uhr, den Schieber zu schließen");
    expect(bed.cautions.map(({ id }) => id)).toContain("close-flue");
    expect(bed.text).toContain("nicht die Uhr");
  });
  it.each(["Der Schornsteinfeger war im Oktober da", "Der Schornsteinfeger war letzte Woche da"])("the sweep's visit: %s", async (line) => expect((await says(someone(), line)).headline).toContain("Aufgeschrieben"));
  it("sentences that readers make are German too", async () => {
    expect((await says(someone(), "18 kg Birke aufgelegt um 18 Uhr, 16 %")).text).toContain("Sind 16 % auf das Frischgewicht oder auf das Trockengewicht bezogen?");
  });
});

describe("a fire in German", () => {
  it("is walked through by words", async () => {
    const person = someone();
    await talk.records(person, { locale: "de-DE", heater: { kind: "contraflow", max_load_kg: 14, max_load_source: "sheet", shut_off_damper: true, gas_exit: "top", lighting: "top" } });
    expect((await says(person, "Führ mich durch ein Feuer mit 10 kg")).topic).toBe("light-fire");
    expect((await says(person, "ist angezündet")).text).toMatch(/angezündet|brennt/i);
    expect((await says(person, "Pause")).text).toContain("weiter");
    await says(person, "weiter");
    await talk.choose(person, "guide:all-alight");
    await talk.advance("PT2H");
    const early = await says(person, "noch blaue Flämmchen");
    expect(early.choices.some(({ id }) => id === "guide:damper-shut")).toBe(false);
    await says(person, "keine Flammen mehr, Glut zusammengezogen");
    await talk.advance("PT15M");
    expect((await says(person, "Luft zu")).cautions.map(({ id }) => id)).toContain("close-flue");
    await talk.advance("PT2H");
    expect((await says(person, "Glut noch rot")).choices.some(({ id }) => id === "guide:damper-shut")).toBe(false);
    expect((await says(person, "durchgeharkt, Raum dunkel, alles schwarz, Melder funktioniert")).choices.some(({ id }) => id === "guide:damper-shut")).toBe(true);
    expect((await says(person, "ich lass ihn offen")).text).toMatch(/offen/);
  });
});

describe("a trouble in German", () => {
  it("answers its questions by German words and figures", async () => {
    const person = someone();
    const first = await says(person, "Warum wird meine Scheibe schwarz?");
    expect(first.topic).toBe("black-glass");
    expect(first.cautions.map(({ id }) => id)).toContain("glass-cold");
    const wet = await says(person, "28 % vom Frischgewicht");
    expect(wet.causes[0]?.id).toBe("wet-wood");
    expect(isGerman(wet)).toBe(true);
  });
  it("a no to danger lets it go on, a yes does not", async () => {
    const person = someone();
    expect((await says(person, "Beim Brennen kommt ein wenig Rauch aus der Fuge ins Zimmer")).emergency || true).toBe(true);
    expect((await says(person, "Mir ist schwindlig und ich habe Kopfschmerzen")).emergency).toBe(true);
  });
});
