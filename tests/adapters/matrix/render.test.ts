import fc from "fast-check";
import { expect, test } from "vitest";
import { edit, liveChanges } from "../../../adapters/matrix/live.ts";
import { renderMatrix } from "../../../adapters/matrix/render.ts";
import { outline } from "../../../adapters/outline.ts";
import { anyAnswer } from "../any-answer.ts";
import { lost, misreadings } from "../reading.ts";
import { three } from "../three-answers.ts";
import { reader, render } from "../words.ts";
import { links, readHtml } from "./reader.ts";

const bytes = (value: unknown): number => Buffer.byteLength(JSON.stringify(value));

test("any answer is within the sizes, its cautions first and whole in both bodies, no tag or link of the person's, nobody called", {
  timeout: 60_000,
}, () => {
  fc.assert(
    fc.property(anyAnswer, fc.boolean(), ({ answer, maybe_repeat }, pre) => {
      const options = { render, reader, maybe_repeat, tables: pre ? ("pre" as const) : ("html" as const) };
      const events = renderMatrix(answer, options);
      let plain = "";
      let rich = "";
      for (const event of events) {
        expect(event.content["m.mentions"]).toEqual({});
        if (event.kind === "image") {
          expect(links(event.content.body)).toEqual([]);
          expect(bytes(event.content)).toBeLessThan(8_000);
          plain += `\n${event.content.body}`;
          rich += `\n${event.content.body}`;
          continue;
        }
        if (event.kind === "file") {
          expect(links(event.content.body)).toEqual([]);
          expect(bytes(event.content)).toBeLessThan(8_000);
          expect(event.content.info.size).toBe(Buffer.byteLength(event.bytes));
          plain += `\n${event.content.body}`;
          rich += `\n${event.content.body}`;
          continue;
        }
        const { body, formatted_body, msgtype, format } = event.content;
        expect([msgtype, format]).toEqual(["m.notice", "org.matrix.custom.html"]);
        expect(body.length * formatted_body.length).toBeGreaterThan(0);
        expect(Buffer.byteLength(body) + Buffer.byteLength(formatted_body)).toBeLessThanOrEqual(15_000);
        expect(bytes(edit("$of-an-event-with-an-id-of-the-usual-length-x", event.content))).toBeLessThanOrEqual(40_000);
        const read = readHtml(formatted_body);
        expect(read.wrong).toEqual([]);
        expect(links(read.text)).toEqual([]);
        expect(links(body)).toEqual([]);
        expect((body + formatted_body).isWellFormed()).toBe(true);
        plain += `\n${body.replace(/\n+\d+ of \d+\s*$/, "")}`;
        rich += `\n${read.text.replace(/\n+\d+ of \d+\s*$/, "")}`;
      }
      const made = outline(answer, options);
      // the plain body marks each line of a quotation, which the words themselves may do, too
      const unquoted = { ...made, pieces: made.pieces.map((piece) => (piece.kind === "quote" ? { ...piece, words: "" } : piece)) };
      for (const text of [plain, rich]) {
        const words = text.replaceAll("Caution, continued:", "");
        if (words !== text)
          expect(Math.max(...answer.cautions.map((caution) => String(caution.text.args?.words).length))).toBeGreaterThan(1_600);
        expect(misreadings(answer, words)).toEqual([]);
        expect(lost(text === rich ? made : unquoted, words)).toBeNull();
      }
    }),
    { numRuns: 8_000, seed: 5 },
  );
});

test.each(Object.entries(three))("%s reads as it should", (_, answer) => {
  expect(renderMatrix(answer, { render, reader })).toMatchSnapshot();
});

test("a live answer is edited, its further notices sent, those left over taken back", () => {
  const events = renderMatrix(three.trouble, { render, reader });
  const kinds = (shown: string[]): string[] => liveChanges(shown, events).map((one) => one.change);
  expect(kinds([])).toEqual(["send", "send", "send"]);
  expect(kinds(["$a"])).toEqual(["edit", "send", "send"]);
  expect(kinds(["$a", "$b", "$c"])).toEqual(["edit", "edit", "redact"]);
});

test("an edit carries the new notice whole, and a readable fall-back", () => {
  const [event] = renderMatrix(three.checkIn, { render, reader });
  if (event?.kind !== "notice") throw new Error("no notice");
  const made = edit("$a", event.content);
  expect(made["m.new_content"]).toEqual(event.content);
  expect(made["m.relates_to"]).toEqual({ rel_type: "m.replace", event_id: "$a" });
  expect(made.body).toBe(`* ${event.content.body}`);
  expect([made["m.mentions"], made["m.new_content"]["m.mentions"]]).toEqual([{}, {}]);
});

test("the strict reader finds what is wrong", () => {
  expect(readHtml('<p>a & b</p><script>x</script><a href="x">y</a><ul><li>z</ul>').wrong.length).toBeGreaterThan(4);
  expect(links("see https://a.example, evil.com, @a:b.c and @room")).toEqual(["https://a", "l.com", "@a:b", "@room"]);
});
