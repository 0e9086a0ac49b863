/** Which language a message is read in, and which one is answered in. */
import { describe, expect, it } from "vitest";
import { guessLanguage, weighLanguage } from "../../../src/conversation/language.ts";
import { heardIn, languageOf, localeFor, putInMouth } from "../../../src/conversation/spoken.ts";

describe("a message is read in", () => {
  it.each([
    ["Wie viel Holz heute Abend?", "en-GB", "de"], ["How much wood tonight?", "de-DE", "en"], ["12 kg", "de-DE", "de"], ["12 kg", "en-GB", "en"], ["CO", "de-AT", "de"], ["", "de-DE", "de"], ["Schieber zu?", "en-GB", "de"],
    ["the schieber sits like welded", "en-GB", "en"], ["festmeter to cubic metres please", "en-GB", "en"], ["Pourquoi la vitre est noire ?", "en-GB", "en"], ["ja", "de-CH", "de"], ["Glut noch rot", "en-GB", "de"],
  ])("%s (%s): %s", (said, locale, language) => expect(heardIn(said, locale)).toBe(language));
  it.each(["Der Ofen zieht nicht", "Wann kommt der Kaminfeger?", "Scheibe schwarz", "es raucht ins Zimmer", "Holz zu nass?", "Ist das normal, dass es knackt?"])("German: %s", (said) => expect(guessLanguage(said)).toBe("de"));
  it.each(["What is this?", "glass black", "35 min", "lit 6 pm, 12 kg oak", "is 18 ok", "in an hour", "die down", "no glow"])("no German: %s", (said) => expect(guessLanguage(said)).toBe("en"));
  it("is sure only of what speaks for itself", () => expect(["35 min", "CO alarm", "what do you see"].map((said) => weighLanguage(said).sure)).toEqual([false, false, true]));
});

describe("it is answered in", () => {
  it("the language heard, unless one was chosen", () => {
    expect(localeFor("de", "Wie viel Holz?", "en-GB", false)).toBe("de-DE");
    expect(localeFor("de", "Wie viel Holz?", "de-AT", false)).toBe("de-AT");
    expect(localeFor("en", "How much wood?", "de-DE", false)).toBe("en-GB");
    expect(localeFor("de", "Wie viel Holz?", "en-GB", true)).toBe("en-GB");
    expect(languageOf("de_CH")).toBe("de");
    expect(languageOf("fr-FR")).toBe("en");
  });
  it("the network's language, where a command's words are English", () => {
    expect(putInMouth("en", "de")).toBe(true);
    expect(putInMouth("de", "de")).toBe(false);
    expect(putInMouth("en", "en-US")).toBe(false);
    expect(putInMouth("en", undefined)).toBe(false);
  });
});
