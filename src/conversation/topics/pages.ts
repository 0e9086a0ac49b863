/** Pages to print, keep or send on: for guests, for the season's end, for whoever is called in. They are shown to the person and to nobody else. */
import { say, text, verbatim, type Block, type Choice, type Document, type Text } from "../../answer.ts";
import { emergencyNumbers } from "../../emergency/index.ts";
import type { Trouble } from "../../knowledge/schemas.ts";
import type { Message } from "../../message.ts";
import { brief, type BriefFacts } from "../../pages/brief.ts";
import { guestPage } from "../../pages/guest-page.ts";
import { pagePicture } from "../../pictures/page.ts";
import { seasonReport, seasonTable } from "../../pages/season-report.ts";
import type { TopicId } from "../../topics.ts";
import { isGraded, type SignAnswer } from "../../trouble/walk.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { ladderNow } from "./first-fires.ts";
import { handOverChoice } from "./parts.ts";
import { readBack } from "./records.ts";

const GUESTS = /\b(?:page|sheet|card|note|instructions?|print ?out|something to print) (?:i can print |to print )?for (?:my |our |the |a )?(?:guests?|tenants?|sitters?|house ?sitters?|babysitters?|lodgers?|visitors?|renters?)\b|\b(?:guest|tenant|sitter|visitor)s? (?:page|sheet|card|instructions?)\b|\bprint (?:a |the |my )?(?:heater )?page\b/;
const REPORT = /\b(?:season|seasons|winter|winters|year|years|annual|yearly) ?s? (?:report|log|summary) (?:for|to|as)\b|\b(?:season|winter|annual|yearly) report\b|\breport (?:of|on|about|for) (?:the |my |this |last )?(?:season|winter|year|sweep|chimney sweep|insurer|insurance|buyer)\b/;
const BRIEF = /\b(?:brief|summary|message|note|letter|write ?up|facts) (?:i can send |to send )?(?:for|to) (?:my |our |the |a )?(?:chimney )?(sweep|builder|mason|heater mason|ventilation technician|technician)\b|\bwhat (?:do|should|shall|can) i (?:tell|say to|write to|send) (?:my |our |the |a )?(?:chimney )?(sweep|builder|mason|ventilation technician)\b/;

const folded = (words: string | undefined): string => (words ?? "").slice(0, 300).toLowerCase().replace(/[^\p{L}\p{N} ]+/gu, " ").replace(/\s+/g, " ").trim();

/** Looked at before a message is decided, so that the whole season is at hand. */
export const asksForReport = (message: Pick<Message, "text" | "choice">): boolean => message.choice === "page:season" || REPORT.test(folded(message.text));

export function pagesAsked(context: Context): Outcome | null {
  const plain = folded(context.text);
  if (GUESTS.test(plain)) return guestOutcome(context);
  if (REPORT.test(plain)) return seasonOutcome(context);
  const who = BRIEF.exec(plain);
  return who ? briefOutcome(context, receiver(who[1] ?? who[2] ?? "sweep")) : null;
}

/** `page:guests`, `page:season`, `page:brief-sweep|builder|ventilation` */
export function pageChoice(context: Context, id: string): Outcome | null {
  if (id === "guests") return guestOutcome(context);
  if (id === "season") return seasonOutcome(context);
  return id.startsWith("brief-") ? briefOutcome(context, receiver(id.slice(6))) : null;
}

const receiver = (word: string): BriefFacts["to"] => (/technician|ventilation/.test(word) ? "ventilation" : /builder|mason/.test(word) ? "builder" : "sweep");

function guestOutcome(context: Context): Outcome {
  const { heater, limits, snapshot, rules, now_ms } = context;
  const { home, person } = snapshot;
  const basket_kg = home.wood.find((wood) => wood.basket_kg !== undefined)?.basket_kg;
  const missing = [
    ...(limits.max_load_kg === null || limits.guessed ? [text("sharpen.max-load")] : []),
    ...(heater?.facts.shut_off_damper === undefined ? [text("guest.missing.damper")] : []),
    ...(person.facts.country === undefined ? [text("guest.missing.country")] : []),
  ];
  const document = guestPage({
    heater: heater?.facts ?? {}, house: home.house, alarms: home.alarms, limits, rules, now_ms,
    emergency_number: emergencyNumbers(person.facts.country ?? context.settings.country ?? null),
    ...(basket_kg === undefined ? {} : { basket_kg }),
  });
  return {
    draft: {
      topic: "set-heater",
      cautions: ["carbon-monoxide", "over-firing", "close-flue"],
      headline: text("guest.headline"),
      blocks: blocks(
        ladderNow(context)?.rung ? say(text("guest.ladder"), "first-fires") : null,
        { kind: "document", cautions: ["carbon-monoxide", "close-flue"], document },
        { kind: "picture", cautions: ["carbon-monoxide", "close-flue"], picture: pagePicture(document) },
        say(text("guest.fill-in")),
        missing.length > 0 && say(text("guest.missing", { what: missing })),
      ),
    },
  };
}

function troublesOf(context: Context) {
  return (context.state.troubles ?? []).map(({ topic, cause, at_ms }) => {
    const known = context.knowledge.troubles.get(topic);
    return {
      title: known ? text(`troubles.${topic}.title`) : text(`topic.${topic}`), at_ms,
      ...(cause && known?.causes[cause] ? { cause: text(`troubles.${topic}.causes.${cause}.title`) } : {}),
    };
  });
}

function seasonOutcome(context: Context): Outcome {
  const { heater, limits, snapshot, now_ms } = context;
  const fires = context.message.season ?? snapshot.fires;
  if (fires.length === 0) return { draft: { topic: "show-fires", headline: text("fires.none"), blocks: [say(text("fires.how"))] } };
  const { since_sweep_fires, since_sweep_kg } = snapshot.totals;
  const facts = {
    heater: heater?.facts ?? {}, upkeep: heater?.upkeep ?? {}, limits, fires, now_ms, timezone: context.reader.timezone,
    since_sweep: { fires: since_sweep_fires, load_kg: since_sweep_kg }, troubles: troublesOf(context),
  };
  return {
    draft: {
      topic: "show-fires",
      headline: text("season.report-headline", { fires: fires.length }),
      blocks: [
        { kind: "document", cautions: [], document: seasonReport(facts) },
        { kind: "document", cautions: [], document: seasonTable(facts) },
        say(text("season.private")),
      ],
    },
  };
}

export const lastTrouble = (context: Context) => context.state.troubles?.at(-1);

/** The facts of the trouble talked about last, as whoever is called in needs them. */
export function briefDocument(context: Context, to: BriefFacts["to"]): { topic: TopicId; cautions: readonly string[]; document: Document } {
  const { heater, limits, snapshot, now_ms } = context;
  const { since_sweep_fires, since_sweep_kg } = snapshot.totals;
  const last = lastTrouble(context);
  const cautions = last ? (context.knowledge.troubles.get(last.topic)?.cautions ?? []) : [];
  return {
    topic: last?.topic ?? "sweep-due",
    cautions: [...new Set(["not-safe-by-chat", ...cautions])],
    document: brief({
      to, heater: heater?.facts ?? {}, heater_lines: heater ? readBack({ heater: heater.facts }) : [], upkeep: heater?.upkeep ?? {}, alarms: snapshot.home.alarms, limits,
      fires: snapshot.fires, since_sweep: { fires: since_sweep_fires, load_kg: since_sweep_kg }, trouble: troubleOf(context), album: snapshot.album ?? [], now_ms,
    }),
  };
}

function briefOutcome(context: Context, to: BriefFacts["to"]): Outcome {
  const { topic, cautions, document } = briefDocument(context, to);
  return {
    draft: {
      topic, cautions,
      headline: text("brief.headline", { who: text(`calls.${to}.title`) }),
      blocks: [say(text("brief.consent")), { kind: "document", cautions: [], document }, ...blocks(to === "builder" && lastTrouble(context) ? handOverChoice(context) : null), others(to)],
    },
  };
}

const others = (to: BriefFacts["to"]): Block => ({
  kind: "choices",
  cautions: [],
  choices: (["sweep", "builder", "ventilation"] as const).filter((one) => one !== to).map((one): Choice => ({ id: `page:brief-${one}`, label: text("brief.also", { who: text(`calls.${one}.title`) }) })),
});

/** The trouble talked about last: what the person said of it, and the causes as they stood. */
function troubleOf(context: Context): BriefFacts["trouble"] {
  const last = context.state.troubles?.at(-1);
  if (!last) return null;
  const known = context.knowledge.troubles.get(last.topic);
  const tree = context.state.tree?.trouble === last.topic ? context.state.tree : undefined;
  const title = known ? text(`troubles.${last.topic}.title`) : text(`topic.${last.topic}`);
  const cause = last.cause && known?.causes[last.cause] ? [text(`troubles.${last.topic}.causes.${last.cause}.title`)] : [];
  return { title, at_ms: last.at_ms, said: known && tree ? saidOf(known, last.topic, tree.said) : [], causes: cause };
}

function saidOf(trouble: Trouble, topic: TopicId, said: Readonly<Record<string, SignAnswer>>): (readonly [Text, Text])[] {
  return Object.entries(said).flatMap(([id, answer]) => {
    const sign = trouble.signs[id];
    // what was only guessed at from a story is no answer to send on
    if (!sign?.ask || answer === null || isGraded(answer)) return [];
    const picked = sign.answers?.some((one) => one.id === answer);
    const words = picked ? text(`troubles.${topic}.signs.${id}.answers.${answer}.label`) : answer === "yes" || answer === "no" ? text(answer) : verbatim(String(answer));
    return [[text(`troubles.${topic}.signs.${id}.ask`), words] as const];
  });
}
