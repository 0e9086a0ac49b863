import { describe, expect, it } from "vitest";
import { guessLanguage, type Language } from "../../src/conversation/language.ts";

/** Everyday sentences; common practice, no source. */
const SENTENCES: readonly (readonly [string, Language])[] = [
  ["When can I close the damper?", "en"], ["glass black again", "en"], ["12 kg", "en"], ["🔥", "en"],
  ["Wann darf ich den Schieber schließen?", "de"], ["Warum ist die Scheibe schwarz?", "de"],
  ["Milloin saan sulkea pellin?", "fi"], ["Lasi on musta joka ilta", "fi"],
  ["När får jag stänga spjället?", "sv"], ["Hur mycket ved ska jag elda?", "sv"],
  ["Pourquoi la vitre devient noire ?", "fr"], ["Puis-je fermer la trappe maintenant ? Il n'y a pas de flammes", "fr"],
  ["Quanta legna devo mettere nella stufa?", "it"], ["¿Por qué sale humo al encender?", "es"],
  ["Kiedy mogę zamknąć szyber?", "pl"], ["Когда можно закрыть вьюшку?", "ru"], ["今天天气怎么样", "other"],
];

describe("guessLanguage", () => {
  it.each(SENTENCES)("%s -> %s", (text, language) => expect(guessLanguage(text)).toBe(language));
});
