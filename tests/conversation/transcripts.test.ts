/** Whole conversations, as readable transcripts: what is said, and what the answer has to be. */
import { readdirSync, readFileSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import type { Written } from "../../adapters/lines/render.ts";
import { openTalk, type Talk } from "../support/talk.ts";

const FOLDER = new URL("./transcripts/", import.meta.url);
const open: Talk[] = [];
afterAll(() => Promise.all(open.map((talk) => talk.close())));

function check(answer: Written, line: string, said: string): void {
  const [what = "", ...rest] = line.trim().split(": ");
  const wanted = rest.join(": ").trim();
  const why = `after "${said}": ${line.trim()}\n${answer.topic}\n${answer.text}`;
  switch (what) {
    case "topic":
      return expect(wanted.split(" | "), why).toContain(answer.topic);
    case "says":
      return expect(answer.text, why).toContain(wanted);
    case "not":
      return expect(answer.text, why).not.toContain(wanted);
    case "starts":
      return expect(answer.text.slice(0, 80).toLowerCase(), why).toContain(wanted.toLowerCase());
    case "emergency":
      return expect(answer.emergency, why).toBe(wanted === "yes");
    case "hazard":
      return expect(answer.hazard, why).toBe(wanted === "yes");
    case "question":
      return expect(answer.question !== null, why).toBe(wanted === "yes");
    case "number": {
      const [key = "", , from, , to] = wanted.split(" ");
      expect(answer.numbers[key], why).toBeGreaterThanOrEqual(Number(from));
      return expect(answer.numbers[key], why).toBeLessThanOrEqual(Number(to));
    }
    default:
      throw new Error(`a transcript cannot ask for "${what}"`);
  }
}

describe("conversations", () => {
  for (const file of readdirSync(FOLDER).filter((name) => name.endsWith(".talk")).sort()) {
    const lines = readFileSync(new URL(file, FOLDER), "utf8").split("\n").filter((line) => line.trim() !== "");
    const title = lines.find((line) => line.startsWith("# "))?.slice(2) ?? file;
    it(`${file}: ${title}`, async () => {
      const now = lines.find((line) => line.startsWith("now: "))?.slice(5);
      const talk = await openTalk({ ...(now ? { now } : {}) });
      open.push(talk);
      let answer: Written | null = null;
      let said = "";
      let turns = 0;
      for (const line of lines) {
        if (line.startsWith("# ") || line.startsWith("now: ")) continue;
        if (line.startsWith("  ")) {
          if (answer) check(answer, line, said);
          continue;
        }
        const [who = "", ...rest] = line.split(": ");
        said = rest.join(": ");
        if (who === "...") await talk.advance(said);
        else if (who.endsWith(" records")) answer = await talk.records(who.replace(/ records$/, ""), JSON.parse(said));
        else {
          answer = await talk.say(who, said);
          turns += 1;
          if (answer.emergency || answer.hazard) expect(answer.cautions.length, said).toBeGreaterThan(0);
        }
      }
      expect(turns, "a transcript has at least eight turns").toBeGreaterThanOrEqual(8);
    });
  }
});
