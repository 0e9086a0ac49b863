import fc from "fast-check";
import { expect, test } from "vitest";
import { renderModal } from "../../../adapters/discord/modal.ts";
import { renderDiscord } from "../../../adapters/discord/render.ts";
import { labels, outline } from "../../../adapters/outline.ts";
import { anyAnswer } from "../any-answer.ts";
import { lost, misreadings } from "../reading.ts";
import { three } from "../three-answers.ts";
import { reader, render } from "../words.ts";
import { modalOverLimits, overLimits } from "./limits.ts";
import { readMarkdown, readMessages } from "./reader.ts";

const REF = "Abcdefghij_-0123456789";

test("any answer is within the limits, its cautions first and whole, nobody called, nothing of the person's words live", {
  timeout: 60_000,
}, () => {
  fc.assert(
    fc.property(anyAnswer, ({ answer, maybe_repeat }) => {
      const options = { render, reader, ref: REF, maybe_repeat };
      const shared = renderDiscord(answer, { ...options, share: true, ephemeral: true, note: "shown by somebody with a *long* name" });
      expect(shared.flatMap(overLimits)).toEqual([]);
      const messages = renderDiscord(answer, options);
      const made = outline(answer, options);
      expect(messages.flatMap(overLimits)).toEqual([]);
      const read = readMessages(messages);
      expect(read.live).toEqual([]);
      // only a caution that no message can hold goes on in the next one, and says so
      const words = read.text.replaceAll("Caution, continued:", "");
      if (words !== read.text)
        expect(Math.max(...answer.cautions.map((caution) => String(caution.text.args?.words).length))).toBeGreaterThan(1_900);
      expect(misreadings(answer, words)).toEqual([]);
      expect(lost(made, words)).toBeNull();
      for (const form of made.forms) {
        for (let page = 0; page * 5 < form.fields.length; page++)
          expect(modalOverLimits(renderModal(form, page, REF, labels(options)))).toEqual([]);
      }
    }),
    { numRuns: 8_000, seed: 26 },
  );
});

test("cautions that a message can hold are all in the first one", () => {
  const messages = renderDiscord(three.trouble, { render, reader, ref: REF });
  expect(JSON.stringify(messages[0]?.payload.components[0])).toContain("Keep children and cloths away");
});

test.each(Object.entries(three))("%s reads as it should", (_, answer) => {
  expect(renderDiscord(answer, { render, reader, ref: REF })).toMatchSnapshot();
});

test("the reader of Markdown finds what is live", () => {
  expect(readMarkdown("**a** <@12> @here [x](http://y) :fire: \\*b\\* ||c||")).toEqual({
    text: "a     *b* c",
    live: ["<@12>", "@here", "[x](http://y)", ":fire:"],
  });
});
