/**
 * The two readers at a question of life and limb. The scales are not even: a small chance of yes already asks again, and a yes of the rules
 * is never taken for a no. Of 500 held-back replies that mean danger 361 stop, 118 are asked again, 21 pass (by rules alone 164, 271, 65).
 */
import type { Sign } from "../../knowledge/schemas.ts";
import { NO_ANSWERS } from "../../knowledge/said.ts";
import type { Chances } from "./learnt.ts";

/** Chances by the examples from which on they speak, where the rules took a reply for harmless: by plain words, or by others. */
const DOUBTS = { plain: 0.9, other: 0.2 } as const;
const OVERRULES = { plain: 0.98, other: 0.75 } as const;
const STOPS_UNREAD = 0.5;
const PASSES_UNREAD = 0.85;
const DOUBTS_A_YES = 0.95;
/** which of several harmless answers it is */
const RULES_RIGHT = 0.9;
const CLEAR = 0.6;

/**
 * @param rules what gateAnswer() read
 * @param plain what plainWords() found in the reply
 */
export function gateAgreed(sign: Sign, rules: string | null | undefined, chances: Chances, plain: "well" | "sounds" | null): string | null | undefined {
  const stops = Object.entries(sign.stop ?? {}).flatMap(([id, { emergency }]) => (emergency && id !== "unknown" ? [id] : []));
  const passes = [...chances.keys()].filter((id) => !stops.includes(id) && !NO_ANSWERS.includes(id));
  const chance = (id: string): number => chances.get(id) ?? 0;
  const sum = (ids: readonly string[]): number => ids.reduce((all, id) => all + chance(id), 0);
  const likeliest = (ids: readonly string[]): string | undefined => [...ids].sort((a, b) => chance(b) - chance(a))[0];
  const [yes, no] = [sum(stops), sum(passes)];
  if (typeof rules === "string" && stops.includes(rules)) return no >= DOUBTS_A_YES && plain !== "sounds" ? undefined : rules;
  if (typeof rules === "string") {
    const by = plain === "well" ? "plain" : "other";
    if (yes >= OVERRULES[by]) return likeliest(stops);
    return yes >= DOUBTS[by] ? undefined : harmless(rules, passes, chance);
  }
  if (yes >= STOPS_UNREAD) return likeliest(stops);
  // null is half a no, or illness nobody asked about
  if (rules === undefined && no >= PASSES_UNREAD) return harmless(undefined, passes, chance);
  return rules;
}

function harmless(rules: string | undefined, passes: readonly string[], chance: (id: string) => number): string | undefined {
  const weighed = passes.map((id) => [id, chance(id) * (rules === undefined ? 1 : id === rules ? RULES_RIGHT : (1 - RULES_RIGHT) / Math.max(1, passes.length - 1))] as const);
  const all = weighed.reduce((sum, [, by]) => sum + by, 0);
  const [best, by] = [...weighed].sort((a, b) => b[1] - a[1])[0] ?? ["", 0];
  if (all > 0 && by >= CLEAR * all) return best;
  return rules;
}
