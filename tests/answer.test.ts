/** Advice on a hazard cannot be built without its caution. */
import { describe, expect, it } from "vitest";
import { answer, say, steps, text, type Caution } from "../src/answer.ts";
import { CAREFUL } from "../src/conversation/cautions.ts";

const cautions = new Map<string, Caution>(["hot-ash", "burns"].map((id) => [id, { id, text: text(`caution.${id}`) }]));

describe("an answer", () => {
  it("collects the cautions of its blocks, each once, in order", () => {
    const made = answer({ topic: "ash-removal", headline: text("h"), cautions: ["burns"], blocks: [say(text("a"), "hot-ash"), steps([text("b")], { cautions: ["hot-ash", "burns"] })] }, cautions, CAREFUL);
    expect(made.hazard).toBe(true);
    expect(made.cautions.map(({ id }) => id)).toEqual(["burns", "hot-ash"]);
  });
  it("on a topic that touches a hazard cannot be made without one", () => {
    expect(() => answer({ topic: "ash-removal", headline: text("h") }, cautions, CAREFUL)).toThrow(/names no caution/);
    expect(() => answer({ topic: "help", emergency: true, headline: text("h") }, cautions)).toThrow(/names no caution/);
  });
  it("cannot name a caution that nobody wrote", () => {
    expect(() => answer({ topic: "help", headline: text("h"), blocks: [say(text("a"), "made-up")] }, cautions)).toThrow(/no caution "made-up"/);
  });
  it("without any hazard says so", () => {
    const made = answer({ topic: "help", headline: text("h"), blocks: [say(text("a"))] }, cautions, CAREFUL);
    expect(made).toMatchObject({ hazard: false, cautions: [] });
  });
});
