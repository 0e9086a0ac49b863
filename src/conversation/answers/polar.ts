/** Yes or no in own words: a yes or no that stands by itself, else whether what was asked about is affirmed or denied. */
import type { Sign } from "../../knowledge/schemas.ts";
import type { SignAnswer } from "../../trouble/walk.ts";
import { readYesNo } from "../reading/yes-no.ts";
import type { Spoken } from "../spoken.ts";
import { fitsOf } from "./choose.ts";
import { clausesOf, isNegator, SLIGHT, type Clause } from "./claims.ts";
import { rootOf, tells } from "./nearness.ts";

const LEADING = 1.2;
const CAP = 1.5;
const ENOUGH = 0.45;
/** "no hood was on" denies the hood; "no, ..." answers */
const BY_ITSELF = /^\s*(yes|yep|yeah|yup|aye|ja|no|nope|nah|nein|never|always|nie|immer|stimmt|doch)\b\s*($|[,.;:!–-]|(i|we|it|he|she|they|not|that|there|the|since|for|but|and|wir|ich|es|sie)\b)/i;

export function yesOrNo(sign: Sign, text: string, language: Spoken = "en"): SignAnswer | undefined {
  const clauses = clausesOf(text);
  const yesNo = readYesNo(text);
  const direct = BY_ITSELF.exec(text)?.[1]?.toLowerCase();
  const lead = direct ? (/^(no|nope|nah|nein|never|nie)$/.test(direct) ? -LEADING : LEADING) : 0;
  const turn = clauses.findIndex(({ turns }) => turns);
  const told = clauses.map((clause, i) => (lead !== 0 && i > 0 && (turn < 0 || i < turn) ? 0 : (turn >= 0 && i < turn ? 0.5 : 1) * evidence(sign, clause, language)));
  const sum = lead + Math.max(-CAP, Math.min(CAP, told.reduce((a, b) => a + b, 0)));
  if (yesNo === "unknown" && Math.abs(sum) < 0.9) return null;
  if (Math.abs(sum) >= ENOUGH) return sum > 0 ? "yes" : "no";
  return yesNo === "unknown" ? null : (yesNo ?? undefined);
}

/** above 0 where the clause affirms what was asked about */
function evidence(sign: Sign, clause: Clause, language: Spoken): number {
  const fits = sign.answers?.length ? fitsOf(sign, "", [clause], [], language) : [];
  const listed = (fits.find(({ id }) => id === "yes")?.fit ?? 0) - (fits.find(({ id }) => id === "no")?.fit ?? 0);
  const asked = new Set(clausesOf(sign.ask ?? "").flatMap(({ claims }) => claims.filter(({ word }) => !SLIGHT.has(word) && !isNegator(word)).map(({ word }) => rootOf(word, language))));
  const seen = new Set<string>();
  let own = 0;
  for (const { word, denied } of clause.claims) {
    const root = rootOf(word, language);
    if (!asked.has(root) || seen.has(root) || tells(word, language) < 0.3) continue;
    seen.add(root);
    own += (denied ? -0.6 : 0.5) * tells(word, language);
  }
  return listed + own;
}
