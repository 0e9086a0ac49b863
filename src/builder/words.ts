/**
 * A builder's own words. They stand beside cautions and steps, never in their place, and are shown as plain text. What would let a damper
 * be closed by the clock or over a glow, or speaks in place of an alarm, is not taken at all.
 */
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff]+/g;
export const MOST_WORDS = 300;

/** One line, without control or direction characters. */
export const plainWords = (words: string): string => words.toWellFormed().replace(CONTROL, " ").replace(/\s+/g, " ").trim().slice(0, MOST_WORDS);

const SHUTS = /\b(?:clos\w*|shut\w*|slid\w*|push\w*|lower\w*|drop\w*|seal\w*|block\w*|turn\w*|schlie(?:ss|ß)\w*|geschlossen\w*|zu|zumach\w*|zugemacht|zuschieb\w*|zuzieh\w*|zudreh\w*|dichtmach\w*|absperren|absperrt)(?![\p{L}])/u;
const DAMPER = /\b(?:dampers?|flue|slides?|chimney|plate|gate|shut[- ]?off|\p{L}*schieber\w*|absperr\w*|\p{L}*klappen?|schornstein\w*|kamin\w*|rauchrohr\w*|pelti)(?![\p{L}])/u;
const OPEN_ONLY = /\b(?:never|not|don'?t|do not|no|nie|niemals|nicht|kein\w*)\b/;
const BLACK = /\b(?:black|schwarz\w*)\b/;
/** What comes after "never close ... while" and forbids nothing: "never mind the glow, close it". */
const WAVES_AWAY = /\b(?:never mind|no need|not necessary|don'?t (?:wait|worry|bother|mind|care)|do not (?:wait|worry|bother)|no matter|not to wait|nicht (?:warten|wichtig|nötig|schlimm|abwarten)|macht nichts|keine sorge|egal)\b/;
const EARLY = /\b(?:glow\w*|ember\w*|coals?|red|flames?|blue|burning|minutes?|min|hours?|o'?clock|early|at once|straight away|right away|immediately|soon|glut|glüh\w*|rot\w*|flamm\w*|blau\w*|minuten?|stunden?|uhr|früh\w*|sofort|gleich|bald)(?![\p{L}])/u;
/** Dampers in languages whose sentences are not read here: such words are not kept at all. */
const UNREAD = /(?:spj[aä]ll|pelti|pellit|pellin|peltiä|clé de tirage|registre|serranda|valvola fumi|szyber|заслон|вьюшк|шибер|tiro de chimenea|compuerta)/;
const ALARM = /\b(?:alarms?|detectors?|monoxide|co|emergency|112|911|999|000|111|cautions?|warnings?|ambulance|fire brigade|fire service|\p{L}*melder\w*|kohlenmonoxid|notruf\w*|notfall\w*|warnung\w*|feuerwehr\w*|rettung\w*)(?![\p{L}])/u;
const ASH_OR_LIQUID = /\b(?:petrol|gasoline|diesel|paraffin|kerosene|lighter fluid|accelerant|spirits?|alcohol)\b/;

export type WordsRefused = "damper" | "alarm" | "liquid";

/** Why such words are not taken; null for words that may stand. In doubt they are not taken: the builder can say it with a figure. */
export function wordsRefused(words: string): WordsRefused | null {
  const plain = words.normalize("NFKC").toLowerCase().replace(/[’‘]/g, "'");
  if (ALARM.test(plain)) return "alarm";
  if (UNREAD.test(plain)) return "damper";
  if (ASH_OR_LIQUID.test(plain) && !/\b(?:never|no)\b/.test(plain)) return "liquid";
  const about = /[.;!?]/.test(plain) ? plain.split(/[.;!?]+/) : [plain];
  for (const sentence of about) {
    const shuts = SHUTS.test(sentence) && DAMPER.test(sentence);
    if (!shuts) continue;
    if (WAVES_AWAY.test(sentence)) return "damper";
    // in German the verb that is forbidden comes before or behind its "nie"
    const forbids = OPEN_ONLY.test(sentence) && (sentence.search(OPEN_ONLY) < sentence.search(SHUTS) || /\b(?:nie|niemals|nicht)\b/.test(sentence));
    if (forbids && !/\b(?:but|unless|except|then|after that|instead|aber|ausser|außer|sondern|dann|danach)\b/.test(sentence)) continue;
    if (!BLACK.test(sentence) || EARLY.test(sentence.replaceAll(/\b(?:no|keine?)(?: more| mehr)? (?:glow|embers?|flames?|glut|flammen?)\b/g, ""))) return "damper";
  }
  // closing may be said in one sentence and the early moment in the next
  return SHUTS.test(plain) && DAMPER.test(plain) && WAVES_AWAY.test(plain) ? "damper" : null;
}
