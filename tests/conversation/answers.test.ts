/** Replies in own words to the questions of the trees: what is denied does not count, no everyday word decides, what is alarming stays so. */
import { describe, expect, it } from "vitest";
import { readFigures } from "../../src/conversation/reading/figures.ts";
import { answerTo, signsIn } from "../../src/conversation/sign-answer.ts";
import { loadKnowledge } from "../../src/knowledge/load.ts";
import type { Sign } from "../../src/knowledge/schemas.ts";
import { isGraded, type SignAnswer } from "../../src/trouble/walk.ts";

const { troubles } = await loadKnowledge(new URL("../../knowledge", import.meta.url).pathname);
const now_ms = Date.parse("2026-11-25T12:00:00Z");
function read(tree: string, sign: string, text: string, max_load_kg?: number): SignAnswer | undefined {
  const asked = troubles.get(tree as never)?.signs[sign];
  if (!asked) throw new Error(`no ${sign} in ${tree}`);
  return answerTo(asked, text, readFigures(text), { now_ms, ...(max_load_kg ? { max_load_kg } : {}) });
}

describe("a reply", () => {
  it.each([
    ["smoke-on-opening", "outdoors", "no fans, no wind, minus 6", "nothing"],
    ["smoke-on-opening", "outdoors", "nothing, 18 F and hood off", "nothing"],
    ["smoke-mid-burn", "fans", "no fan, hood off, but the dryer was running", "started"],
    ["smoke-at-lighting", "check", "all as it should be, no fans, nothing on the floor", "none"],
    ["co-alarm", "fans", "no hood no fan", "no"],
    ["door-leak", "hot", "never over the max", "no"],
    ["uneven-heat", "draught", "nope, draws as good as ever", "no"],
    ["hot-surface", "scorch", "nothing within a metre", "neither"],
  ])("denies: %s, %s, %s", (tree, sign, text, answer) => expect(read(tree, sign, text)).toBe(answer));

  it.each([
    ["slow-ignition", "pieces", "14 to 18 cm, all of them", "thick"],
    ["cold-morning", "fire", "about 80 minutes of flame", "usual"],
    ["charcoal-left", "pieces", "14 or 15 cm", 14],
    ["smoke-at-lighting", "outside", "about 3 outside, 20 in the room", 3],
    ["heavy-soot", "sweep", "in March", 8],
  ])("gives a figure: %s, %s, %s", (tree, sign, text, answer) => {
    const got = read(tree, sign, text);
    if (typeof answer === "number") expect(Math.abs(Number(got) - answer)).toBeLessThanOrEqual(1);
    else expect(got).toBe(answer);
  });

  it("weighs kilograms against the sheet, or against the person's own words", () => {
    expect(read("black-glass", "load-share", "8 kg", 16)).toBe(50);
    expect(read("black-glass", "load-share", "three kilos of thirteen")).toBeCloseTo(23, 0);
    expect(read("black-glass", "load-share", "14 kg, ought be 8")).toBe(175);
    expect(read("black-glass", "load-share", "8 kg")).toBeUndefined();
  });

  it("that fits two answers alike gives likelihoods, and one of everyday words nothing", () => {
    const before = troubles.get("back-puff")?.signs.before;
    expect(before).toBeDefined();
    const { said: _, ...rulesAlone } = before as Sign;
    const both = answerTo(rulesAlone, "laid two logs on the red bed, left the air nearly shut", []);
    expect(isGraded(both) && Math.abs((both.likely.reload ?? 0) - (both.likely["air-shut"] ?? 0)) < 0.3).toBe(true);
    for (const text of ["it was after that", "well, new at the top"]) expect(typeof read("stuck-damper", "since", text)).not.toBe("string");
  });
});

describe("a gate", () => {
  it.each([
    ["back-puff", "people", "no, all ok, CO alarm zero", "none"],
    ["back-puff", "people", "everyone well, alarm was 4 then 0", "none"],
    ["back-puff", "people", "no, sleeve singed, skin not burnt", "none"],
    ["smoke-mid-burn", "danger", "no symptoms, alarm never sounded", "neither"],
    ["fire-dies", "danger", "a bit of smoke at the door, nobody has a headache, alarm silent", "smoke"],
    ["co-alarm", "sound", "one short chirp every 40 secs, nobody ill", "chirp"],
    ["co-alarm", "sound", "firemen came and measured, all clear now", "over"],
    ["chimney-fire", "now", "the brigade put it out on Monday", "past"],
    ["cold-smell", "ill", "uns geht es allen gut", "no"],
    ["smoke-on-opening", "feeling-ill", "the smoke detector howled, it stopped once we aired, nobody has anything, CO 0", "no"],
    ["co-alarm", "sound", "beeps every 40 seconds, nobody ill", "chirp"],
    ["co-alarm", "sound", "fire crew measured nothing, everybody is fine", "over"],
  ])("passes: %s, %s, %s", (tree, sign, text, answer) => expect(read(tree, sign, text)).toBe(answer));

  it.each([
    ["back-puff", "people", "no, but my wife is dizzy", "ill"],
    ["back-puff", "people", "no we feel dizzy", "ill"],
    ["back-puff", "people", "my hand got burnt", "burnt"],
    ["smoke-mid-burn", "danger", "the lounge is filling up with it", "filling"],
    ["smoke-at-lighting", "feeling-ill", "not feeling well", "yes"],
    ["smoke-at-lighting", "feeling-ill", "the alarm went off", "yes"],
    ["smoke-at-lighting", "feeling-ill", "it shows 80 ppm", "yes"],
    ["smoke-at-lighting", "feeling-ill", "the CO alarm went off but stopped, all well", "yes"],
    ["smoke-at-lighting", "feeling-ill", "smoke alarm went off and stopped, but my wife is dizzy", "yes"],
    ["smoke-at-lighting", "feeling-ill", "smoke and CO alarm went off, stopped now, everyone well", "yes"],
    ["smoke-at-lighting", "feeling-ill", "smoke alarm won't stop, we are fine", "yes"],
    ["chimney-fire", "now", "there's still a rumble up there", "burning"],
    ["co-alarm", "sound", "it stopped after I opened windows, nobody has measured", "unmeasured"],
    ["chimney-fire", "now", "stopped by itself an hour ago, nobody came", "unseen"],
    ["chimney-fire", "now", "still roaring now", "burning"],
    ["chimney-fire", "now", "crew came at five and went at seven, but the wall upstairs is hot again", "burning"],
    ["chimney-fire", "now", "fire service looked this morning with a camera, all clear, nothing hot", "past"],
    ["over-firing", "flue-fire", "there are sparks coming out of the pot", "yes"],
    ["stuck-damper", "now", "there's still red embers and it won't open", "fire-shut"],
  ])("holds: %s, %s, %s", (tree, sign, text, answer) => expect(read(tree, sign, text)).toBe(answer));
});

it("a word of a story is a hint that leaves the question open, a phrase is believed, and neither answers a gate", () => {
  const tell = (tree: string, text: string) => signsIn(troubles.get(tree as never) as never, text, readFigures(text), { now_ms });
  expect(tell("smoke-at-lighting", "it has smoked for a few weeks when I light it").rest).toBeUndefined();
  const { since } = tell("smoke-at-lighting", "the smoke is getting worse every time");
  expect(isGraded(since) && since.likely.weeks).toBeGreaterThan(0.7);
  const gnaw = tell("nest-in-flue", "squirrel noises").what;
  expect(isGraded(gnaw) && gnaw.open).toBe(true);
  expect(tell("back-puff", "my hand is burnt").people).toBeUndefined();
});

it("takes no figure of a story for another thing", () => {
  const tell = (tree: string, text: string) => signsIn(troubles.get(tree as never) as never, text, readFigures(text), { now_ms });
  expect(tell("cracks", "a crack in the plaster, 30 cm long").width).toBeUndefined();
  expect(tell("cracks", "a crack in the plaster, 30 cm long and 0.4 mm wide").width).toBeCloseTo(0.4, 5);
  expect(tell("high-wood-use", "we burn 30 % more than last winter").moisture).toBeUndefined();
  expect(tell("high-wood-use", "beech at 17 %, and 30 % more than last winter").moisture).toBe(17);
  expect(tell("room-too-warm", "26 degrees in here after one fire")["outside-high"]).toBeUndefined();
});
