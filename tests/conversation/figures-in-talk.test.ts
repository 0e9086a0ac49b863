/** What a figure is taken for in a talk: an offer is no woodpile, a weight in pieces no load for tonight, a later figure a correction. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Written } from "../../adapters/lines/render.ts";
import { openTalk, type Talk } from "../support/talk.ts";

let talk: Talk;
let people = 0;
beforeAll(async () => { talk = await openTalk(); });
afterAll(() => talk.close());
async function last(...lines: string[]): Promise<Written & { readonly person: string }> {
  const person = `f${people++}`;
  let answer: Written | undefined;
  for (const line of lines) answer = await talk.say(person, line);
  return { ...(answer as Written), person };
}
const kept = async (person: string): Promise<string> => JSON.stringify(await talk.kept(person));

describe("two prices", () => {
  it("are compared, and nothing is written down as a pile", async () => {
    const { topic, text, person } = await last("200 euro a cord of oak or 90 for a stere");
    expect(topic).toBe("wood-volume");
    expect(text).toMatch(/90 for a stere: 0\.\d+ EUR/);
    expect(await kept(person)).not.toContain("volume_m3_stacked");
  });
});

describe("a weight in pieces", () => {
  it.each(["how many logs is 12 kg", "how many splits are 12 kg?", "wie viele Scheite sind 12 kg?"])("%s", async (asked) => {
    const { topic, headline } = await last(asked);
    expect(topic).toBe("load-size");
    // 12 kg of splits of 33 cm by 9 cm at 1.3 kg each
    expect(headline).toMatch(/\b10 (pieces|Stück)/);
  });
  it("is no way around the largest load", async () => {
    const { headline, text } = await last("my heater: contraflow, max 15 kg from the sheet", "how many logs is 40 kg");
    expect(headline).not.toContain("pieces");
    expect(text).toContain("15 kg");
  });
  it("tonight's load is still asked for as one", async () => {
    const { headline } = await last("my heater: contraflow, max 15 kg from the sheet", "how many logs tonight?");
    expect(headline).not.toMatch(/^About \d+ pieces/);
  });
});

describe("the last fire", () => {
  it.each([["log 10 kg birch lit 17:00", "show my fires", "no, it was 12 kg"], ["log 10 kg birch lit 17:00", "show my fires", "no, that last one was 12 kg"],
    ["Notiere: 10 kg Birke, 17:00 angezündet", "zeig meine Feuer", "nein, das waren 12 kg"]])("%s / %s / %s", async (...lines) => {
    const { topic, person } = await last(...lines);
    expect(topic).toBe("log-fire");
    expect(await kept(person)).toContain('"load_kg":12');
  });
  it.each(["burnt 8 of 14 kg birch, lit at 17:00", "um 17 Uhr angezündet, 8 von 14 kg verheizt"])("%s: 8 kg have burnt", async (said) => {
    const { person } = await last(said);
    expect(await kept(person)).toContain('"load_kg":8');
  });
});
