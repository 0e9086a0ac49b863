/** A typed message: commands of the talk itself, answers to what was asked, reports on a fire that burns, then its topic. */
import { text } from "../answer.ts";
import { isOver, type GuideEvent } from "../firing/guide.ts";
import type { Sign, Trouble } from "../knowledge/schemas.ts";
import { isGraded } from "../trouble/walk.ts";
import { topicFacts, type TopicId } from "../topics.ts";
import { byFigures } from "./by-figures.ts";
import type { Context, Outcome } from "./context.ts";
import { hear, type Hearing } from "./hear.ts";
import { germanGuideWords } from "./german/guide-words.ts";
import { guessLanguage } from "./language.ts";
import { onTopic } from "./on-topic.ts";
import { pressed } from "./pressed.ts";
import { asksToRemind } from "./reading/read-reminder.ts";
import { basisNear } from "./reading/figure-context.ts";
import { readNumberWords } from "./reading/number-words.ts";
import { scan } from "./reading/tokens.ts";
import { readYesNo } from "./reading/yes-no.ts";
import { extraTopic } from "./routing/extra.ts";
import { route, type Route } from "./routing/route.ts";
import { languageAsked } from "./spoken.ts";
import { stated } from "./stated.ts";
import { surroundings } from "./surroundings.ts";
import { albumSaid } from "./topics/album-shown.ts";
import { banSaid } from "./topics/ban.ts";
import { builderAsked } from "./topics/builder.ts";
import { drynessOutcome } from "./topics/calculate.ts";
import { closeDownOutcome } from "./topics/close-down.ts";
import { emergencyOutcome } from "./topics/emergency.ts";
import { guideEvent, lightingSaid, takeOver } from "./topics/fire.ts";
import { running, stateOf } from "./topics/guide-state.ts";
import { groupSaid } from "./topics/group.ts";
import { newHeaterAnswered } from "./topics/new-heater.ts";
import { moreOfHowto } from "./topics/howto.ts";
import { deleteAnswered, helpOutcome, notSafeOutcome, outOfScopeOutcome, twoOutcome, unsureOutcome } from "./topics/other.ts";
import { plainQuestion } from "./topics/plain-questions.ts";
import { pagesAsked } from "./topics/pages.ts";
import { reminderAnswered } from "./topics/reminders.ts";
import { askAgain, troubleOutcome } from "./topics/trouble.ts";

export function respond(context: Context): Outcome {
  const said = context.said.trim();
  if (said === "") return helpOutcome(context);
  const language = languageAsked(context);
  if (language) return language;
  const group = groupSaid(context, onTopic);
  if (group) return group;
  if (asksToRemind(context.text)) return onTopic(context, "reminder-set");
  const album = albumSaid(context);
  if (album) return album;
  return command(context, said) ?? shutOverGlow(context) ?? builderAsked(context) ?? pagesAsked(context) ?? plainQuestion(context, onTopic) ?? asked(context) ?? banSaid(context) ?? burning(context, said) ?? surroundings(context) ?? (context.state.bed || hear(context).report?.raked !== undefined || hear(context).report?.bed !== undefined ? null : stated(context)) ?? byTopic(context);
}

const UNDO: ReadonlySet<string> = new Set(["undo", "take that back", "undo that", "rückgängig", "rueckgaengig", "mach das rückgängig", "rückgängig machen", "zurücknehmen", "nimm das zurück"]);
const CANCEL: ReadonlySet<string> = new Set(["cancel", "never mind", "nevermind", "forget it", "abbrechen", "abbruch", "vergiss es", "egal", "lass gut sein"]);
const HELP: ReadonlySet<string> = new Set(["help", "hi", "hello", "hey", "start", "hilfe", "hallo", "moin", "servus", "grüezi", "guten tag", "guten abend", "guten morgen", "menü", "menu", "?"]);
const THANKS = /^(?:(?:ok|okay|great|perfect|super|cool|brilliant|lovely|alright|all right|right)[,!. ]+)?(?:many |much )?(?:thanks|thank you|thx|cheers|ta|much appreciated|thank you so much|thanks so much|thanks a lot|thanks a million|good night|goodnight|danke|dankeschön|danke dir|vielen dank|merci|gute nacht)(?: (?:sehr|schön|very much|so much|a lot|gleed|mate|all|then))?$/;

/** "undo", "cancel", "help", thanks, a greeting: short, whole messages. */
function command(context: Context, said: string): Outcome | null {
  const plain = said.toLowerCase().replace(/[.!?\s]+$/, "");
  if (UNDO.has(plain)) {
    const { undo } = context.state;
    return undo
      ? { draft: { topic: context.state.topic ?? "help", headline: text("records.undone") }, writes: undo.writes, state: { undo: undefined } }
      : { draft: { topic: context.state.topic ?? "help", headline: text("records.nothing-to-undo") } };
  }
  if (CANCEL.has(plain)) {
    const open = context.state.tree ?? context.state.pending;
    return { draft: { topic: "help", headline: text(open ? "cancelled" : "nothing-to-cancel") }, state: { tree: undefined, pending: undefined } };
  }
  if (THANKS.test(plain)) return { draft: { topic: "help", headline: text("thanks") } };
  if (HELP.has(plain)) return helpOutcome(context);
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
  const deletion = deleteAnswered(context);
  if (deletion) return pressed(context, deletion);
  const reminder = short ? reminderAnswered(context) : null;
  if (reminder) return reminder;
  const lighting = lightingSaid(context);
  if (lighting) return pressed(context, lighting);
  const isNew = newHeaterAnswered(context);
  if (isNew) return isNew;
  const trouble = tree?.waiting ? context.knowledge.troubles.get(tree.trouble) : undefined;
  const sign = tree?.waiting ? trouble?.signs[tree.waiting] : undefined;
  const finished = tree && !tree.waiting ? context.knowledge.troubles.get(tree.trouble) : undefined;
  if (finished && context.text.length <= 40 && !/\d/.test(context.text) && readYesNo(context.said)) return troubleOutcome(context, finished);
  if (!tree?.waiting || !trouble || !sign || !short || WANTS.test(context.said)) return null;
  const said = hear(context).signs(trouble);
  const given = said[tree.waiting];
  const routed = route(context.said, context.language);
  const sure = routed.verdict === "sure";
  const [first] = routed.ranked;
  // a new question of its own outranks an answer that was only guessed at
  if (given === undefined) {
    // what was said may answer another of the tree's questions; a mere hint is no answer
    const others = Object.values(said).some((answer) => !(isGraded(answer) && answer.open));
    // "how thick should the brick be?" is no sign of anything, however many of its words are
    if (WH.test(context.said) && !sure && first?.topic !== trouble.id) return null;
    if (anotherTrouble(context.said, routed, trouble, 4)) return null;
    const ownWay = sure && (ASKS.test(context.said) || anotherTrouble(context.said, routed, trouble) || (first !== undefined && topicFacts(first.topic).group !== "trouble"));
    return others && !ownWay ? troubleOutcome(context, trouble, said) : null;
  }
  if (ASKS.test(context.said) && (sure || first?.topic !== trouble.id)) return null;
  // beside a surely understood request of another kind, or when the talk has gone elsewhere since, a faint hint is no answer
  const faint = isGraded(given) && Math.max(...Object.values(given.likely)) < 0.6;
  const another = sure && first !== undefined && topicFacts(first.topic).group !== "trouble";
  // an emergency for one
  const elsewhere = context.state.topic !== tree.trouble;
  if ((another || elsewhere) && (faint || byExamplesAlone(context, trouble, tree.waiting))) return null;
  if (anotherTrouble(context.said, routed, trouble)) return null;
  return troubleOutcome(context, trouble, said);
}

/** Examples find something in anything: beside a surely understood request of its own, a reply that only they read is none. */
function byExamplesAlone(context: Context, trouble: Trouble, asked: string): boolean {
  const { said: _, ...rulesAlone } = trouble.signs[asked] as Sign;
  return hear(context).signs({ ...trouble, signs: { ...trouble.signs, [asked]: rulesAlone } })[asked] === undefined;
}

/** Words that nothing at all could be made of while a question stands open: the question once more, then taken as "I don't know". */
function unread(context: Context): Outcome | null {
  const { tree } = context.state;
  const trouble = tree?.waiting ? context.knowledge.troubles.get(tree.trouble) : undefined;
  // the talk has gone elsewhere since, to an emergency for one
  if (!tree?.waiting || !trouble || context.state.topic !== tree.trouble || context.text.length > 120 || ASKS.test(context.said) || WANTS.test(context.said)) return null;
  return askAgain(context, trouble) ?? troubleOutcome(context, trouble, { [tree.waiting]: null });
}

/** What nobody answers a question with. */
const WANTS = /^\s*(?:please |bitte )?(?:show|list|print|explain|remind|walk me|delete|zeig\w*|erklär\w*|erinner\w*|führ mich|lösch\w*|(?:log|notier\w*):)(?!\p{L})/iu;

/** A question of the person's own, with or without its mark; "when it rains" is an answer. */
const ASKS = /\?\s*$|^\s*(?:(?:can|could|may|should|shall|must|do|does|how|what|why|who|kann|darf|soll|sollte|muss|wie|was|warum|wieso|wer|brauche?)|(?:when|where|which|is|are|wann|wo|welche[rs]?) (?:can|do|does|should|will|must|may|is|are|it|there|soll|darf|kann|muss|ist|sind))\b.*\s\S/is;

const WH = /^\s*(?:how|what|who|which|wie|was|wer|welche[rs]?)(?!\p{L}| if| wenn)(?=.*\s\S)/iu;

/** A whole sentence on a trouble that lies far from the open one is a new matter, though a word of it fits an answer. */
function anotherTrouble(said: string, { verdict, ranked }: Route, { id, near }: Trouble, least_words = 7): boolean {
  if (said.split(/\s+/).length < least_words || readYesNo(said)) return false;
  const [first] = ranked;
  return verdict === "sure" && first !== undefined && first.score > 0.97 && topicFacts(first.topic).group === "trouble" && first.topic !== id && !near.includes(first.topic);
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
  const happened = guideWords(said.toLowerCase()) ?? germanGuideWords(said);
  if (happened === "take-over") return takeOver(context, guide);
  if (happened) return guideEvent(context, guide, happened);
  const { report } = hear(context);
  if (!report) return null;
  // a report is short; a long message with a topic of its own is answered as that
  const routed = route(context.said, context.language);
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
  const routed = route(context.said, context.language);
  const [first, second] = routed.ranked;
  const nearest = routed.ranked.map(({ topic }) => topic).filter((topic) => topic !== "out-of-scope");
  if (SAFE.test(plain) && !["what-to-burn", "children-and-clearance"].includes(first?.topic ?? "")) return notSafeOutcome();
  const elsewhere = /\?/.test(context.text) && routed.verdict === "sure" && first !== undefined && first.score > 0.85 && !NEAR_CLOSING.has(first.topic) && topicFacts(first.topic).group !== "trouble";
  const spoken = context.state.bed !== undefined && heard.report !== null && context.text.length <= 160 && !elsewhere;
  if (spoken || closing(heard, first?.topic, routed.verdict === "sure")) return closeDownOutcome(context, heard.report);
  const follow = followUp(context, plain, heard);
  if (follow) return follow;
  const extra = extraTopic(context.knowledge, context.said);
  const surely = routed.verdict === "sure" && first !== undefined;
  // what can hurt someone keeps its own answer, whatever words a new file claims; the other is offered beside it
  const careful = surely && topicFacts(first.topic).careful === true;
  if (extra && (extra.strong ? !careful : !surely)) return troubleOutcome(context, extra.trouble, heard.signs(extra.trouble));
  const figured = byFigures(context.text, heard);
  if (figured) return onTopic(context, figured, heard);
  const language = guessLanguage(context.said);
  // a few words between two topics, while a question stands open, are more likely a reply that was not understood
  const between = routed.verdict === "two" && context.said.length <= 40;
  if (routed.verdict === "out-of-scope" || routed.verdict === "unsure" || between) {
    const again = language === "en" || language === "de" ? unread(context) : null;
    if (again) return again;
    const more = moreOfHowto(context);
    if (more) return onTopic(context, more, heard);
  }
  if (routed.verdict === "out-of-scope") return outOfScopeOutcome(context, language !== "en" && language !== "other" && language !== "de" ? language : null);
  if (routed.verdict === "unsure" && MAY_BURN.test(context.said) && nearest.slice(0, 3).includes("what-to-burn")) return onTopic(context, "what-to-burn", heard);
  if (routed.verdict === "unsure" && nearest.length > 0) return unsureOutcome(context, nearest);
  if (routed.verdict === "two" && first && second) return twoOutcome(context, first.topic, second.topic);
  const outcome = onTopic(context, first?.topic ?? "help", heard);
  if (extra?.strong) return { ...outcome, draft: { ...outcome.draft, also: [extra.trouble.id], blocks: [...(outcome.draft.blocks ?? []), { kind: "choices", cautions: [], choices: [{ id: `topic:${extra.trouble.id}`, label: text(`topic.${extra.trouble.id}`) }] }] } };
  return routed.second ? { ...outcome, draft: { ...outcome.draft, also: [routed.second] } } : outcome;
}

/** "can I burn old letters?" */
const MAY_BURN = /^\W*(?:can|may|could|should|kann|darf|soll) (?:i|we|you|one|ich|wir|man)\b.*\b(?:burn|verbrennen|verheizen|verfeuern)\b/i;

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
  const opens = /^(and|what (about|if|at|with|when|for)|how about|no,|no |sorry|i mean|but if|if|or)\b/.test(plain);
  const says = heard.figures.length > 0 || heard.species !== undefined;
  if (!opens || !says) return null;
  if (last.topic === "load-size") return onTopic(context, "load-size", { ...heard, load: { ...(last.inputs as object), ...heard.load } });
  const figures = heard.figures.length > 0 ? heard.figures : [];
  return onTopic(context, last.topic, { ...heard, figures });
}
