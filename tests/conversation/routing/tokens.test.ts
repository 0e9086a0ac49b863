import { describe, expect, it } from "vitest";
import { normalise, READ_CHARACTERS } from "../../../src/conversation/routing/normalise.ts";
import { parts } from "../../../src/conversation/routing/parts.ts";
import { stem } from "../../../src/conversation/routing/stem.ts";
import { tokenise } from "../../../src/conversation/routing/tokens.ts";

const shown = (text: string): string[] =>
  tokenise(normalise(text)).map((token) => (token.kind === "quantity" ? `#${token.of}` : token.text));

describe("tokenise", () => {
  it.each([
    ["12kg birch at 18:10", ["#mass", "kg", "birch", "at", "#clock"]],
    ["22 % wet", ["#share", "wet"]],
    ["-5 C tonight", ["#below-zero", "c", "tonight"]],
    ["4 x 1.5 x 0,33 m", ["#number", "x", "#number", "x", "#length", "m"]],
    ["120m2", ["#area", "m2"]],
    ["twelve kilos", ["twelve", "#mass", "kilos"]],
    ["$300 a cord", ["#money", "a", "cord"]],
    ["it won't; the door's hot?", ["it", "wont", "the", "door", "hot", "?"]],
    ["gl4ss", ["glass"]],
  ])("%s", (text, tokens) => {
    const units = new Set(["kg", "c", "m", "m2"]);
    expect(shown(text).filter((token) => !units.has(token))).toEqual(tokens.filter((token) => !units.has(token)));
  });
});

describe("normalise", () => {
  it("folds what looks the same and drops what cannot be seen", () => {
    expect(normalise("Ｓｍｏｋｅ\u200b É\u0301tage  “ok”")).toBe('smoke etage "ok"');
    expect(normalise("sooooo")).toBe("soo");
  });
  it("reads a bounded part of a wall of text", () => {
    expect(normalise("ab ".repeat(50_000)).length).toBeLessThanOrEqual(READ_CHARACTERS);
    expect(normalise("ﷺ".repeat(50_000)).length).toBeLessThanOrEqual(2 * READ_CHARACTERS);
  });
});

describe("stem", () => {
  it.each([["smoke", "smoking"], ["log", "logs"], ["close", "closed"], ["jam", "jammed"], ["berry", "berries"], ["brush", "brushes"]])(
    "%s meets %s", (one, other) => expect(stem(one)).toBe(stem(other)));
  it("keeps apart what is not the same", () => {
    expect(stem("glass")).not.toBe(stem("glaze"));
    expect(stem("this")).toBe("this");
  });
});

describe("parts", () => {
  it("cuts between questions and leaves one question whole", () => {
    expect(parts("Why is my glass black? When is the sweep due?")).toEqual(["Why is my glass black?", "When is the sweep due?"]);
    expect(parts("why is my glass black")).toEqual([]);
  });
});
