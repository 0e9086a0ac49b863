import { expect, test } from "vitest";
import { codeBlock, escapeMarkdown } from "../../../adapters/discord/escape.ts";
import { choiceId, customId, optionValue, readCustomId, readOption } from "../../../adapters/discord/custom-id.ts";
import { HOSTILE } from "../any-answer.ts";
import { readMarkdown } from "./reader.ts";

test.each(HOSTILE.filter((words) => !/[\n\r]/.test(words)))("%j shows as it was typed", (words) => {
  for (const around of [words, `${words} ${words}`, `a ${words}`, `${words}b`]) {
    expect(readMarkdown(escapeMarkdown(around))).toEqual({ text: around, live: [] });
  }
});

test("several lines stay lines", () => {
  const words = "# one\n- two\n> three\n```\nfour\n```\n12. five";
  expect(readMarkdown(escapeMarkdown(words))).toEqual({ text: words, live: [] });
});

test("ordinary sentences stay legible at the source", () => {
  expect(escapeMarkdown("12.5 kg at 27 %, and/or dry: yes (no).")).toBe("12.5 kg at 27 %, and\\/or dry: yes (no).");
});

test("a fixed-width block cannot be left from inside", () => {
  expect(codeBlock(["a```", "@here"]).split("```")).toHaveLength(3);
});

test("what a button is called comes back, anything else does not", () => {
  expect(readCustomId(customId("choose", "Abc_-9", 12))).toEqual({ action: "choose", ref: "Abc_-9", at: 12 });
  for (const id of ["v2:choose:a.1", "v1:drop:a.1", "v1:choose:a", "v1:choose:a.1 ", "", "v1:choose:a b.1"])
    expect(readCustomId(id)).toBeNull();
});

test("a choice's id says by itself what it is; by reference only when it is too long or not plain", () => {
  expect(readCustomId(choiceId("r", 3, "sign:a:b=c d"))).toEqual({ action: "is", choice: "sign:a:b=c d" });
  for (const choice of ["x".repeat(95), "é", " x", ""]) expect(readCustomId(choiceId("r", 3, choice))).toEqual({ action: "choose", ref: "r", at: 3 });
  expect([readOption(optionValue(26, "c25")), readOption(optionValue(26, "é")), readOption("")]).toEqual(["c25", 26, 0]);
});
