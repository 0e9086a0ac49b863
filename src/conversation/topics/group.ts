/**
 * What is said and pressed about the group. Short, explicit phrases are told here before anything is routed; a message that the router
 * takes for the group's comes to `groupOutcome`.
 */
import { say, steps, text } from "../../answer.ts";
import { isCode } from "../../group/code.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { mineOutcome, type OnTopic } from "./group-card.ts";
import { makeLink, unlink, useLink } from "./group-link.ts";
import { cancelDay, joinDay, leaveDay, setDay, showDay, type DayKind } from "./group-days.ts";
import { giveMeter, haveMeter, leaveMeterLine, wantMeter, whoHasMeter } from "./group-meter.ts";
import { addToOrder, closeOrder, leaveOrder, openOrder, showOrder } from "./group-order.ts";
import { nameOutcome, readyToShare, shareOutcome, takeBack, withdrawOutcome } from "./group-share.ts";
import { askToFire } from "./shared-heater.ts";
import { digestHour, howTheGroupDoes, joinWinter, leaveWinter } from "./group-winter.ts";

const LONGEST = 160;
const CODE = "([a-z]\\d[a-z]\\d)";
const THIS = "(?:this|that|it|mine|my (?:result|reckoning|answer|figures?|numbers?|plan|curve)s?)";
const ALL = "(?:the |my |our )?(?:group|room|others|everyone|everybody|channel|club|members|rest)";

const ORDER = "(?:joint|group|common|shared)(?: wood)? order";
const METER = "(?:the |our )?(?:moisture )?meter";

interface Phrase {
  readonly says: RegExp;
  answer(context: Context, found: RegExpExecArray, onTopic: OnTopic): Outcome | null;
}
const MINE: Phrase["answer"] = (context, found, onTopic) => (isCode(found[1] ?? "") ? mineOutcome(context, found[1] ?? "", onTopic) : null);

/** Whole messages, in small letters, without their end mark. */
const PHRASES: readonly Phrase[] = [
  { says: new RegExp(`^(?:please )?(?:run |try |show |reckon |do )?${CODE}(?: please| for me)?(?: on (?:my|our) (?:own )?(?:heater|stove))?$`), answer: MINE },
  { says: new RegExp(`^(?:withdraw|take back|remove|delete) (?:the )?(?:card )?${CODE}$`), answer: (context, found) => (isCode(found[1] ?? "") ? withdrawOutcome(context, found[1] ?? "") : null) },
  { says: new RegExp(`^(?:please )?(?:share|post|send|put|show) ${THIS} (?:with|to|in|into|up (?:in|for)) ${ALL}( with my name| under my name)?(?: please)?$`), answer: (context, found) => shareOutcome(context, "", found[1] !== undefined) },
  { says: /^(?:please )?share (?:this|that|it)(?: please)?$/, answer: (context) => shareOutcome(context, "") },
  { says: /^(?:please )?(?:link|connect|add) (?:this|another|a|our other) (?:place|room|server|network|channel)(?: (?:to|with) (?:the|this|our) group)?$/, answer: makeLink },
  { says: /^(?:make|give me|get) (?:a |the )?link(?:ing)? code(?: please)?$/, answer: makeLink },
  { says: /^(?:unlink|disconnect) (?:this (?:place|room|server|channel)|us|me)(?: from the group)?$/, answer: unlink },
  { says: /^(?:link|link code|linking code|join (?:the )?group|join (?:the )?group with|link (?:this )?(?:place|room) (?:with|to)):? [a-z\d]{4}-?[a-z\d]{4}$/, answer: useLink },
  { says: /^(?:please )?(?:i(?:'d like to|'ll| want to| will)? )?(?:join|take part in|count me in(?:to)?|be part of) (?:the |our )?(?:group'?s? )?winter$/, answer: (context) => joinWinter(context) },
  { says: /^(?:please )?(?:i(?:'d like to|'ll| want to| will)? )?(?:leave|quit|take me out of|count me out of|no longer take part in) (?:the |our )?(?:group'?s? )?winter$/, answer: (context) => leaveWinter(context) },
  { says: /^(?:how (?:does|is|did) (?:the|our|my) group (?:do|doing|get on|getting on|faring)(?: this (?:winter|week|season))?|(?:show (?:me )?)?(?:the |our )?group'?s? winter|how (?:do|are) we all (?:do|doing)(?: this winter)?)$/, answer: (context) => howTheGroupDoes(context) },
  { says: /^(?:the )?(?:group'?s?|winter) digest (?:on|every) ([a-z]+?)s? at (\d{1,2}(?::\d{2})?)(?: ?h)?$/, answer: (context, found) => digestHour(context, found[1], found[2]) },
  { says: /^(?:no|stop|end) (?:the )?(?:group'?s?|winter) digest$/, answer: (context) => digestHour(context, undefined, undefined) },
  { says: new RegExp(`^(?:open|start|begin|set up) (?:a |the |our )?${ORDER}$`), answer: openOrder },
  { says: /^(?:let'?s|shall we|could we|can we|we could|who wants to) (?:order|buy) (?:some |our |the )?(?:fire)?wood together\b.*$/, answer: inGroup(openOrder) },
  { says: new RegExp(`^close (?:the |our )?${ORDER}$`), answer: closeOrder },
  { says: new RegExp(`^(?:please )?(?:add|put|i(?:'d| would)? (?:like|take|want|order)|order)\\b.*\\b(?:to|in|into|on|from|through|with) (?:the |our )?${ORDER}$`), answer: addToOrder },
  { says: new RegExp(`^(?:take|remove|cancel|drop) (?:me|my (?:order|amount|share|line|wood)) (?:out of|from|off|in) (?:the |our )?${ORDER}$`), answer: leaveOrder },
  { says: new RegExp(`^(?:(?:show|list|what(?:'s| is) (?:in|on)|how (?:much|big) is) )?(?:the |our )?${ORDER}$`), answer: showOrder },
  ...(["sweep", "alarms"] as const).flatMap(daysOf),
  { says: new RegExp(`^(?:who (?:has|holds|got)|who'?s got|where is) ${METER}(?: now)?$`), answer: inGroup(whoHasMeter) },
  { says: new RegExp(`^(?:i (?:have|'ve got|got|took)|i've got) ${METER}(?: now)?$`), answer: inGroup(haveMeter) },
  { says: new RegExp(`^(?:i(?:'d like| want| need| would like)|may i have|can i have|put me in (?:the )?line for|who is next for|lend me) ${METER}(?: next)?$`), answer: inGroup(wantMeter) },
  { says: new RegExp(`^i(?:'ve| have)? (?:gave|given|handed|passed|brought) ${METER} (?:back|on|away|over)$`), answer: inGroup(giveMeter) },
  { says: new RegExp(`^take me out of (?:the )?line for ${METER}$`), answer: inGroup(leaveMeterLine) },
];

/** The words of one of the group's days. */
function daysOf(kind: DayKind): Phrase[] {
  const day = kind === "sweep" ? "sweep'?s? day" : "alarms?(?:[ -]test(?:ing)?)? day";
  return [
    { says: new RegExp(`^(?:cancel|call off|no) (?:the |our )?${day}$`), answer: inGroup((context) => cancelDay(context, kind)) },
    { says: new RegExp(`^(?:i(?:'ll| will|'d like to| want to)? (?:join|come to|take part in)|(?:put|count) me (?:on|in for|down for)|remind me of|join) (?:the |our )?${day}$`), answer: inGroup((context) => joinDay(context, kind)) },
    { says: new RegExp(`^(?:leave|take me off|i(?:'ll| will| can't| cannot)? (?:leave|not come to|come to)|don't remind me of) (?:the |our )?${day}$`), answer: inGroup((context) => leaveDay(context, kind)) },
    { says: new RegExp(`^(?:who (?:joins|comes to|is (?:on|in for))|when is|show|list) (?:the |our )?${day}(?: list)?$`), answer: inGroup((context) => showDay(context, kind)) },
    { says: new RegExp(`^(?:set |plan |make )?(?:a |the |our |next )?${day}(?:'s| is| will be)?:? (?:on |for |to )?\\S.*$`), answer: inGroup((context) => setDay(context, kind)) },
  ];
}

/** Words that mean a group's thing only to somebody who is in one. */
function inGroup(answer: (context: Context) => Outcome): Phrase["answer"] {
  return (context) => ((context.snapshot.groups ?? []).length > 0 ? answer(context) : null);
}

const plainly = (words: string): string => words.toLowerCase().replace(/[’]/g, "'").replace(/[.!?\s]+$/, "").replace(/\s+/g, " ").trim();

export function groupSaid(context: Context, onTopic: OnTopic): Outcome | null {
  if (context.text.length > LONGEST) return null;
  const asked = askToFire(context);
  if (asked) return asked;
  const said = plainly(context.text);
  for (const { says, answer } of PHRASES) {
    const found = says.exec(said);
    const outcome = found && answer(context, found, onTopic);
    if (outcome) return outcome;
  }
  return null;
}

/** `share:…`, `card:mine=K7M2`, `card:withdraw=K7M2`, `card:name=K7M2`, `winter:join=<group>`, `list:…` */
export function groupChoice(context: Context, kind: string, rest: string, onTopic: OnTopic): Outcome | null {
  const [what = "", value = "", id] = rest.split("=");
  switch (kind) {
    case "share":
      return shareOutcome(context, rest);
    case "card":
      return !isCode(value) ? null : what === "mine" ? mineOutcome(context, value, onTopic) : what === "withdraw" ? withdrawOutcome(context, value) : what === "name" ? nameOutcome(context, value) : null;
    case "winter":
      return what === "join" ? joinWinter(context, value || undefined) : what === "leave" ? leaveWinter(context, value || undefined) : what === "show" ? howTheGroupDoes(context, value || undefined) : null;
    case "list":
      return listChoice(id ? onlyIn(context, id) : context, what, value);
    default:
      return null;
  }
}

/** A button of a list says which group's it is. */
const onlyIn = (context: Context, id: string): Context => ({ ...context, snapshot: { ...context.snapshot, groups: (context.snapshot.groups ?? []).filter((group) => group.id === id) } });

/** `list:join=sweep=<group>`, `list:show=order`, `list:have=meter`, ... */
function listChoice(context: Context, what: string, kind: string): Outcome | null {
  if (kind === "order") return what === "show" ? showOrder(context) : what === "leave" ? leaveOrder(context) : null;
  if (kind === "meter") return new Map<string, (context: Context) => Outcome>([["show", whoHasMeter], ["join", wantMeter], ["have", haveMeter], ["give", giveMeter], ["leave", leaveMeterLine]]).get(what)?.(context) ?? null;
  if (kind !== "sweep" && kind !== "alarms") return null;
  return what === "join" ? joinDay(context, kind) : what === "leave" ? leaveDay(context, kind) : what === "show" ? showDay(context, kind) : null;
}

const TAKING_BACK = /\b(?:stop|don'?t|do not|never|hide|withdraw|unshare|remove|delete|no longer|any ?more|back|down|out of)\b/;
const SHARING = /\b(?:shar\w*|shear|shaer|post|send|put|publish|pass|forward|give|let|show|hand|stick|brag|boast|public|see|look|have|tell|like)\b/;
const SEASON = /\b(?:winter|season|year|month'?s|since|all of us|of us|together|compare|average|total|how (?:do|did|are|is|does)|who(?:'s)?|table|stand|better|side by side|what did|what have|how many|how much)\b/;

/**
 * A message that the router takes for the group's, in words of its own. Nothing goes out on a guess: what is at hand is offered with a
 * button, and what was meant to be taken back is listed.
 */
export function groupOutcome(context: Context): Outcome {
  const said = plainly(context.text);
  if (TAKING_BACK.test(said)) return takeBack(context);
  if (SHARING.test(said) && context.state.shareable && !/\b(?:winter|season|year|month)\b/.test(said)) return readyToShare(context);
  if (SEASON.test(said)) return howTheGroupDoes(context);
  return context.state.shareable ? readyToShare(context) : groupHelp();
}

export const groupHelp = (): Outcome => ({
  draft: { topic: "share-result", headline: text("group.help"), blocks: blocks(steps(["share", "mine", "winter", "order", "days", "meter", "link"].map((id) => text(`group.help.${id}`)), { ordered: false }), say(text("group.help.press"))) },
});
