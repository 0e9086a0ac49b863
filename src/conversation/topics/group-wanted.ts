/** What a message may need of what groups keep, told from its words alone, so that other messages need not wait for it. */
import { codesIn, linkCodesIn } from "../../group/code.ts";
import type { Message } from "../../message.ts";
import type { GroupWanted } from "../../records/group.ts";
import { heaterOfWhom } from "./shared-heater.ts";

const WORDS = /\b(?:groups?|winter|shar\w*|post|send|others|everyone|everybody|room|channel|card|withdraw\w*|order\w*|sweep\w*|meters?|alarms?|link|unlink|club|members|digest|line|join\w*|leave|we|us|all|rest|mine|lads|mob|gruppen?\w*|teil\w*|karten?|zieh\w*|sammel\w*|bestell\w*|kehr\w*|melder\w*|messger\w*|verbind\w*|trenn\w*|liste|mach\w*|wer)\b/i;
const CHOICES = /^(?:share|card|winter|list|data):/;

export function groupWanted({ text = "", choice = "" }: Pick<Message, "text" | "choice">): GroupWanted | undefined {
  const codes = codesIn(choice ? (choice.split("=")[1] ?? "") : text);
  const links = linkCodesIn(text);
  const owner = heaterOfWhom(text);
  if (owner) return { owner };
  if (!CHOICES.test(choice) && codes.length === 0 && links.length === 0 && !WORDS.test(text.slice(0, 400))) return undefined;
  return { ...(codes.length > 0 ? { codes } : {}), ...(links.length > 0 ? { links } : {}) };
}
