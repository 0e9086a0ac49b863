/**
 * Questions that owners ask in much the same words, that no topic of the router is about or that it takes for another. Each is read from the
 * message as written, in English and German, and answered before a tree can take it for an answer to its own question.
 */
import { say, steps, text } from "../../answer.ts";
import { roomFor } from "../../limits.ts";
import { q } from "../../quantities.ts";
import type { TopicId } from "../../topics.ts";
import type { Context, Outcome } from "../context.ts";
import { hear, type Hearing } from "../hear.ts";
import { closeDownOutcome } from "./close-down.ts";
import { fireLastsOutcome, stayOutcome } from "./fire-lasts.ts";
import { standingBans } from "./ban.ts";
import { running, stateOf } from "./guide-state.ts";
import { loadOutcome } from "./load-size.ts";
import { twiceOrOnceOutcome } from "./twice-or-once.ts";
import { betterWoodOutcome, woodsCompared } from "./better-wood.ts";

type OnTopic = (context: Context, topic: TopicId, heard?: Hearing) => Outcome;
const LONGEST = 200;

/** A fire's flames, not a pile's winter, a ban or what else is burnt. */
const LASTS = /\bhow long\b.{0,45}\b(?:burns?|burning)\b|\bhow long\b.{0,25}\b(?:flames?|fire)\b.{0,10}\blast\b|(?<!\p{L})wie lang(?:e)?(?!\p{L}).{0,50}(?<!\p{L})brenn(?:t|en|e)(?!\p{L})|\bbrenndauer\b/iu;
const NOT_LASTS = /\b(?:ban|until|till|before|since|after|cords?|piles?|stack|stere|ster|m3|winter|season|weeks?|months?|cool|gebe[rt]|verbot|stapel|haufen|reicht|hurts?|burnt|skin)\b|m³/i;
const TWICE = /\b(?:twice|two|2 ?x|zweimal|zwei|2 ?mal)\b/i;
const ONCE = /\b(?:once|(?:in )?one (?:go|fire|load|big|large|full|of \d+)|a single|1 ?x|einmal|ein(?:e|en)? (?:feuer|gro(?:ß|ss)e[sn]?|f[üu]llung|ladung)|1 ?mal)\b/i;
const OR = /\b(?:or|oder|than|instead|als|statt)\b/i;
const FIRING = /\b(?:burn|fires?|loads?|light|heat|kg|kilos?|feuer|heizen|einheizen|anheizen|verheizen|f[üu]llung(?:en)?)\b/i;
const MAY = /^\W*(?:(?:so|and|but|und|aber) )*(?:can|may|could|should|am|is it|is that|would it be|do i have to|kann|darf|soll|ist es|muss|geht es|kann man|darf man)\b/i;
const AWAY = /\b(?:leave (?:(?:the|my|our|a|this) )?(?:(?:burning )?fire|heater|stove|house|it (?:burning|alone|unattended|to burn))|go(?:ing)? (?:to (?:bed|sleep)|out|shopping)|sleep|unattended|schlafen|ins bett|weggehen|wegfahren|au(?:ß|ss)er haus|allein(?:e)? lassen|unbeaufsichtigt)\b/i;
const ABLAZE = /\b(?:fire|burn\w*|light(?:ing)?|lit|flames?|another (?:one|load|fire)|feuer|brenn\w*|einheizen|anheizen|nachlegen|anz[üu]nden|flammen?)\b/i;
const CLOSING = /\b(?:embers?|glow\w*|damper|slide|black|coals|air|door|glut|schieber|klappe|schwarz|luft|t[üu]r|bake|oven|backen|backfach)\b/i;
const AGAIN = /\b(?:when|how long (?:until|till|before|do (?:i|we) (?:have to )?wait)|how soon)\b.{0,20}\b(?:can|may|could|light|fire|heat|burn|until)\b.{0,25}\b(?:again|next|another|second)\b|(?<!\p{L})(?:wann|wie lange? bis)(?!\p{L}).{0,30}\b(?:wieder|n[äa]chste(?:s|n)? (?:mal|feuer)|erneut)\b.{0,20}\b(?:ein|an)?(?:heizen|feuern|z[üu]nden)\b/iu;
const TELL_BLACK = /\b(?:how (?:do|can|will|would|should) (?:i|you|we|one)|what (?:do|should|will) (?:i|you|we)|how to|wie|woran) (?:know|tell|see|check|recogni[sz]e|be sure|look (?:for|like)|erkenn\w*|sehe?|wei(?:ß|ss)|merke)\b.{0,40}\b(?:black|burnt out|out|schwarz|aus)\b/i;
const STRANGE = /\b(?:bought|moved in\w*|inherited|took over|taken over|new owners?|gekauft|geerbt|[üu]bernommen|eingezogen)\b/i;
const OLD_HEATER = /\b(?:heater|stove|kachelofen|grundofen|speicherofen|ofen|kakelugn)\b/i;
const NOTHING_KNOWN = /\b(?:no idea|don'?t know|do not know|unknown|never (?:been )?(?:used|fired|had)|old|keine ahnung|wei(?:ß|ss) nicht|kenne|alte[rnms]?)\b/i;
const WHICH_WOOD = /\b(?:what|which) (?:(?:kind|type|sort)s? of )?(?:fire ?)?wood\b.{0,30}\b(?:buy|best|better|should|get|order|recommend|good)\b|\b(?:best|right) (?:fire ?)?wood (?:to|for)\b|(?<!\p{L})welche[sn]? (?:brenn)?holz(?:art)?(?!\p{L}).{0,30}\b(?:kaufen|besser|beste[ns]?|soll\w*|nehmen|gut|empf\w*)\b/iu;
const SIZING = /\bhow (?:big|thick|wide|long|tall|high|large) (?:should|must|does|do)\b.{0,30}\b(?:chimney|flue(?: run| channel)?|fire ?bricks?|fire ?box|channels?|throat)\b.{0,12}\bbe\b|\b(?:how (?:big|thick|wide|long|tall|high|large)|what (?:size|thickness|diameter|length|cross[- ]section)|longest|shortest)\b.{0,40}\b(?:chimney|flue(?: run| channel)?|fire ?brick|fire ?box|channels?|core|masonry|throat)\b.{0,30}(?:\bshould\b|\bmust\b|\bneed\w*\b|\bfor (?:a |an )?\d)|\blongest flue\b|\bhow (?:big|wide|tall|high) (?:a|of a) (?:chimney|flue)\b|\bwie (?:dick|lang|gro(?:ß|ss)|hoch|weit)\b.{0,40}\b(?:schamotte\w*|schornstein|kamin|zug|z[üu]ge|feuerraum)\b.{0,20}\b(?:muss|soll\w*|sein|f[üu]r)\b/i;

export function plainQuestion(context: Context, onTopic: OnTopic): Outcome | null {
  const { said } = context;
  if (said.length > LONGEST) return null;
  if (LASTS.test(said) && !NOT_LASTS.test(said)) return fireLastsOutcome(context, hear(context));
  if (TWICE.test(said) && ONCE.test(said) && OR.test(said) && FIRING.test(said)) return twiceOrOnceOutcome(context);
  if (MAY.test(said) && AWAY.test(said) && ABLAZE.test(said) && !CLOSING.test(said)) return stayOutcome(context);
  if (AGAIN.test(said) && standingBans(context).length === 0) return againOutcome(context);
  if (TELL_BLACK.test(said)) return tellBlackOutcome(context);
  if (SIZING.test(said)) return sizingOutcome();
  if (STRANGE.test(said) && OLD_HEATER.test(said) && NOTHING_KNOWN.test(said) && context.heater === null) return strangeHeaterOutcome();
  const woods = woodsCompared(context);
  if (woods) return betterWoodOutcome(context, woods);
  return WHICH_WOOD.test(said) && !/\d|\b(?:cheap\w*|price\w*|costs?|billig\w*|preis\w*|kostet)\b/i.test(said) ? onTopic(context, "what-to-burn") : null;
}

/** "When may I light again?" By spacing and day, as far as the log knows. */
function againOutcome(context: Context): Outcome {
  const { limits, snapshot, now_ms, rules } = context;
  const outcome = loadOutcome(context);
  const guide = running(context);
  const { lit_at_ms, stage } = guide ? stateOf(guide) : { lit_at_ms: undefined, stage: undefined };
  if (lit_at_ms !== undefined && stage !== "out") {
    const until = { at_ms: lit_at_ms + limits.spacing_h * 3_600_000, show: "day-time" } as const;
    return { draft: { topic: "load-size", cautions: ["over-firing", "more-wood", "close-flue"], headline: text("load.wait.spacing", { until }) } };
  }
  const room = roomFor(limits, snapshot.fires, now_ms, rules);
  if (room.not_before_ms !== null) return outcome;
  return { ...outcome, draft: { ...outcome.draft, headline: text(snapshot.fires.length > 0 ? "again.now" : "again.no-log", { spacing: q(limits.spacing_h, "h") }), cautions: [...(outcome.draft.cautions ?? []), "more-wood"] } };
}

/** A question about the black bed reports nothing of the bed. */
function tellBlackOutcome(context: Context): Outcome {
  const rule = closeDownOutcome(context, null);
  return { ...rule, draft: { ...rule.draft, headline: text("close.tell-black") } };
}

const sizingOutcome = (): Outcome => ({ draft: { topic: "out-of-scope", headline: text("out.sizing"), blocks: [say(text("out.sizing-who"))] } });

/** An old heater nobody can say anything about: looked at before it is lit. */
const strangeHeaterOutcome = (): Outcome => ({
  draft: {
    topic: "first-fires",
    cautions: ["blocked-flue", "carbon-monoxide", "asbestos"],
    headline: text("strange.headline"),
    blocks: [
      steps(["sweep", "alarm", "papers", "look", "small"].map((id) => text(`strange.${id}`)), { ordered: true, cautions: ["blocked-flue", "carbon-monoxide", "asbestos"] }),
      { kind: "choices", cautions: [], choices: (["first-fires", "set-heater", "sweep-due"] as const).map((topic) => ({ id: `topic:${topic}`, label: text(`topic.${topic}`) })) },
    ],
  },
});
