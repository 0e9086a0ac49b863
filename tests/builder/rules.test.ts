/** Builder's rules: what tightens is taken, what loosens is refused with a sentence, what was before is kept. */
import { describe, expect, it } from "vitest";
import { pastedRules, readRulesFile } from "../../src/builder/file.ts";
import { tighten, withdrawn } from "../../src/builder/rules.ts";
import { plainWords, wordsRefused } from "../../src/builder/words.ts";
import { gloss } from "../../src/conversation/german/gloss.ts";
import { readBuilder } from "../../src/conversation/reading/read-builder.ts";
import { limits } from "../../src/limits.ts";
import type { Heater } from "../../src/records/types.ts";

const BY = { person_id: "ben", at_ms: Date.parse("2026-11-25T18:00:00Z") };
const heater: Heater = { id: "h", owner_id: "ana", member_ids: ["ana"], facts: { max_load_kg: 16, max_load_source: "sheet", kind: "bell" }, upkeep: {}, rules: [] };
const refusedIds = (given: Parameters<typeof tighten>[1], on = heater): string[] => tighten(on, given, BY).refused.map(({ id }) => id);

describe("a rule on figures", () => {
  it("takes what tightens", () => {
    const { heater: after, refused } = tighten(heater, { max_load_kg: 12, min_load_kg: 9, max_day_kg: 20, spacing_h: 14 }, BY);
    expect(refused).toEqual([]);
    expect(limits(after.facts, after.rules)).toMatchObject({ max_load_kg: 12, max_source: "builder", min_load_kg: 9, max_day_kg: 20, spacing_h: 14 });
    expect(after.rules).toEqual([expect.objectContaining({ from: "builder", said_by: "ben", said_at_ms: BY.at_ms, version: 1 })]);
  });
  it.each([
    ["a larger load", { max_load_kg: 18 }, "builder.refused.max"],
    ["a lower minimum", { min_load_kg: 5 }, "builder.refused.min"],
    ["a minimum above the maximum", { min_load_kg: 17 }, "builder.refused.min-over-max"],
    ["a larger day", { max_day_kg: 40 }, "builder.refused.day"],
    ["a day below one small load", { max_day_kg: 4 }, "builder.refused.day-under-min"],
    ["a shorter spacing", { spacing_h: 9 }, "builder.refused.spacing"],
    ["a spacing of a week", { spacing_h: 168 }, "builder.refused.spacing-too-long"],
  ])("refuses %s", (_, given, id) => {
    expect(refusedIds(given)).toEqual([id]);
    expect(tighten(heater, given, BY).heater).toBe(heater);
  });
  it("a later version is nowhere looser, and the earlier one is kept", () => {
    const first = tighten(heater, { max_load_kg: 12, spacing_h: 14 }, BY).heater;
    expect(refusedIds({ max_load_kg: 14 }, first)).toEqual(["builder.refused.max"]);
    const { heater: second } = tighten(first, { max_load_kg: 10, words: "Dry birch only." }, { ...BY, at_ms: BY.at_ms + 1 });
    expect(second.rules).toEqual([expect.objectContaining({ max_load_kg: 10, spacing_h: 14, words: "Dry birch only.", version: 2 })]);
    expect(second.rules_before).toEqual([expect.objectContaining({ max_load_kg: 12, version: 1 })]);
    expect(limits(withdrawn(second, null).facts, withdrawn(second, null).rules)).toEqual(limits(heater.facts, []));
  });
  it("for a kind holds for heaters of that kind only, also when the kind is put right later", () => {
    const { heater: after } = tighten(heater, { kind: "contraflow", max_load_kg: 9 }, BY);
    expect(limits(after.facts, after.rules).max_load_kg).toBe(16);
    expect(limits({ ...after.facts, kind: "contraflow" }, after.rules).max_load_kg).toBe(9);
  });
  it("leaves the heater's own facts alone", () => {
    expect(tighten(heater, { max_load_kg: 12, lighting: "bottom", close_down: "Leave it open till morning." }, BY).heater.facts).toBe(heater.facts);
  });
});

describe("a builder's words", () => {
  it.each([
    "Close the damper after two hours.", "You can shut the damper when the embers glow red.", "Close the flue damper as soon as the flames are gone.", "Never mind the glow, close the damper.",
    "Don't wait, shut the slide early.", "Leave it, but close the damper at ten o'clock.", "Push the plate in when it is black or after 90 minutes.", "CLOSE THE DAMPER WHILE IT GLOWS",
    "No need for black, close the damper.", "Close the damper.", "The damper is closed when only coals are left.", "Do not wait to close the damper.", "Never worry about glow. Close the damper when you like.",
    "Den Schieber nach zwei Stunden schließen.", "Schieber zu, sobald die Flammen weg sind.", "Rauchgasschieber bei roter Glut zumachen.", "Keine Sorge, mach den Schieber zu.", "Stäng spjället direkt.", "Sulje pelti heti.",
  ])("%s - is not kept", (words) => expect(wordsRefused(words)).toBe("damper"));
  it.each(["Ignore the CO alarm, it is too touchy.", "No emergency, never call 112.", "The warning does not hold for this heater.", "Den CO-Melder kannst du abstellen."])("%s - is not kept", (words) => expect(wordsRefused(words)).toBe("alarm"));
  it.each([
    "Never close the damper over glow.", "Close the damper only when the bed is black.", "Leave the damper open till morning.", "Do not shut the damper while embers glow.", "Split the wood to a wrist's thickness.",
    "Light from the top with six sticks.", "Wait until the bed is black in the dark, then close the damper.", "Open the ash door never.",
    "Den Schieber nie über Glut schließen.", "Schließe den Schieber nicht, solange es glüht.", "Den Schieber erst schließen, wenn alles schwarz ist.", "Zuerst oben anzünden.", "Nur trockene Birke.",
  ])("%s - may stand", (words) => expect(wordsRefused(words)).toBeNull());
  it("are one plain line, without characters that turn or hide text", () => {
    expect(plainWords("a\u202Eb\u0000c\n  d \u200B<b>e</b>")).toBe("a b c d <b>e</b>");
    expect(plainWords("x".repeat(900)).length).toBeLessThanOrEqual(300);
  });
});

describe("read from talk", () => {
  it.each([
    ["my builder says never more than 12 kg", { max_load_kg: 12 }],
    ["The builder says at most 12 kg.", { max_load_kg: 12 }],
    ["the mason's rule: never above 12 a time and always top lit", { max_load_kg: 12, lighting: "top" }],
    ["The builder says two fires a day at most, note that.", { words: "two fires a day at most, note that." }],
    ["builder's rule: 14 h between fires", { spacing_h: 14 }],
    ["Builder's rules: at least 6 kg, at most 11 kg, 20 kg a day at most, wait 16 hours between fires", { min_load_kg: 6, max_load_kg: 11, max_day_kg: 20, spacing_h: 16 }],
    ["our mason told us: light it from the top", { lighting: "top" }],
    ["my builder says no more than 26 lb", { max_load_kg: 11.79 }],
    ["my builder says leave the damper open till morning", { close_down: "leave the damper open till morning" }],
    ["my builder says: only birch, split thin", { words: "only birch, split thin" }],
    ["mein Ofenbauer sagt: nie mehr als 12 kg", { max_load_kg: 12 }],
    ["Unser Hafner meint, mindestens 14 Stunden zwischen zwei Feuern", { spacing_h: 14 }],
    ["mein Ofenbauer sagt: nur Birke, dünn gespalten", { words: "nur Birke, dünn gespalten" }],
    ["my builder's rule: call Ana on 0123 4567", { call: "Ana on 0123 4567" }],
  ])("%s", (words, rule) => expect(readBuilder(words, /Ofenbauer|Hafner/.test(words) ? { english: (own) => gloss(own).text } : {})).toMatchObject({ for: null, rule }));
  it("a builder names the heater", () => expect(readBuilder("rule for Ana's kitchen heater: at most 12 kg")).toMatchObject({ for: "Ana's kitchen heater", rule: { max_load_kg: 12 } }));
  it.each(["what does my builder say about loads?", "my builder says 12 kg is too much, is that right?", "my builder is ill", "the builder told us to take it easy at the beginning, but how easy", "our mason says it has to be dried slowly, how does one do that", "who is the builder of this heater", "log: 12 kg birch"])("%s - is no rule", (words) => expect(readBuilder(words)).toBeNull());
});

describe("a file", () => {
  const FILE = `# Rules of our workshop
builder: Kiln and Sons
rules:
  - kind: contraflow
    max_load_kg: 12
    spacing_h: 14
  - heater: Kitchen
    lighting: top
    close_down: Leave the damper open till morning.
    call: Ana, 0123 4567
`;
  it("is read", () => {
    expect(readRulesFile(FILE)).toEqual({
      builder: "Kiln and Sons", problems: [],
      rules: [
        { heater: null, given: { kind: "contraflow", max_load_kg: 12, spacing_h: 14 } },
        { heater: "Kitchen", given: { lighting: "top", close_down: "Leave the damper open till morning.", call: "Ana, 0123 4567" } },
      ],
    });
    expect(pastedRules(`\`\`\`yaml\n${FILE}\`\`\``)).toBe(FILE.trimEnd());
    expect(pastedRules("rules: what are they?")).toBeNull();
  });
  it.each([
    ["a misspelt key", "max_load_kg: 12", "max_lod_kg: 12", /rules, line \d+: rule 1.*"max_lod_kg" is not a word this place knows/],
    ["a word for a figure", "max_load_kg: 12", "max_load_kg: twelve", /line 5: rule 1 > max_load_kg: this takes a number/],
    ["an equipment fact", "lighting: top", "shut_off_damper: false", /line \d+: rule 2.*shut_off_damper: what a heater has or is belongs to its owner's records/],
    ["a spacing of minutes", "spacing_h: 14", "spacing_h: 840", /line 6: rule 1 > spacing_h: this is too large or long; at most 72/],
    ["a rule that says nothing", "    max_load_kg: 12\n    spacing_h: 14\n", "", /line 4: rule 1: a rule says something/],
    ["broken YAML", "lighting: top", "lighting: [top", /line \d+: this is not well-formed YAML/],
    ["nothing at all", FILE, "", /rules/],
  ])("%s is named with its line", (_, from, to, told) => {
    const read = readRulesFile(FILE.replace(from, to));
    expect(read.problems.join("\n")).toMatch(told);
    expect(read.rules).toEqual([]);
  });
});
