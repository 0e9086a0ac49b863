import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { answer, verbatim } from "../../src/answer.ts";
import { beginForm, fillIn, formQuestion } from "../../adapters/forms.ts";
import { labels, outline } from "../../adapters/outline.ts";
import { chunks, cut, pack } from "../../adapters/pack.ts";
import { oneLine, plain, shorten } from "../../adapters/plain.ts";
import { align, records } from "../../adapters/table.ts";
import { width, wrap } from "../../adapters/width.ts";
import { MissingText } from "../../src/text/render.ts";
import { three } from "./three-answers.ts";
import { adapterWords, reader, render } from "./words.ts";

test.each([
  ["\u001b[31mred\u001b[0m and \u001b]8;;https://x\u0007link\u001b]8;;\u0007", "red and link"],
  ["a\u202Eb\u200Bc\u2066d\uFEFF\u00AD", "abcd"],
  ["one\r\ntwo\rthree\u2028four", "one\ntwo\nthree\nfour"],
  ["\uD800x\u0000\u0007", "\uFFFDx"],
  // joiners that shape emoji, Persian and Devanagari words stay; those that hide in others go
  ["👨‍👩‍👧 می‌خواهم क्‍ष pay\u200Dpal", "👨‍👩‍👧 می‌خواهم क्‍ष paypal"],
])("%j is cleaned", (words, wanted) => expect(plain(words)).toBe(wanted));

test("a label is one line, a cut label ends between letters", () => {
  expect(oneLine(" a\n b\t c ")).toBe("a b c");
  expect(shorten("👨‍👩‍👧👨‍👩‍👧", 12)).toBe("👨‍👩‍👧…");
  expect(shorten("short", 5)).toBe("short");
});

// widths as in Unicode Standard Annex 11 (East Asian Width): wide letters take two columns, marks none
test.each([
  ["abc", 3],
  ["木", 2],
  ["ｱ", 1],
  ["Ａ", 2],
  ["e\u0301", 1],
  ["🔥", 2],
  ["👨‍👩‍👧", 2],
  ["☀️", 2],
  ["한글", 4],
  ["м³ °C −5", 8],
])("%s is %i wide", (words, columns) => expect(width(words)).toBe(columns));

test("a line breaks at spaces, never between a figure and its unit, and inside a word only when it must", () => {
  expect(wrap("birch at 27 % and 12.5 kg of it", 11)).toEqual(["birch at", "27 % and", "12.5 kg of", "it"]);
  expect(wrap("abcdefgh ij", 5)).toEqual(["abcde", "fgh", "ij"]);
  expect(wrap("木木木", 4)).toEqual(["木木", "木"]);
  expect(wrap("a\n\nb", 9)).toEqual(["a", "", "b"]);
});

test("a table stands in columns, figures to the right; too wide, it breaks cells, then becomes records", () => {
  const table = {
    columns: ["Lit", "Load"],
    rows: [
      ["Mon", "12.0 kg"],
      ["Tuesday", "6.0 kg"],
    ],
  };
  expect(align(table, 40)).toEqual({ head: ["Lit         Load", "───────  ───────"], rows: [["Mon      12.0 kg"], ["Tuesday   6.0 kg"]] });
  const wide = { columns: ["Note"], rows: [["black all over again"]] };
  expect(align(wide, 10)?.rows).toEqual([["black all", "over again"]]);
  expect(
    align(
      { columns: ["a", "b", "c", "d", "e"], rows: [["x".repeat(20), "x".repeat(20), "x".repeat(20), "x".repeat(20), "x".repeat(20)]] },
      40,
    ),
  ).toBeNull();
  expect(
    records({
      columns: ["Lit", "Load", "Wood", "Note"],
      rows: [
        ["Mon", "", "", "good"],
        ["Tue", "6 kg", "birch", "black all over the glass"],
      ],
    }),
  ).toEqual([
    { title: "Mon", lines: ["Note:\u00A0good"] },
    { title: "Tue", lines: ["Load:\u00A06\u00A0kg · Wood:\u00A0birch", "Note: black all over the glass"] },
  ]);
});

test("words are cut at a line break, else after a sentence, else at a space, else between letters", () => {
  expect(cut("One two three.\nFour five six.", 20)).toEqual(["One two three.", "Four five six."]);
  expect(cut("One two three. Four five", 20)).toEqual(["One two three.", "Four five"]);
  expect(cut("onetwothree fourfive", 15)).toEqual(["onetwothree", "fourfive"]);
  expect(cut("木".repeat(5), 2)).toEqual(["木木", "木木", "木"]);
  expect(cut("a👨‍👩‍👧b", 9)).toEqual(["a👨‍👩‍👧", "b"]);
});

test("messages are filled in order; a heading goes along with what it heads", () => {
  const part = (name: string, size: number, keep = false) => ({ name, size: [size], keep });
  const pages = pack([part("a", 6), part("h", 2, true), part("b", 3), part("c", 9)], [10]);
  expect(pages.map((page) => page.map((one) => one.name).join(""))).toEqual(["a", "hb", "c"]);
  expect(chunks([3, 3, 3, 9, 1], (one) => one, 6)).toEqual([[3, 3], [3], [9], [1]]);
});

test("cautions first; in an emergency what to do first, its cautions next", () => {
  const kinds = (made: typeof three.trouble): string =>
    outline(made, { render, reader })
      .pieces.slice(0, 4)
      .map((piece) => piece.kind)
      .join(" ");
  expect(kinds(three.trouble)).toBe("caution headline paragraph causes");
  expect(kinds(three.emergency)).toBe("headline list caution paragraph");
});

test("the first steps of an emergency come first wherever they stand, and only they", () => {
  const k = { id: "k", text: verbatim("k") };
  const made = answer(
    {
      topic: "co-alarm",
      emergency: true,
      cautions: ["k"],
      headline: verbatim("Out"),
      blocks: [
        { kind: "text", text: verbatim("by the way"), cautions: [] },
        { kind: "steps", ordered: true, steps: [verbatim("go")], cautions: [] },
        { kind: "steps", ordered: true, steps: [verbatim("later")], cautions: [] },
      ],
    },
    new Map([["k", k]]),
  );
  expect(outline(made, { render, reader }).pieces.map((piece) => piece.kind)).toEqual(["headline", "list", "caution", "paragraph", "list"]);
});

test("shares are said in words first, and no finer than they are known", () => {
  const shares = [0.93, 0.52, 0.21, 0.11, 0.02].map((share, at) => ({ id: `c${at}`, title: verbatim("x"), share, because: [] }));
  const made = answer({ topic: "help", headline: verbatim("h"), blocks: [{ kind: "causes", items: shares, cautions: [] }] }, new Map());
  const [, piece] = outline(made, { render, reader }).pieces;
  if (piece?.kind !== "causes") throw new Error("no causes");
  expect(piece.groups.map((group) => [group.label, ...group.causes.map((cause) => cause.share)])).toEqual([
    ["Most likely", "very likely, about 95 %"],
    ["Also possible", "likely, about 50 %", "possible, about 20 %", "less likely, about 10 %", "less likely, under 5 %"],
  ]);
});

test("an emergency is shown whole when no catalogue could be read", () => {
  const bare = (text: Parameters<typeof render>[0]): string => {
    if (text.id === "verbatim") return String(text.args?.words);
    throw new MissingText(text.id);
  };
  const { pieces } = outline(three.emergency, { render: bare, reader });
  expect(pieces[0]).toEqual({ kind: "headline", text: "Get everyone out now, then call 112" });
  expect(pieces.find((piece) => piece.kind === "caution")).toMatchObject({ label: "" });
});

test("a form takes numbers, words and ids, goes back, leaves out, and refuses what it cannot read", () => {
  const label = labels({ render, reader });
  const form = outline(three.checkIn, { render, reader }).forms[0];
  if (!form) throw new Error("no form");
  let talk = beginForm(form);
  const say = (line: string) => {
    const step = fillIn(talk, line, label);
    if (step.step !== "done") talk = step.talk;
    return step;
  };
  expect(formQuestion(talk, label)).toMatchObject({ where: "1 of 6", text: "Load (kg; now 12.5)" });
  say("twelve kilos");
  expect(say("oak")).toMatchObject({ step: "wrong", sentence: "Type a number from 1 to 2, or one of the words." });
  say("BIRCH");
  say("back");
  expect(formQuestion(talk, label)?.text).toBe("Species (now Birch)");
  say("2");
  say("");
  say("21:40");
  expect(say("perhaps")).toMatchObject({ step: "wrong", sentence: "Type yes or no." });
  say("y");
  expect(say("fine")).toEqual({
    step: "done",
    id: "fire",
    values: { load_kg: "twelve kilos", species: "spruce", flame_out_at: "21:40", clean: true, note: "fine" },
  });
});

const sources = readdirSync(new URL("../../adapters", import.meta.url), { recursive: true, encoding: "utf8" })
  .filter((file) => /^(?:\w+|(?:terminal|discord|matrix)\/[\w-]+)\.ts$/.test(file.replaceAll("\\", "/")))
  .map((file) => [file, readFileSync(new URL(`../../adapters/${file}`, import.meta.url), "utf8")] as const);

test.each(sources)("%s says nothing of the domain", (_, source) => {
  expect(
    source.match(/\b(?:damper|ember|chimney|flue|wood|firewood|heater|stove|hearth|birch|moisture|soot|ash|kindling|monoxide|sweep)s?\b/gi),
  ).toBeNull();
});

test("each word that an adapter asks for is in the catalogue, and each in the catalogue is asked for", () => {
  const asked = new Set(sources.flatMap(([, source]) => [...source.matchAll(/"([a-z]+(?:-[a-z]+)*)"/g)].map(([, id]) => `adapter.${id}`)));
  for (const [, source] of sources)
    for (const [, id] of source.matchAll(/label\("([a-z-]+)"/g)) expect(adapterWords.has(`adapter.${id}`), id).toBe(true);
  expect([...adapterWords.keys()].filter((id) => !asked.has(id))).toEqual([]);
});
