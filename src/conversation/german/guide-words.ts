/** German words for the guide while a fire burns: short, whole messages. A report of flame or bed is read elsewhere, and never from these. */
import type { GuideEvent } from "../../firing/guide.ts";
import { piecesOf } from "./pieces.ts";

const SAYS: readonly (readonly [GuideEvent | "take-over", string])[] = [
  [{ event: "pause" }, "pause|kurz warten|warte mal|warte kurz|moment|moment mal|einen moment|augenblick"],
  [{ event: "resume" }, "weiter|weitermachen|mach weiter|machen wir weiter|fortsetzen|bin wieder da|ich bin wieder da|wieder da"],
  [{ event: "stop" }, "begleitung beenden|beende die begleitung|stopp die begleitung|begleitung stoppen|hor auf zu fragen"],
  [{ event: "lit" }, "angezundet|ist angezundet|es ist angezundet|ich habe angezundet|ich hab angezundet|hab angezundet|habe angezundet|es brennt jetzt|jetzt angezundet|ist an|feuer ist an|das feuer ist an|hab eingeheizt|ich hab eingeheizt|ich habe eingeheizt|hab angeheizt|ich habe angeheizt|angemacht|hab es angezundet"],
  [{ event: "out" }, "ist aus|es ist aus|ist ausgegangen|es ist ausgegangen|ausgegangen|feuer ist aus|das feuer ist aus|feuer ist ausgegangen|das feuer ist ausgegangen|ist erloschen"],
  ["take-over", "ich ubernehme|ich ubernehme die wache|ubernehme|ubernehme die wache|ich passe jetzt auf"],
  [{ event: "leave-open" }, "lass ihn offen|ich lass ihn offen|ich lasse ihn offen|bleibt offen|er bleibt offen|ich lasse den schieber offen|schieber bleibt offen|ich lass den schieber offen|lass ich offen|ich lass offen"],
  [{ event: "air-shut" }, "luft zu|luft ist zu|die luft ist zu|luft geschlossen|luft zugemacht|ich habe die luft geschlossen|ich hab die luft geschlossen|ich habe die luft zugemacht|ich hab die luft zugemacht|hab die luft zugemacht|hab die luft zu"],
  [{ event: "damper-shut" }, "schieber zu|schieber ist zu|der schieber ist zu|schieber geschlossen|schieber zugemacht|ich habe den schieber geschlossen|ich hab den schieber geschlossen|ich habe den schieber zugemacht|ich hab den schieber zugemacht|hab den schieber zugemacht|hab den schieber zu"],
];
const EVENTS = new Map(SAYS.flatMap(([event, list]) => list.split("|").map((phrase) => [phrase, event] as const)));
/** said behind without changing it */
const BEHIND = new Set("jetzt bitte gerade eben nun schon ok okay danke".split(" "));

/** Null for anything longer, doubted, denied or asked. */
export function germanGuideWords(said: string): GuideEvent | "take-over" | null {
  if (said.length > 60 || said.includes("?")) return null;
  const words = piecesOf(said).filter(({ kind }) => kind !== "sign");
  if (words.some(({ kind }) => kind === "number")) return null;
  let end = words.length;
  while (end > 1 && BEHIND.has(words[end - 1]?.key ?? "")) end -= 1;
  const whole = words.slice(0, words.length).map(({ key }) => key).join(" ");
  return EVENTS.get(whole) ?? EVENTS.get(words.slice(0, end).map(({ key }) => key).join(" ")) ?? null;
}
