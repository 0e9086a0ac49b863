/** Pictures people send: kept in a dated album of the heater without their metadata, and never judged. */
import { say, text, type Block } from "../../answer.ts";
import { cleanPicture } from "../../album/clean.ts";
import type { AlbumEntry } from "../../records/types.ts";
import type { TopicId } from "../../topics.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { hear } from "../hear.ts";
import { shows, spotIn, widthIn } from "../reading/read-picture.ts";
import { troubleOutcome } from "./trouble.ts";

const CAUTION = "not-safe-by-chat";
const MOST_WORDS = 300;

const TROUBLE_OF: Readonly<Record<AlbumEntry["what"], TopicId | null>> = { crack: "cracks", glass: "black-glass", soot: "heavy-soot", other: null };

/** What it shows, by the words beside it; without words, by what was talked about just before. */
function whatIn(context: Context): AlbumEntry["what"] {
  const before = (Object.keys(TROUBLE_OF) as AlbumEntry["what"][]).find((what) => TROUBLE_OF[what] !== null && TROUBLE_OF[what] === context.state.topic);
  return shows(context.text) ?? shows(context.said) ?? (context.text.trim() === "" ? before : undefined) ?? "other";
}

/** Null when no picture came with the message. */
export function pictureOutcome(context: Context, words: (context: Context) => Outcome): Outcome | null {
  const { picture, picture_missing, place } = context.message;
  if (!picture) return picture_missing ? refused(context, picture_missing, words) : null;
  if (place.kind === "group") return refused(context, "group", words);
  const cleaned = cleanPicture(picture.bytes);
  if (!cleaned.ok) return refused(context, cleaned.why, words);
  const what = whatIn(context);
  const beside = context.said.trim().slice(0, MOST_WORDS);
  const spot = spotIn(beside);
  const width_mm = what === "crack" ? widthIn(context.text) : undefined;
  const entry: AlbumEntry = { id: context.id("picture"), person_id: context.snapshot.person.id, heater_id: context.heater?.id ?? null, at_ms: context.now_ms, what, media_type: cleaned.media_type, ...(beside ? { words: beside } : {}), ...(spot ? { spot } : {}), ...(width_mm === undefined ? {} : { width_mm }) };
  const about = TROUBLE_OF[what];
  const trouble = about ? context.knowledge.troubles.get(about) : undefined;
  const walked = trouble ? troubleOutcome(context, trouble, hear(context).signs(trouble)) : null;
  // a tree that found danger in the words goes first and alone
  if (walked && ("ready" in walked || walked.draft.emergency)) return { ...walked, writes: [...(walked.writes ?? []), { write: "picture", picture: entry, bytes: cleaned.bytes }] };
  const earlier = (context.snapshot.album ?? []).filter((one) => one.what === what && what !== "other").at(0);
  const shown: (Block | null | false | undefined)[] = [
    say(text("picture.no-judging"), CAUTION),
    what === "crack" && (width_mm === undefined ? say(text("picture.ruler"), CAUTION) : say(text("picture.width-kept", { width: text("picture.mm", { mm: width_mm }) }))),
    earlier && say(text("picture.earlier", { date: { at_ms: earlier.at_ms, show: "date" } })),
  ];
  return {
    draft: {
      topic: about ?? "my-data",
      cautions: [CAUTION, ...(walked?.draft.cautions ?? [])],
      headline: text(`picture.kept.${what}`, { date: { at_ms: context.now_ms, show: "date" } }),
      blocks: blocks(
        ...shown,
        ...(walked?.draft.blocks ?? []),
        !walked && { kind: "choices", cautions: [], choices: (["cracks", "black-glass", "heavy-soot"] as const).map((topic) => ({ id: `topic:${topic}`, label: text(`topic.${topic}`) })) },
        say(text("picture.stripped")),
      ),
    },
    writes: [...(walked?.writes ?? []), { write: "picture", picture: entry, bytes: cleaned.bytes }],
    state: { ...walked?.state, undo: { writes: [{ write: "delete-picture", picture_id: entry.id }], at_ms: context.now_ms } },
  };
}

/** The picture is not kept, and why; what was written beside it is answered all the same. */
function refused(context: Context, why: string, words: (context: Context) => Outcome): Outcome {
  const headline = text(`picture.refused.${why}`);
  if (context.said.trim() === "") return { draft: { topic: "my-data", cautions: [CAUTION], headline, blocks: [say(text("picture.no-judging"), CAUTION)] } };
  const answered = words(context);
  const { draft } = answered;
  if (answered.ready || draft.emergency) return answered;
  const rest = draft.blocks ?? [];
  return { ...answered, draft: draft.live ? { ...draft, blocks: [say(headline), ...rest] } : { ...draft, headline, blocks: [say(draft.headline), ...rest] } };
}

/** How long a picture of a crack waits for the width that was asked for with it. */
const WAITS_MS = 2 * 3_600_000;

/** A width said after a picture of a crack goes with the picture, whatever else it answers. */
export function widthAfter(context: Context, outcome: Outcome): Outcome {
  const { message, state, snapshot, now_ms } = context;
  if (message.text === undefined || message.picture || state.topic !== "cracks" || outcome.ready || outcome.draft.emergency || outcome.draft.topic !== "cracks") return outcome;
  const latest = (snapshot.album ?? []).find(({ what, person_id }) => what === "crack" && person_id === snapshot.person.id);
  if (!latest || latest.width_mm !== undefined || now_ms - latest.at_ms > WAITS_MS) return outcome;
  if (state.tree?.waiting !== "width" && !/\b(?:wide|width|widest|breit|breite)\b/i.test(context.said)) return outcome;
  const width_mm = widthIn(context.text);
  if (width_mm === undefined) return outcome;
  const note = say(text("picture.width-noted", { width: text("picture.mm", { mm: width_mm }), date: text("picture.date", { date: { at_ms: latest.at_ms, show: "date" } }) }));
  return { ...outcome, draft: { ...outcome.draft, blocks: [note, ...(outcome.draft.blocks ?? [])] }, writes: [...(outcome.writes ?? []), { write: "picture-width", picture_id: latest.id, width_mm }] };
}
