/** A typed message: commands of the talk itself, answers to what was asked, reports on a fire that burns, then its topic. */
import { text } from "../answer.ts";
import { isOver, type GuideEvent } from "../firing/guide.ts";
import type { TopicId } from "../topics.ts";
import { byFigures } from "./by-figures.ts";
import type { Context, Outcome } from "./context.ts";
import { hear, type Hearing } from "./hear.ts";
import { guessLanguage } from "./language.ts";
import { onTopic } from "./on-topic.ts";
import { asksToRemind } from "./reading/read-reminder.ts";
import { basisNear } from "./reading/figure-context.ts";
import { readNumberWords } from "./reading/number-words.ts";
import { scan } from "./reading/tokens.ts";
import { readYesNo } from "./reading/yes-no.ts";
import { route } from "./routing/route.ts";
import { answerTo } from "./sign-answer.ts";
import { stated } from "./stated.ts";
import { surroundings } from "./surroundings.ts";
import { banSaid } from "./topics/ban.ts";
import { drynessOutcome } from "./topics/calculate.ts";
import { closeDownOutcome } from "./topics/close-down.ts";
import { emergencyOutcome } from "./topics/emergency.ts";
import { guideEvent, takeOver } from "./topics/fire.ts";
import { running, stateOf } from "./topics/guide-state.ts";
import { helpOutcome, notSafeOutcome, outOfScopeOutcome, twoOutcome, unsureOutcome } from "./topics/other.ts";
import { reminderAnswered } from "./topics/reminders.ts";
import { troubleOutcome } from "./topics/trouble.ts";

export function respond(context: Context): Outcome {
  const said = context.text.trim();
  if (said === "") return helpOutcome(context);
  if (asksToRemind(said)) return onTopic(context, "reminder-set");
  return command(context, said) ?? shutOverGlow(context) ?? asked(context) ?? banSaid(context) ?? burning(context, said) ?? surroundings(context) ?? (context.state.bed || hear(context).report?.raked !== undefined || hear(context).report?.bed !== undefined ? null : stated(context)) ?? byTopic(context);
}

/** "undo", "cancel", "help", a greeting: short, whole messages. */
function command(context: Context, said: string): Outcome | null {
  const plain = said.toLowerCase().replace(/[.!?\s]+$/, "");
  if (plain === "undo" || plain === "take that back" || plain === "undo that") {
    const { undo } = context.state;
    return undo
      ? { draft: { topic: context.state.topic ?? "help", headline: text("records.undone") }, writes: undo.writes, state: { undo: undefined } }
      : { draft: { topic: context.state.topic ?? "help", headline: text("records.nothing-to-undo") } };
  }
  if (plain === "cancel" || plain === "never mind" || plain === "nevermind" || plain === "forget it") {
    const open = context.state.tree ?? context.state.pending;
    return { draft: { topic: "help", headline: text(open ? "cancelled" : "nothing-to-cancel") }, state: { tree: undefined, pending: undefined } };
  }
  if (["help", "hi", "hello", "hey", "start", "hilfe", "menu", "?"].includes(plain)) return helpOutcome(context);
  return null;
}

/** "I already shut it while it still glowed", said of a damper nobody needs to name while closing down is the topic. */
function shutOverGlow(context: Context): Outcome | null {
  const about = context.state.topic === "close-down" || context.state.topic === "light-fire" || running(context) !== null;
  if (!about || !/\b(i|we|ive|i've|already|have|he|she)\b.{0,30}\b(shut|closed)\b/i.test(context.text) || /\b(air|door|can i|may i|should)\b|\?/i.test(context.text)) return null;
  const { report } = hear(context);
  const alight = report?.bed === "glow" || (report?.flame !== undefined && report.flame !== "none");
  return alight ? emergencyOutcome(context, "damper-over-embers") : null;
}

/** An answer to the question that stands open. */
function asked(context: Context): Outcome | null {
  const { tree, pending } = context.state;
  const short = context.text.length <= 120;
  if (pending?.id === "basis" && short) {
    const tokens = readNumberWords(scan(context.text));
    const basis = tokens.reduce<"wet" | "dry" | null>((found, _, i) => found ?? basisNear(tokens, i, i + 1), null) ?? bareBasis(context.text);
    if (basis) return drynessOutcome(context, { figures: [] }, pending.data.topic === "meter-reading" ? "meter-reading" : "wood-dryness", basis);
  }
  const reminder = short ? reminderAnswered(context) : null;
  if (reminder) return reminder;
  const trouble = tree?.waiting ? context.knowledge.troubles.get(tree.trouble) : undefined;
  const sign = tree?.waiting ? trouble?.signs[tree.waiting] : undefined;
  const finished = tree && !tree.waiting ? context.knowledge.troubles.get(tree.trouble) : undefined;
  if (finished && context.text.length <= 40 && !/\d/.test(context.text) && readYesNo(context.text)) return troubleOutcome(context, finished);
  if (!tree?.waiting || !trouble || !sign || !short) return null;
  const heard = hear(context);
  const given = answerTo(sign, context.text, heard.figures);
  // a new question of its own outranks an answer that was only guessed at
  if (given === undefined) {
    // what was said may answer another of the tree's questions
    const others = route(context.text).verdict === "sure" ? {} : heard.signs(trouble);
    return Object.keys(others).length > 0 ? troubleOutcome(context, trouble, others) : null;
  }
  if (/\?\s*$/.test(context.text) && route(context.text).verdict === "sure") return null;
  return troubleOutcome(context, trouble, { [tree.waiting]: given });
}

function bareBasis(words: string): "wet" | "dry" | "unknown" | null {
  const plain = words.toLowerCase();
  if (/\bdry\b/.test(plain)) return "dry";
  if (/\bwet\b/.test(plain)) return "wet";
  return /\b(don'?t know|dont know|no idea|not sure|unsure)\b/.test(plain) ? "unknown" : null;
}

/** Words for the guide while a fire burns on this heater. */
function burning(context: Context, said: string): Outcome | null {
  const guide = running(context);
  if (!guide || isOver(stateOf(guide).stage)) return null;
  const happened = guideWords(said.toLowerCase());
  if (happened === "take-over") return takeOver(context, guide);
  if (happened) return guideEvent(context, guide, happened);
  const { report } = hear(context);
  if (!report) return null;
  // a report is short; a long message with a topic of its own is answered as that
  const routed = route(context.text);
  const own = routed.ranked[0]?.topic;
  if (context.text.length > 160 && routed.verdict === "sure" && own !== "close-down" && own !== "light-fire") return null;
  if (routed.verdict === "sure" && own && !ABOUT_THE_FIRE.has(own) && /\?\s*$/.test(context.text)) return null;
  return guideEvent(context, guide, { event: "report", report });
}

const ABOUT_THE_FIRE: ReadonlySet<TopicId> = new Set<TopicId>(["light-fire", "close-down", "over-firing", "slow-ignition", "fire-dies", "charcoal-left"]);

function guideWords(plain: string): GuideEvent | "take-over" | null {
  const is = (...phrases: string[]): boolean => phrases.some((phrase) => plain === phrase || plain.startsWith(`${phrase} `) || plain.startsWith(`${phrase},`) || plain.startsWith(`${phrase}.`));
  if (is("pause", "wait a moment", "hold on")) return { event: "pause" };
  if (is("resume", "go on", "continue", "back again", "i'm back", "im back")) return { event: "resume" };
  if (is("stop the guide", "end the guide", "quit the guide")) return { event: "stop" };
  if (is("it's lit", "its lit", "it is lit", "lit", "lit it", "i lit it", "just lit it", "i have lit it")) return { event: "lit" };
  if (is("it went out", "went out", "fire went out", "the fire went out", "it died", "it's gone out", "its gone out")) return { event: "out" };
  if (is("i take over", "i'll take over", "ill take over", "take over", "i take the watch")) return "take-over";
  if (is("leave it open", "i leave it open", "left it open", "leave the damper open")) return { event: "leave-open" };
  if (is("air shut", "air closed", "i shut the air", "shut the air", "closed the air", "i closed the air", "i have shut the air")) return { event: "air-shut" };
  if (is("damper shut", "damper closed", "i closed the damper", "closed the damper", "shut the damper", "i shut the damper")) return { event: "damper-shut" };
  return null;
}

/** Requests to declare something safe are refused before anything else is made of them. */
const SAFE = /\b(is|are) (it|this|that|my \w+|the \w+) safe\b|\b(certify|guarantee|promise|confirm)\b[^.?!]{0,40}\bsafe\b|\btell me (it|it's|its|that it)( is)? safe\b/;

function byTopic(context: Context): Outcome {
  const plain = context.text.slice(0, 2000).toLowerCase();
  const heard: Hearing = hear(context);
  const routed = route(context.text);
  const [first, second] = routed.ranked;
  const nearest = routed.ranked.map(({ topic }) => topic).filter((topic) => topic !== "out-of-scope");
  if (SAFE.test(plain) && !["what-to-burn", "children-and-clearance"].includes(first?.topic ?? "")) return notSafeOutcome();
  const spoken = context.state.bed !== undefined && heard.report !== null && context.text.length <= 160;
  if (spoken || closing(heard, first?.topic, routed.verdict === "sure")) return closeDownOutcome(context, heard.report);
  const follow = followUp(context, plain, heard);
  if (follow) return follow;
  const figured = byFigures(context.text, heard);
  if (figured) return onTopic(context, figured, heard);
  const language = guessLanguage(context.text);
  if (routed.verdict === "out-of-scope") return outOfScopeOutcome(context, language !== "en" && language !== "other" ? language : null);
  if (routed.verdict === "unsure" && nearest.length > 0) return unsureOutcome(context, nearest);
  if (routed.verdict === "two" && first && second) return twoOutcome(context, first.topic, second.topic);
  const outcome = onTopic(context, first?.topic ?? "help", heard);
  return routed.second ? { ...outcome, draft: { ...outcome.draft, also: [routed.second] } } : outcome;
}

/** What is said of bed and flame, outside any guide, is about closing down unless the topic is clearly another. */
function closing(heard: Hearing, topic: TopicId | undefined, sure: boolean): boolean {
  const report = heard.report;
  if (!report || report.roar) return false;
  if (topic === "close-down") return true;
  const words = [report.bed !== undefined, report.raked !== undefined, report.in_the_dark !== undefined, report.flame === "blue"].filter(Boolean).length;
  return words >= 2 || (words === 1 && (!sure || topic === undefined || NEAR_CLOSING.has(topic)));
}
const NEAR_CLOSING: ReadonlySet<TopicId> = new Set<TopicId>(["out-of-scope", "charcoal-left", "light-fire", "co-alarm"]);

/** "and if it's spruce?", "and at -10?", "no, 14 not 40": the last reckoning once more, with what is new. */
function followUp(context: Context, plain: string, heard: Hearing): Outcome | null {
  const last = context.state.reckoned;
  if (!last || plain.length > 80) return null;
  const opens = /^(and|what|how about|what about|no,|no |sorry|i mean|but if|if)\b/.test(plain);
  const says = heard.figures.length > 0 || heard.species !== undefined;
  if (!opens || !says) return null;
  if (last.topic === "load-size") return onTopic(context, "load-size", { ...heard, load: { ...(last.inputs as object), ...heard.load } });
  const figures = heard.figures.length > 0 ? heard.figures : [];
  return onTopic(context, last.topic, { ...heard, figures });
}
