import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyText } from "./any-text.ts";
import { parse } from "yaml";
import { COMMON_SPECIES, readSpecies, speciesNames } from "../../../src/conversation/reading/species.ts";

const ids = (text: string): string[] => readSpecies(text).map(({ id }) => id);

describe("trees by their names", () => {
  test.each([
    ["12kg birch", ["birch"]], ["oak and spruce", ["oak", "spruce"]], ["Douglas-fir", ["douglas fir"]], ["doug fir", ["douglas fir"]],
      ["white ash", ["white ash"]], ["red oak", ["red oak"]], ["black locust", ["black locust"]], ["sweet chestnut", ["sweet chestnut"]],
    ["pines", ["pine"]], ["birches", ["birch"]], ["koivu", ["birch"]], ["Buche", ["beech"]], ["hêtre", ["beech"]], ["берёза", ["birch"]],
      ["sosna", ["pine"]], ["björk", ["birch"]], ["Fichte", ["spruce"]], ["mänty", ["pine"]], ["Eiche", ["oak"]], ["chêne", ["oak"]],
    ["softwood", ["softwood"]], ["and if it's spruce?", ["spruce"]], ["hornbeam logs", ["hornbeam"]], ["BIRCH", ["birch"]],
      ["bir\u200bch", ["birch"]],
  ] as const)("%s", (text, expected) => expect(ids(text)).toEqual(expected));
});

describe("slips of spelling", () => {
  test.each([["sprce", "spruce"], ["birhc", "birch"], ["birchs", "birch"], ["hornbean", "hornbeam"], ["mapel", "maple"],
    ["chesnut", "sweet chestnut"], ["hickery", "hickory"], ["beach logs", "beech"], ["larche", "larch"], ["eucaliptus", "eucalyptus"],
    ["wilow", "willow"]])("%s", (text, id) => expect(ids(text)).toEqual([id]));

  test.each(["the bench is hot", "older wood", "in march", "fire", "it fires up", "popular", "a pillow", "match", "larger", "bunch",
    "merry", "the cellar", "charming", "crack in the brick", "largest", "point", "cooker hood on", "hot ashs in a bucket", "popular"])("no tree in: %s", (text) =>
    expect(ids(text)).toEqual([]));
});

describe("ash is a tree or what is left", () => {
  test.each(["how often empty ash", "hot ash in the bin", "take out the ash", "ash removal", "the ash pan is full", "wood ash",
    "3 cm of ash layer", "ashes", "a bucket of ash"])("what is left: %s", (text) =>
    expect(ids(text).filter((id) => id === "ash")).toEqual([]));
  test.each(["ash logs", "12 kg of seasoned ash", "split ash", "ash wood", "3 m3 ash"])("the tree: %s", (text) =>
    expect(readSpecies(text)[0]).toMatchObject({ id: "ash", weak: false }));
  test("alone it is weak", () => expect(readSpecies("ash?")[0]).toMatchObject({ id: "ash", weak: true }));
});

test("every default name is read as its own tree", () => {
  for (const { id, names } of COMMON_SPECIES) {
    for (const name of names) expect(ids(`${name} logs`)[0], name).toBe(COMMON_SPECIES.find((tree) => tree.names.includes(name))?.id ?? id);
  }
});

test("the names in the knowledge of trees can be read", () => {
  const list = speciesNames(parse(readFileSync(new URL("../../../knowledge/species.yaml", import.meta.url), "utf8")));
  expect(list.length).toBeGreaterThan(80);
  expect(readSpecies("12 kg birch", list)[0]?.id).toBe("birch");
  expect(readSpecies("river red gum", list)[0]?.id).toBe("river red gum");
  expect(readSpecies("Traubeneiche", list)[0]?.id).toBe("sessile oak");
  expect(readSpecies("fagus sylvatica", list)[0]?.id).toBe("European beech");
});

test("never throws", () => {
  fc.assert(fc.property(anyText(80), (text) => {
    for (const { at } of readSpecies(text)) expect(at[1]).toBeLessThanOrEqual(text.length);
  }), { seed: 8, numRuns: 400 });
});
