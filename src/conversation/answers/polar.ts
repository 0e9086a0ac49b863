/** Yes or no in own words: a yes or no that stands by itself, else whether what was asked about is affirmed or denied. */
import type { Sign } from "../../knowledge/schemas.ts";
import type { SignAnswer } from "../../trouble/walk.ts";
import { readFigures, inUnit } from "../reading/figures.ts";
import { readYesNo } from "../reading/yes-no.ts";
import type { Spoken } from "../spoken.ts";
import { fitsOf } from "./choose.ts";
import { clausesOf, isNegator, SLIGHT, type Clause } from "./claims.ts";
import { yearsAgo } from "./figures.ts";
import { rootOf, tells } from "./nearness.ts";

const LEADING = 1.2;
const CAP = 1.5;
const ENOUGH = 0.45;
/** "no hood was on" denies the hood; "no, ..." answers */
const BY_ITSELF = /^\s*(yes|yep|yeah|yup|aye|ja|no|nope|nah|nein|never|always|nie|immer|stimmt|doch)\b\s*($|[,.;:!–-]|(i|we|it|he|she|they|not|that|there|the|since|for|but|and|wir|ich|es|sie)\b)/i;

/** a hand's width without and with the thumb; between three fingers and a hand nobody is sure */
const HAND_mm = { fingers: 50, hand: 90 } as const;
/** There is no such thing here: it does not run, stand open or smoke. Whether it is shut or tight nobody can say. */
const ABSENT = /\b(?:(?:have|has|got|with|hab\w*|haben) ?(?:n'?t|not)? (?:got )?(?:none|no such\b.*|one|any)|no such \w+|(?:there is|there's|there are|we have|i have|it has|ours has) (?:no|none)\b.*|(?:don't|dont|doesn't|does not|do not|haven't|hasn't) (?:have|got|own)(?: got)? (?:one|any|such|a|that)\b.*|no \w+(?: \w+)? (?:here|at all|on ours|in ours|on it|fitted|on mine|in this (?:house|heater)))\s*[.!]*$/i;
const ASKS_FOR_ORDER = /\b(?:shut|closed|tight|seal|in place|whole)\b/i;
const LOST = /\b(?:blew (?:off|away|down)|blown (?:off|away|down)|came (?:off|down|loose)|fell (?:off|down)|fallen|gone|missing|broken|torn|lost|rusted (?:through|away)|tipped|crooked|hangs?|bent)\b/i;
const AS_BEFORE = /\b(?:(?:as|like) (?:it )?(?:always|ever|before|usual|every (?:year|winter|time))|(?:looks?|all|everything|just) the same|same as (?:always|ever|before|usual|last)|unchanged|no (?:change|difference))\b/i;
const ASKS_FOR_CHANGE = /\b(?:new|worse|lately|afterwards|changed|different|than before)\b/i;

/** A measure held against the one the question names, a thing that is not there, or that all is as before; null where the words say none of it. */
function bySense(ask: string, text: string, now_ms: number | undefined): "yes" | "no" | "unsure" | null {
  if (/\bcloser\b.*\bhand's width\b/i.test(ask)) {
    const mm = readFigures(text).flatMap((figure) => (figure.dimension === "length" ? [inUnit(figure, "mm") ?? Number.NaN] : [])).find(Number.isFinite);
    if (mm !== undefined) return mm < HAND_mm.fingers ? "yes" : mm >= HAND_mm.hand ? "no" : "unsure";
  }
  const most = /\bolder than (\w+) years?\b/i.exec(ask)?.[1];
  if (most !== undefined) {
    const limit = readFigures(most)[0]?.value;
    const end = /\b(?:until|till|to|ends?|expir\w*|valid|use[- ]by|printed|date(?:d)?|bis)\b[^,;]*\b(20\d\d)\b/i.exec(text)?.[1];
    if (end !== undefined && now_ms !== undefined) return Number(end) < new Date(now_ms).getUTCFullYear() ? "yes" : Number(end) > new Date(now_ms).getUTCFullYear() ? "no" : null;
    const age = yearsAgo(text, now_ms);
    if (limit !== undefined && age !== undefined) return age > limit ? "yes" : "no";
  }
  if (ABSENT.test(text.trim()) && !/\bis there\b/i.test(ask) && !ASKS_FOR_ORDER.test(ask)) return "no";
  if (/\b(?:whole|in place|intact)\b/i.test(ask) && LOST.test(text)) return "no";
  if (AS_BEFORE.test(text) && ASKS_FOR_CHANGE.test(ask) && !/\b(?:not|n't|never)\b/i.test(text)) return "no";
  return null;
}

export function yesOrNo(sign: Sign, text: string, language: Spoken = "en", now_ms?: number): SignAnswer | undefined {
  const sense = sign.ask === undefined || BY_ITSELF.test(text) ? null : bySense(sign.ask, text, now_ms);
  if (sense !== null) return sense === "unsure" ? null : sense;
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
  const heard = (fits.find(({ id }) => id === "yes")?.fit ?? 0) - (fits.find(({ id }) => id === "no")?.fit ?? 0);
  const asked = new Set(clausesOf(sign.ask ?? "").flatMap(({ claims }) => claims.filter(({ word }) => !SLIGHT.has(word) && !isNegator(word)).map(({ word }) => rootOf(word, language))));
  const seen = new Set<string>();
  const refused = clause.claims.some(({ word, denied }) => denied && asked.has(rootOf(word, language)));
  let own = 0;
  for (const { word, denied } of clause.claims) {
    const root = rootOf(word, language);
    if (!asked.has(root) || seen.has(root) || tells(word, language) < 0.3) continue;
    seen.add(root);
    // "the neighbours burn nothing": who does not do it affirms nothing
    if (!denied && refused) continue;
    own += (denied ? -0.6 : 0.5) * tells(word, language);
  }
  const listed = refused ? Math.min(0, heard) : heard;
  return listed + own;
}
