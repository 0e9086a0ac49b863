import { expect, test } from "vitest";
import { answer, ask, type Choice, verbatim } from "../../../src/answer.ts";
import { outline } from "../../../adapters/outline.ts";
import { firstNumber, type Open, parse } from "../../../adapters/terminal/parse.ts";
import { reader, render } from "../words.ts";

const question = (labels: readonly string[], live?: string) =>
  answer(
    {
      topic: "help",
      headline: verbatim("h"),
      blocks: [
        ask(
          "q",
          verbatim("?"),
          labels.map((label): Choice => ({ id: label.toLowerCase(), label: verbatim(label) })),
        ),
      ],
      ...(live ? { live } : {}),
    },
    new Map(),
  );
const open = (made: ReturnType<typeof question>, first_number = 1): Open => ({
  after: 0,
  outline: outline(made, { render, reader, first_number }),
  ...(made.live ? { live: made.live } : {}),
});
const flames = open(question(["Yes, black in the dark", "No flame", "Été"]));

test.each([
  ["2", { means: "choice", choice: "no flame" }],
  [" 2. ", { means: "choice", choice: "no flame" }],
  ["#3)", { means: "choice", choice: "été" }],
  ["NO  FLAME.", { means: "choice", choice: "no flame" }],
  ["ete", { means: "choice", choice: "été" }],
  // less than the whole label is never taken for it: what a bare word means is for the talk to judge
  ["yes", { means: "text", text: "yes" }],
  ["no", { means: "text", text: "no" }],
  ["4", { means: "text", text: "4" }],
  ["0", { means: "text", text: "0" }],
  ["2 kg", { means: "text", text: "2 kg" }],
  ["-1", { means: "text", text: "-1" }],
])("%j", (line, meant) => {
  expect(parse(line, flames.outline.numbered)).toEqual(meant);
});

test("two choices of the same words are told apart by number only", () => {
  const twice = open(question(["Birch", "Birch"]));
  expect(parse("birch", twice.outline.numbered).means).toBe("text");
  expect(parse("2", twice.outline.numbered).means).toBe("choice");
});

test("numbers still open are not given out again", () => {
  expect(firstNumber([], question(["a", "b"]))).toBe(1);
  expect(firstNumber([flames], question(["a", "b"]))).toBe(4);
  expect(firstNumber([flames], question([]))).toBe(1);
});

test("a live answer keeps its numbers while its choices stay the same, and only then", () => {
  const guide = open(question(["a", "b"], "guide"), 4);
  expect(firstNumber([flames, guide], question(["a", "b"], "guide"))).toBe(4);
  expect(firstNumber([flames, guide], question(["b", "a"], "guide"))).toBe(6);
});
