import { describe, expect, test } from "vitest";
import { recogniseDanger } from "../../src/emergency/index.ts";
import { DANGER_MORE, DANGER_UNSEEN, NEAR_MISSES_MORE, NEAR_MISSES_UNSEEN } from "./messages.ts";

function share<T>(messages: readonly T[], holds: (message: T) => boolean): number {
  return messages.filter(holds).length / messages.length;
}

const found = ({ text }: { text: string }): boolean => recogniseDanger(text) !== null;

/** Floors a little under what was measured; a change that falls through one has cost recall or cries wolf. */
describe("messages nothing was learnt from", () => {
  test("are not among those learnt from", () => {
    const learnt = new Set([...DANGER_MORE, ...NEAR_MISSES_MORE].map(({ text }) => text.toLowerCase()));
    expect([...DANGER_UNSEEN, ...NEAR_MISSES_UNSEEN].filter(({ text }) => learnt.has(text.toLowerCase()))).toEqual([]);
  });

  test("danger said plainly: 98 of 100", () => {
    expect(share(DANGER_UNSEEN.filter(({ oblique }) => !oblique), found)).toBeGreaterThanOrEqual(0.98);
  });

  test("danger said obliquely: 90 of 100", () => {
    expect(share(DANGER_UNSEEN.filter(({ oblique }) => oblique), found)).toBeGreaterThanOrEqual(0.9);
  });

  test("the emergency itself, of those found: 93 of 100", () => {
    const right = share(DANGER_UNSEEN.filter(found), ({ text, kind }) => {
      const danger = recogniseDanger(text);
      return danger?.kind === kind || (danger?.also.includes(kind) ?? false);
    });
    expect(right).toBeGreaterThanOrEqual(0.93);
  });

  test("near misses: at most 8 of 100", () => {
    expect(share(NEAR_MISSES_UNSEEN, found)).toBeLessThanOrEqual(0.08);
  });
});

describe("messages learnt from", () => {
  test("danger: 99 of 100; near misses: at most 2 of 100", () => {
    expect(share(DANGER_MORE, found)).toBeGreaterThanOrEqual(0.99);
    expect(share(NEAR_MISSES_MORE, found)).toBeLessThanOrEqual(0.02);
  });
});

describe("the learnt layer", () => {
  test.each([
    ["her words come out as porridge and she giggles", "co-alarm"],
    ["little man patted the window of the stove, now he's howling", "burn"],
    ["the lid is dancing and a flame licks out each time", "back-puff"],
    ["the plates on the wall tremble and there is a rumble up in the brickwork", "chimney-fire"],
  ])("only ever thinks danger possible: %s", (text, kind) => {
    expect(recogniseDanger(text)).toMatchObject({ kind, certainty: "possible" });
  });

  test("a cry for help in a wall of text is not drowned", () => {
    const calm = "We stack birch in spring under the roof and bring it in by the basket, two days before it is burnt, so that it is dry ";
    expect(recogniseDanger(`${calm.repeat(3)} her eyes roll shut and she slides off the bench ${calm.repeat(3)}`)).not.toBeNull();
    expect(recogniseDanger(calm.repeat(6))).toBeNull();
  });
});

test.each([
  "leaves left on the hearth", "foggy glass", "a whistle at the door", "stove polish fuming",
])("a harmless story raises no card: %s", (text) => {
  expect(recogniseDanger(text)).toBeNull();
});

test.each([
  "alle haben Kopfschmerzen seit der Ofen brennt", "kaikki voivat huonosti ja takka palaa", "det kommer eld ur skorstenen",
  "la pièce est pleine de fumée", "la bambina si è bruciata la mano sullo sportello", "cerré el tiro y todavía hay brasas rojas",
  "popiół w kartonie zaczyna dymić", "сын потерял сознание, печка топится",
])("danger in another language: %s", (text) => {
  expect(recogniseDanger(text)).not.toBeNull();
});

test.each([
  "wie oft muss der Schornsteinfeger kommen", "milloin piippu pitää nuohota", "hur mycket ved behöver jag ikväll",
  "combien de bois pour ce soir", "quanta legna serve stasera", "cuánta leña pongo hoy", "ile drewna na wieczór", "сколько дров на вечер",
])("an everyday question in another language: %s", (text) => {
  expect(recogniseDanger(text)).toBeNull();
});
