import { expect, test } from "vitest";
import { answer, ask, verbatim } from "../../../src/answer.ts";
import { formPage, readModal, renderModal } from "../../../adapters/discord/modal.ts";
import { renderDiscord } from "../../../adapters/discord/render.ts";
import { labels, outline } from "../../../adapters/outline.ts";
import { three } from "../three-answers.ts";
import { reader, render } from "../words.ts";
import { readMessages } from "./reader.ts";

const options = { render, reader, ref: "r" };
const asking = (count: number, label: string) =>
  answer(
    {
      topic: "help",
      headline: verbatim("h"),
      blocks: [
        ask(
          "q",
          verbatim("Which?"),
          Array.from({ length: count }, (_, at) => ({ id: `c${at}`, label: verbatim(`${label}${at}`) })),
        ),
      ],
    },
    new Map(),
  );
const rows = (count: number, label: string): any[] =>
  renderDiscord(asking(count, label), options)
    .flatMap((one) => one.payload.components as any[])
    .filter((one) => one.type === 1);

test("few and short: buttons with their words", () => {
  expect(rows(7, "pile ").map((row) => row.components.map((one: any) => one.label))).toEqual([
    ["pile 0", "pile 1", "pile 2", "pile 3", "pile 4"],
    ["pile 5", "pile 6"],
  ]);
});

test("few and long: the words stand above, numbered buttons below, nothing is cut", () => {
  const label = "a description of some length that no button of a phone shows ";
  expect(rows(3, label)[0].components.map((one: any) => one.label)).toEqual(["1", "2", "3"]);
  const { text } = readMessages(renderDiscord(asking(3, label), options));
  for (const at of [0, 1, 2]) expect(text).toContain(`${label}${at}`);
});

test("thirty: two selects, each saying which numbers it holds", () => {
  const selects = rows(30, "pile ").map((row) => row.components[0]);
  expect(selects.map((one) => [one.placeholder, one.options.length])).toEqual([
    ["Choose, 1 to 25", 25],
    ["Choose, 26 to 30", 5],
  ]);
  expect(selects[1].options[0]).toEqual({ label: "26 pile 25", value: "26:c25" });
});

test("a form is filled in by pages of five and read back by the fields' own keys", () => {
  const form = outline(three.checkIn, options).forms[0];
  if (!form) throw new Error("no form");
  const label = labels(options);
  const modals = [0, 1].map((page) => renderModal(form, page, "r", label));
  expect(modals.map((one) => one.components.length)).toEqual([5, 1]);
  expect(formPage(500)).toEqual({ number: 5, page: 0 });
  expect(readModal(form, { f0: " 12,5 ", f1: ["1"], f2: "", f4: ["0"], f5: "good" })).toEqual({
    load_kg: "12,5",
    species: "spruce",
    clean: false,
    note: "good",
  });
  expect(() => renderModal(form, 2, "r", label)).toThrow(RangeError);
});
