/** German replies to the trees' questions: read by German words alone, "noch" is "still", and no everyday word is a hint. Wordings are our own. */
import { describe, expect, it } from "vitest";
import { clausesOf, denies } from "../../../src/conversation/answers/claims.ts";
import { rootOf, tells } from "../../../src/conversation/answers/nearness.ts";
import { gloss } from "../../../src/conversation/german/gloss.ts";
import { readFigures } from "../../../src/conversation/reading/figures.ts";
import { readYesNo } from "../../../src/conversation/reading/yes-no.ts";
import { wordModel } from "../../../src/conversation/routing/route.ts";
import { answerTo, signsIn } from "../../../src/conversation/sign-answer.ts";
import { loadKnowledge } from "../../../src/knowledge/load.ts";
import { spokenIn } from "../../../src/knowledge/spoken.ts";
import { isGraded, type SignAnswer } from "../../../src/trouble/walk.ts";

const { troubles } = spokenIn(await loadKnowledge(new URL("../../../knowledge", import.meta.url).pathname), "de");
const about = (text: string) => ({ now_ms: Date.parse("2026-11-25T12:00:00Z"), language: "de" as const, glossed: gloss(text).text });
function read(tree: string, sign: string, text: string): SignAnswer | undefined {
  const asked = troubles.get(tree as never)?.signs[sign];
  if (!asked) throw new Error(`no ${sign} in ${tree}`);
  return answerTo(asked, text, readFigures(gloss(text).text), about(text));
}
const told = (tree: string, text: string) => signsIn(troubles.get(tree as never) as never, text, readFigures(gloss(text).text), about(text));
const likeliest = (answer: SignAnswer | undefined): unknown => (isGraded(answer) ? Object.entries(answer.likely).sort((a, b) => b[1] - a[1])[0]?.[0] : answer);
const denied = (text: string): string[] => clausesOf(text).flatMap(({ claims }) => claims.filter((claim) => claim.denied).map(({ word }) => word));

describe("German words are no English ones misspelt", () => {
  it.each([["regen", "green"], ["beim", "brim"], ["rohr", "roar"], ["heiss", "hiss"], ["wieder", "wider"], ["türl", "turps"]])("%s is not %s", (word, english) => {
    expect(rootOf(word, "de")).not.toBe(rootOf(english));
    expect(wordModel("de").lexicon.entry(word).word).not.toBe(english);
  });
  it("forms of a word meet, and a slip in a long one is mended", () => {
    expect(rootOf("feuchtes", "de")).toBe(rootOf("feucht", "de"));
    expect(rootOf("altes", "de")).toBe(rootOf("alt", "de"));
    expect(rootOf("Schornsteinfegger", "de")).toBe(rootOf("Schornsteinfeger", "de"));
    expect(rootOf("Lüftung", "de")).not.toBe(rootOf("Luft", "de"));
  });
  it("English is mended as before", () => expect(rootOf("dampper")).toBe(rootOf("damper")));
  it.each([
    ["over-firing", "es hat heiß gebrannt beim Rohr"], ["hot-surface", "die Bank beim Türl ist wieder zu warm"], ["fire-dies", "das Feuer geht immer wieder aus"], ["cold-morning", "in der Früh ist der Ofen schon kalt"],
    ["door-leak", "am Türl an der Seite ist es so"],
  ])("%s: nothing is heard in \"%s\"", (tree, text) => expect(told(tree, text)).toEqual({}));
});

describe("\"noch\"", () => {
  it.each<[string, string[]]>([
    ["nicht schwarz, noch rot", ["schwarz"]], ["die Aschetür war noch offen", []], ["die Glut ist noch rot", []], ["keine Flammen, noch Glut", ["flammen"]],
    ["weder Flammen noch Glut", ["flammen", "noch", "glut"]], ["weder Flammen, noch Glut", ["flammen", "noch", "glut"]],
  ])("%s denies %j", (text, words) => expect(denied(text)).toEqual(words));
  it("alone reassures nobody", () => expect(denies(clausesOf("noch rot"))).toBe(false));
});

describe("denial as German places it", () => {
  it.each<[string, string[], string[]]>([
    ["Flammen sehe ich keine mehr", ["flammen"], []], ["Glut ist keine mehr da", ["glut"], []], ["das Feuer ist aus", ["feuer"], []], ["das Feuer ist noch nicht aus", [], ["feuer"]], ["das Feuer ist fast aus", [], ["feuer"]],
    ["den ganzen Sommer nicht geheizt", ["geheizt"], ["sommer"]], ["der Dunstabzug läuft nicht", ["dunstabzug"], []],
  ])("%s", (text, no, yes) => {
    expect(denied(text)).toEqual(expect.arrayContaining(no));
    for (const word of yes) expect(denied(text)).not.toContain(word);
  });
});

describe("how much a word tells", () => {
  it.each("an am im der die das den dem ist war mit auf bei beim immer wieder noch wenn ich wir mein hat hob ned".split(" "))("%s: next to nothing", (word) => expect(tells(word, "de")).toBeLessThan(0.1));
  it.each("Eichhörnchen Dunstabzug Teer Regen Dichtschnur".split(" "))("%s: much", (word) => expect(tells(word, "de")).toBeGreaterThan(0.7));
});

describe("a reply", () => {
  it.each<[string, string, string, unknown]>(`
    stuck-damper | now | das Feuer ist aus, keine Glut | none
    stuck-damper | now | Feuer ist längst aus, Glut ist keine mehr da | none
    stuck-damper | now | das Feuer ist noch nicht aus | fire-shut
    stuck-damper | now | die Glut ist noch rot | fire-shut
    stuck-damper | now | es brennt noch, der Schieber ist aber sicher offen | fire-open
    stuck-damper | handle | geht schwer, kratzt | stiff
    stuck-damper | since | war den ganzen Sommer nicht geheizt | rest
    fire-dies | died | sobald ich die Tür zumache | door-helps
    fire-dies | died | als ich die Luft zugedreht hab | after-change
    fire-dies | danger | kein Rauch, uns geht es gut | neither
    fire-dies | since | seit dem neuen Holz | new-wood
    black-glass | air | ich mach sie früh zu, damit es länger brennt | closed
    black-glass | where | unten in den Ecken | corner
    black-glass | near-glass | nein, gut zehn Zentimeter Abstand | no
    black-glass | load-share | dreiviertel voll | 75
    black-glass | load-share | halb voll | 50
    smoke-at-lighting | check | der Dunstabzug lief | fan
    smoke-at-lighting | rest | seit drei Wochen kalt | 21
    smoke-at-lighting | match | hinein, aber nur schwach | in
    cold-morning | sweep | noch nie | 60
    cold-morning | closed | Luft zu als keine Flamme mehr da war, Schieber als alles schwarz war | right
    cracks | width | etwa zwei Millimeter | 2
    high-wood-use | house | altes Bauernhaus, nicht gedämmt | draughty
  `.trim().split("\n").map((line) => line.split(" | ").map((one) => one.trim()) as [string, string, string, string]))("%s, %s: %s", (tree, sign, text, answer) => {
    const heard = likeliest(read(tree, sign, text));
    expect(typeof heard === "number" ? String(Math.round(heard)) : heard).toBe(answer);
  });
  it.each(["kann ich nicht sagen", "bin mir nicht sicher", "keine Ahnung", "woas i ned", "kommt drauf an"])("unknown: %s", (text) => expect(readYesNo(text)).toBe("unknown"));
  it.each([["eher nicht", "no"], ["glaub ich nicht", "no"], ["freilich", "yes"], ["ich denke schon", "yes"]])("%s: %s", (text, means) => expect(readYesNo(text)).toBe(means));
});
