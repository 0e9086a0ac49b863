/**
 * A question of life and limb, answered in own words. Anything alarming that is affirmed is an emergency, whatever else is said; a denial, or
 * that all are well, passes; what says neither is no answer. What is over and was looked at by those whose work it is, is over.
 */
import type { Sign } from "../../knowledge/schemas.ts";
import { readFigures } from "../reading/figures.ts";
import type { Spoken } from "../spoken.ts";
import { fitsOf } from "./choose.ts";
import { clausesOf, denies, type Claim, type Clause } from "./claims.ts";

const stems = (list: string): RegExp => new RegExp(`^(?:${list})$`);
const ILL = stems(
  "dizz\\w*|headache\\w*|headach\\w*|migraine|sick|nause\\w*|queasy|vomit\\w*|sleepy|drowsy|faint\\w*|unwell|ill|crook|woozy|groggy|lightheaded|confused|collapsed|unconscious|poorly|poison\\w*|" +
  "kopfschmerz\\w*|kopfweh|schwind\\w*|ubel\\w*|schlafrig|benommen|krank|bewusstlos|ohnmachtig|unwohl|erbrech\\w*",
);
const BODY = stems("head|heads|kopf|stomach|legs");
const ACHES = stems("hurt|hurts|aches|ache|aching|sore|pounding|spinning|throbbing|heavy|schmerzt|brummt|weh");
const ALARM = stems("alarm|alarms|detector|detectors|melder|comelder|rauchmelder|warner");
const SOUNDS = stems("sound|sounds|sounding|sounded|beep|beeps|beeping|beeped|ring|rings|ringing|rang|scream\\w*|blar\\w*|shriek\\w*|wail\\w*|trigger\\w*|piept|piepst|pfeift|heult|schlagt");
const GOES = stems("go|goes|going|went|gone|set|geht|ging");
const WELL = stems("well|fine|ok|okay|good|great|grand|alright|allright|right|unhurt|unharmed|gut|wohl|normal|healthy");
const FEELS = stems("feel|feels|feeling|felt|are|is|am|im|were|was|fuhle|fuhlen|geht|all|everyone|everybody|wife|husband|not|nicht|so|very|too");
const SMOKE_COMES = stems("filling|fills|fill|pouring|pours|billow\\w*|thick|thickening|choking|sting|stings|stinging|keeps|steady|everywhere|quillt|dichter");
const SMOKE = stems("smoke|smoky|smoking|rauch|qualm|haze");
const HURT = stems("hurt|injured|blister\\w*|scald\\w*|burn|burns|burnt|burned|verbrannt|verbrennung|verletzt");
const HURT_NOT_PEOPLE = /\b(?:burn(?:t|ed|s|ing)?)\s+(?:down|out|through|up|well|away|itself|normally|fine|as|bright\w*|clean\w*)\b|\b(?:wood|logs?|load|fire|kindling|it|sleeve|cuff|hair|rug|carpet|coat|jumper)\b[^,.;]{0,12}\b(?:burn\w*|singed)\b/i;
const ON_FIRE = stems("smokes|smoking|smoke|glows|glowing|glow|burns|burning|flames|flame|smoulder\\w*|qualmt|glimmt|brennt");
const FLUE_BURNS = stems("roar|roars|roaring|sparks|sparking|glowing|glows|glow|burning|burns|flames|crackling|train|jet|brullt|funken|gluht|brennt");
const NOW = stems("now|still|again|keeps|ongoing|currently|jetzt|noch|wieder|immer");
/** after a fire in the chimney: what smoulders on behind it */
const AGAIN = stems("still|again|noch|wieder");
const HOT = stems("hot|hotter|haze|smoke|smoking|smokes|smoulder\\w*|glow\\w*|heiss\\w*|heiß\\w*|qualmt");
const LOOKED = stems(
  "firemen|fireman|firefighter\\w*|dept|department|camera|brigade|firebrigade|fireservice|crew|rescue|feuerwehr|measured|gemessen|cleared|entwarnung|engineer|engineers|inspector|inspected|technician|doctor|hospital|freigegeben|freigemessen",
);
const BY_A_DOCTOR = stems("doctor|hospital|medic|paramedics|arzt|krankenhaus");
const SHUT = stems("shut|closed|unsure|stuck|zu|geschlossen|half");
const ALIGHT = stems("fire|glow|glowing|glows|embers|ember|coals|flames|flame|burning|burns|alight|lit|red|feuer|glut|brennt|flammen");

/** "a faint smell" is no fainting */
const FAINT = /\b(?:faint|slight|weak)(?:ly)? (?:smell|whiff|odou?r|trace|hint|line|mark|crack|haze|sound|noise|glow|light|smoke|draught|draft)\w*/gi;
/** a steady roar with the sparks denied is a strong draught */
const TRAIN = stems("sparks|sparking|glowing|glows|glow|flames|train|jet|crackling|funken|gluht|now|jetzt");
const ROAR_ALONE = stems("roar|roars|roaring|brullt");

const said = (clauses: readonly Clause[], words: RegExp): boolean => clauses.some(({ claims }) => claims.some(({ word, denied }) => !denied && words.test(word)));
const denied = (clauses: readonly Clause[], words: RegExp): boolean => clauses.some(({ claims }) => claims.some((claim) => claim.denied && words.test(claim.word)));
const together = (clauses: readonly Clause[], a: RegExp, b: RegExp): boolean =>
  clauses.some(({ claims }) => claims.some((one) => !one.denied && a.test(one.word)) && claims.some((one) => !one.denied && b.test(one.word)));

/** "not well", "don't feel good" */
const notWell = ({ claims }: Clause): boolean => claims.some((claim, i) => claim.denied && WELL.test(claim.word) && claims.slice(Math.max(0, i - 4), i).some(({ word }) => FEELS.test(word)) && !claims.some(({ word }) => ALARM.test(word)));

function ill(clauses: readonly Clause[], text: string): boolean {
  return said(clauses, ILL) || together(clauses, BODY, ACHES) || clauses.some(notWell) || alarmSounds(clauses, text);
}
const GOES_ON = /\b(?:alarms?|detectors?|melder)\b[^,.;]{0,20}\b(?:(?:won'?t|will not|doesn'?t|does not|not|never) (?:stop|stopping|shut up)|keeps? (?:going|on|sounding|beeping)|hört nicht auf)\b/i;
/** A smoke alarm that sounded and is quiet again, with everybody well, no longer sounds; a carbon monoxide alarm that did is never let pass so. */
function smokeAlarmIsOver(clauses: readonly Clause[], text: string): boolean {
  const alarms = [...text.matchAll(/\b(?:(smoke|fire)[ -]?)?(?:alarms?|detectors?)\b|\brauch(?:warn)?melder\b/gi)];
  const ofSmoke = alarms.some(([words, kind]) => kind || /^rauch/i.test(words));
  const others = text.match(/\b(?:CO|carbon monoxide|kohlenmonoxid)\b[^,.;]{0,25}/gi) ?? [];
  const quiet = /\b(?:stop(?:ped|s)|quiet|silent|over|cleared|went off again once|aufgehört|still|ruhig|verstummt)\b/i.test(text) && !/\b(?:won'?t|doesn'?t|didn'?t|not|never|nicht) (?:stop|be quiet|aufgehört)/i.test(text);
  return ofSmoke && quiet && (others.length === 0 || others.every((one) => /\b(?:0|zero|none|null|silent|quiet|fine|ok(?:ay)?|clear)\b/i.test(one)))
    && !said(clauses, ILL) && (clauses.some(({ claims }) => claims.some(({ word, denied: no }) => !no && WELL.test(word))) || /\b(?:nobody|no one|noone|none of us|niemand|keiner)\b/i.test(text));
}
function alarmSounds(clauses: readonly Clause[], text: string): boolean {
  if (smokeAlarmIsOver(clauses, text)) return false;
  if (together(clauses, ALARM, SOUNDS) || GOES_ON.test(text)) return true;
  if (clauses.some(({ claims }) => hasAll(claims, ALARM) && claims.some(({ word, denied: no }, i) => !no && word === "off" && claims.slice(Math.max(0, i - 2), i).some((one) => !one.denied && GOES.test(one.word))))) return true;
  return [...text.matchAll(/(\d+(?:[.,]\d+)?)\s*ppm\b/gi)].some(([, ppm]) => Number((ppm ?? "").replace(",", ".")) >= 30);
}
const hasAll = (claims: readonly Claim[], words: RegExp): boolean => claims.some(({ word }) => words.test(word));

/** by emergency: whether these words affirm it */
const ALARMING: Readonly<Record<string, (clauses: readonly Clause[], text: string) => boolean>> = {
  "co-alarm": ill,
  "room-smoke": (clauses) => said(clauses, SMOKE_COMES) && (said(clauses, SMOKE) || said(clauses, stems("filling|pouring|keeps|everywhere"))),
  burn: (clauses, text) => said(clauses, HURT) && !HURT_NOT_PEOPLE.test(text),
  "house-fire": (clauses) => said(clauses, ON_FIRE),
  "chimney-fire": (clauses) => (said(clauses, ROAR_ALONE) && !said(clauses, TRAIN) ? !denied(clauses, stems("sparks?|sparking|flames?|glow\\w*|funken")) : said(clauses, FLUE_BURNS)),
  "damper-over-embers": (clauses) => said(clauses, ALIGHT) && (said(clauses, SHUT) || !said(clauses, stems("open|offen"))),
};
const reassures = (clauses: readonly Clause[]): boolean => denies(clauses) || clauses.some(({ claims }) => claims.some(({ word, denied: no }) => !no && WELL.test(word)) || claims.every(({ word }) => word === "no"));

/** What was asked about is named and denied, or all are said to be well; or an alarm sounds: words that need no second reader. */
export function plainWords(text: string): "well" | "sounds" | null {
  const clauses = clausesOf(text.replace(FAINT, "smell"));
  if (alarmSounds(clauses, text)) return "sounds";
  const well = clauses.some(({ claims }) => claims.some(({ word, denied: no }) => !no && WELL.test(word)) || claims.every(({ word }) => word === "no" || word === "none" || word === "neither"));
  const named = [ILL, ALARM, SMOKE, HURT, SOUNDS].some((words) => denied(clauses, words)) || smokeAlarmIsOver(clauses, text) || said(clauses, LOOKED) || /\b(?:nobody|no one|none of us|symptoms?)\b/i.test(text);
  return well || named ? "well" : null;
}

/** Ids of answers that say that all is well, or that it is over. */
const PASSES = /^(none|neither|nothing|no|well|fine|all-well)$/;
const OVER = /^(over|past)$/;
const HALF = 0.5;
const FAINTLY = 0.3;

/**
 * Only for signs with an emergency.
 * @returns an answer's id ("yes" and "no" for such questions); null for half a no, and for illness where it was not asked about; undefined
 * where the words say neither
 */
export function gateAnswer(sign: Sign, text: string, language: Spoken = "en"): string | null | undefined {
  const stops = Object.entries(sign.stop ?? {}).filter(([id, { emergency }]) => emergency && id !== "unknown");
  const clauses = clausesOf(text.replace(FAINT, "smell"));
  if (clauses.length === 0) return undefined;
  const answers = sign.answers ?? [];
  const over = answers.find(({ id }) => OVER.test(id))?.id;
  if (over) return overOrNot(sign, text, clauses, over, language);
  const fits = answers.length > 0 ? [...fitsOf(sign, text, clauses, readFigures(text), language)].sort((a, b) => b.fit - a.fit) : [];
  const wide = answers.length > 6;
  const alarming = stops.filter(([, { emergency }]) => !(wide && emergency !== "co-alarm") && ALARMING[emergency ?? ""]?.(clauses, text));
  if (alarming.length > 0) return fits.find(({ id }) => alarming.some(([stop]) => stop === id))?.id ?? alarming[0]?.[0];
  // "none, but we are both sleepy": no gate is passed on half a no
  if (ill(clauses, text) || halfNo(clauses)) return null;
  if (sign.kind === "yes-no") return reassures(clauses) ? "no" : undefined;
  const open = fits.filter(({ id }) => !stops.some(([stop]) => stop === id));
  const [first, second] = open;
  if (first && first.fit >= (wide ? HALF : FAINTLY) && first.fit > (second?.fit ?? 0) + 0.2) return first.id;
  // an emergency's own words, affirmed
  const worst = fits[0];
  if (worst && worst.fit >= HALF && stops.some(([stop]) => stop === worst.id) && !reassures(clauses)) return worst.id;
  if (!reassures(clauses) || wide) return undefined;
  return answers.find(({ id }) => PASSES.test(id))?.id ?? (open.length === 1 ? first?.id : undefined);
}

const halfNo = (clauses: readonly Clause[]): boolean =>
  reassures(clauses.filter(({ turns }) => !turns)) && clauses.some((clause) => clause.turns && !reassures([clause]) && clause.claims.some(({ word }) => ILL.test(word) || SMOKE.test(word) || ALARM.test(word)));

/** After an alarm or a chimney fire: over only where it has been measured or looked at; a chirp is a chirp only with nobody ill. */
function overOrNot(sign: Sign, text: string, clauses: readonly Clause[], over: string, language: Spoken): string | undefined {
  const answers = sign.answers ?? [];
  const has = (id: string): string | undefined => answers.find((answer) => answer.id === id)?.id;
  const looked = said(clauses, LOOKED) || /\b(all clear|fire (service|department|dept|brigade|crew)|gas (man|board)|given the all)\b/i.test(text) && !denied(clauses, stems("clear|service|department|brigade"));
  const feltIll = said(clauses, ILL) || together(clauses, BODY, ACHES) || clauses.some(notWell);
  const goesOn = together(clauses, NOW, FLUE_BURNS) || together(clauses, NOW, stems("rumbl\\w*|thunder\\w*")) || together(clauses, NOW, SOUNDS) || together(clauses, NOW, ILL)
    || (has("burning") !== undefined && together(clauses, AGAIN, HOT));
  if (has("chirp") && !feltIll && !goesOn && !looked && CHIRPS.test(text) && !/\b(four|4|loud|full|continuous\w*)\b/i.test(text) && !denied(clauses, /^chirp/)) return "chirp";
  if (has("full") && /\b(four|4|loud|continuous\w*|non-?stop)\b[^.]*\b(beep\w*|alarm\w*|sound\w*)\b/i.test(text)) return feltIll ? has("ill") : has("full");
  if (goesOn) return has("burning") ?? (feltIll ? has("ill") : has("full")) ?? undefined;
  if (looked && (!feltIll || said(clauses, BY_A_DOCTOR)) && !denied(clauses.filter(({ text: words }) => !FOUND_NOTHING.test(words)), /^(measured|gemessen|looked|cleared)$/)) return over;
  if (feltIll && has("ill")) return "ill";
  if (sayNobody(clauses) || /\bnobody (has )?(looked|measured|been|came|come)\b/i.test(text)) return has("unmeasured") ?? has("unseen");
  const fits = [...fitsOf(sign, text, clauses, readFigures(text), language)].sort((a, b) => b.fit - a.fit);
  const [first, second] = fits;
  if (first && first.fit >= HALF && first.fit > (second?.fit ?? 0) + 0.2 && !(first.id === over && !looked && sayNobody(clauses))) return first.id;
  return undefined;
}
const CHIRPS = /\b(?:chirp\w*|(?:one|single|short|a) (?:short )?(?:beep|bleep|peep)\w*|(?:beep|bleep|peep|pip)\w*(?: \w+)? (?:once|one time) (?:a|an|every|each|per)|(?:beep|bleep|peep|pip)s? every (?:(?:thirty|forty|fifty|sixty|[2-9]\d) ?(?:s|secs?|seconds?)|(?:half a |half |couple of |few |\d+ )?(?:minutes?|mins?)))\b/i;
/** "measured nothing" has measured */
const sayNobody = (clauses: readonly Clause[]): boolean => denied(clauses.filter(({ text }) => !FOUND_NOTHING.test(text)), /^(looked|measured|been|came|called|seen|gemessen)$/);
const FOUND_NOTHING = /\b(?:measured|found|detected|gemessen|gefunden)\s+(?:nothing|zero|0|none|no (?:co|carbon|gas)|nichts|kein)/i;
