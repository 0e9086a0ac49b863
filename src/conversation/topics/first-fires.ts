/** First fires of a new heater and after a long rest: where the heater stands on its ladder, and what was seen after each fire. */
import { ask, say, steps, text, verbatim, type Block, type Text } from "../../answer.ts";
import { ladderOf, SEEN, seenIn, type Ladder, type Seen } from "../../firing/ladder.ts";
import { q } from "../../quantities.ts";
import type { Fire } from "../../records/types.ts";
import { blocks, type Context, type Outcome } from "../context.ts";

const CAUTION = "first-fires";
/** "It was in use meanwhile" is believed for as long as a rest would count. */
const IN_USE_MS = 60 * 86_400_000;

/** Null when the heater is neither new nor rested, or when the person said that it was in use all the while. */
export function ladderNow(context: Context): Ladder | null {
  const firing = context.knowledge.firings.get("first-fires");
  const inUse = context.state.asked?.["in-use"];
  if (!firing) return null;
  const ladder = ladderOf({ firing, heater: context.heater?.facts ?? {}, fires: context.snapshot.fires, max_load_kg: context.limits.max_load_kg, now_ms: context.now_ms, timezone: context.reader.timezone });
  if (ladder?.occasion === "rest" && inUse !== undefined && context.now_ms - inUse < IN_USE_MS) return null;
  return ladder;
}

export interface RungLoad {
  readonly low_kg: number;
  /** 0: no fire until the builder has spoken */
  readonly high_kg: number;
  readonly ladder: Ladder;
}

/** What the ladder leaves of the next load; null when it asks for nothing less than usual. */
export function rungLoad(context: Context): RungLoad | null {
  const ladder = ladderNow(context);
  const { max_load_kg } = context.limits;
  if (!ladder || max_load_kg === null) return null;
  if (ladder.stopped) return { low_kg: 0, high_kg: 0, ladder };
  if (!ladder.rung) return null;
  const down = (kg: number): number => Math.floor(kg * 10 + 1e-9) / 10;
  return { low_kg: down(ladder.rung.share_low * max_load_kg), high_kg: down(ladder.rung.share_high * max_load_kg), ladder };
}

const rungText = (ladder: Ladder): Text => text(`firings.first-fires.ladders.${ladder.occasion}.${ladder.rung?.id ?? ""}.says`);

/** Said when a fire on the ladder is begun or its load asked for. */
export function ladderBlocks(context: Context): Block[] {
  const ladder = ladderNow(context);
  if (!ladder) return [];
  if (ladder.stopped) return [say(text("first.stopped"), CAUTION)];
  if (!ladder.rung) return [];
  return [
    say(text("first.rung", {
      day: ladder.day_of_rung, of: ladder.rung.days, says: rungText(ladder),
      low: q(ladder.rung.share_low * 100, "pct"), high: q(ladder.rung.share_high * 100, "pct"), same: ladder.rung.share_low === ladder.rung.share_high ? "yes" : "no",
    }), CAUTION),
    say(text("firings.first-fires.stop_rule"), CAUTION),
  ];
}

/** "Show my first fires": day by day, so that a builder can read from it how far the heater has dried. */
export function firstFiresOutcome(context: Context): Outcome {
  const ladder = ladderNow(context);
  if (!ladder) return { draft: { topic: "first-fires", cautions: [CAUTION], headline: text("first.none"), blocks: [say(text("first.none-why"), CAUTION)] } };
  return {
    draft: {
      topic: "first-fires",
      cautions: [CAUTION],
      headline: headline(context, ladder),
      blocks: blocks(
        ladder.days.length > 0 && {
          kind: "table", cautions: [], caption: text(`first.caption.${ladder.occasion}`),
          columns: ["day", "fires", "load", "share", "seen"].map((id) => text(`first.column.${id}`)),
          rows: ladder.days.map((day) => [
            text("first.date", { day: { at_ms: Date.parse(`${day.date}T12:00:00Z`), show: "day" } }),
            verbatim(String(day.fires)),
            text("plain", { value: q(day.load_kg, "kg", { digits: 1 }) }),
            day.share === null ? verbatim("–") : text("plain", { value: q(day.share * 100, "pct") }),
            text(day.seen ? `first.seen.${day.seen}` : day.counted ? "first.seen.unsaid" : "first.seen.too-small"),
          ]),
        },
        ...ladderBlocks(context),
        say(text("first.open-between"), CAUTION),
        ladder.stopped && { kind: "choices", cautions: [], choices: [{ id: "first:builder-ok", label: text("first.builder-ok") }] },
      ),
    },
  };
}

function headline(context: Context, ladder: Ladder): Text {
  if (ladder.stopped) return text("first.stopped");
  if (!ladder.rung) return text("first.done");
  const load = rungLoad(context);
  return load ? text("first.next", { load: q(load.high_kg, "kg", { digits: 1 }) }) : text("first.next-share", { share: q(ladder.rung.share_high * 100, "pct") });
}

/** After a first fire: what was seen decides whether tomorrow is a step up. */
export function seenQuestion(context: Context): Block | null {
  const ladder = ladderNow(context);
  return ladder?.rung ? ask("first", text("first.ask"), (Object.keys(SEEN) as Seen[]).map((id) => ({ id: `first:${id}`, label: text(`first.choice.${id}`) })), CAUTION) : null;
}

/** `first:dry|damp|cracks|stop`, `first:builder-ok`, `first:in-use` */
export function firstChoice(context: Context, id: string): Outcome | null {
  if (id === "in-use") {
    const asked = { ...context.state.asked, "in-use": context.now_ms };
    return { draft: { topic: "first-fires", cautions: [CAUTION], headline: text("first.in-use"), blocks: [{ kind: "choices", cautions: [], choices: [{ id: "topic:light-fire", label: text("topic.light-fire") }] }] }, state: { asked } };
  }
  const last = context.snapshot.fires[0];
  if (!last || !(Object.hasOwn(SEEN, id) || id === "builder-ok")) return null;
  const seen: Seen = id === "builder-ok" ? "damp" : (id as Seen);
  const fire: Fire = { ...last, facts: { ...last.facts, note: noteWith(last.facts.note, SEEN[seen]) } };
  const after: Context = { ...context, snapshot: { ...context.snapshot, fires: [fire, ...context.snapshot.fires.slice(1)] } };
  return {
    draft: {
      topic: "first-fires",
      cautions: [CAUTION],
      headline: text(id === "builder-ok" ? "first.said.builder-ok" : `first.said.${seen}`),
      blocks: blocks(
        seen === "stop" && say(text("firings.first-fires.stop_rule"), CAUTION),
        seen === "stop" && say(text("first.call"), CAUTION),
        seen !== "stop" && steps([text("first.open-between")], { ordered: false, cautions: [CAUTION] }),
        ...(seen === "stop" ? [] : ladderBlocks(after).slice(0, 1)),
      ),
    },
    writes: [{ write: "fire", fire }],
  };
}

/** The person's own words stay; what was seen before is replaced. */
function noteWith(note: string | undefined, seen: string): string {
  const before = seenIn(note);
  const own = before ? note?.replace(SEEN[before], "").replace(/^[;\s]+|[;\s]+$/g, "") : note;
  return own ? `${own}; ${seen}`.slice(-1000) : seen;
}
