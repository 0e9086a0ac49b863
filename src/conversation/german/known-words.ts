/** Words that mark a message as German: all that the gloss and the router know by themselves, without those that English writes too. */
import { EVERYDAY } from "../routing/german-words.ts";
import { PHRASES } from "./phrases.ts";
import { keyOf } from "./pieces.ts";

/** Found beside English messages (`tests/conversation/german/spoken.test.ts` holds the list against them). */
const ENGLISH_TOO = new Set(`alarm warm was winter log hand kilos normal stuck baby sofa wind plan explosion fast minute pizza rest frost nest mild film minus man max blast finger
  kwh maximum tonne kind thermometer hob warmer lose fallen falls hat celsius hell pause kilowatt tock bank die war pro link links rein energie han fuss lack sprung maximal gut hier bin alt note
  liter kilogramm meter celsius min tag tage gang stand ring brief wart net mind wars nit nix ned eur ct zoll nid sek proz lang dick`.split(/\s+/));

const phrases = PHRASES.split("\n").filter((line) => line.includes(" = ") && !line.startsWith("#")).flatMap((line) => (line.split(" = ")[0] ?? "").split(" | "));

export const GERMAN_WORDS: ReadonlySet<string> = new Set(
  [...phrases.filter((phrase) => !phrase.trim().includes(" ")), ...EVERYDAY.trim().split("\n").flatMap((line) => (line.split(" = ")[0] ?? "").split(" "))].map((word) => keyOf(word.trim())).filter((word) => word.length > 2 && !ENGLISH_TOO.has(word)),
);
