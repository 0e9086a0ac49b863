/** Pictures people send: kept in a dated album of the heater without their metadata, and never judged. */
import { say, text, verbatim, type Block } from "../../answer.ts";
import { cleanPicture } from "../../album/clean.ts";
import type { AlbumEntry } from "../../records/types.ts";
import type { TopicId } from "../../topics.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { hear } from "../hear.ts";
import { troubleOutcome } from "./trouble.ts";

const CAUTION = "not-safe-by-chat";
const MOST_WORDS = 300;

const TROUBLE_OF: Readonly<Record<AlbumEntry["what"], TopicId | null>> = { crack: "cracks", glass: "black-glass", soot: "heavy-soot", other: null };
const WORDS: readonly (readonly [AlbumEntry["what"], RegExp])[] = [
  ["crack", /\bcrack|\bsplit (?:brick|tile)|\bgap\b|\bhairline|\bjoint/],
  ["glass", /\bglass\b|\bpane\b|\bwindow\b/],
  ["soot", /\bsoot|\btar\b|\bcreosote|\bcleanout|\bflakes\b|\bflue\b|\bchimney\b/],
];

/** What it shows, by the words beside it; without words, by what was talked about just before. */
function whatIn(context: Context): AlbumEntry["what"] {
  const plain = context.text.toLowerCase();
  const said = WORDS.find(([, words]) => words.test(plain))?.[0];
  const before = (Object.keys(TROUBLE_OF) as AlbumEntry["what"][]).find((what) => TROUBLE_OF[what] !== null && TROUBLE_OF[what] === context.state.topic);
  return said ?? (plain.trim() === "" ? before : undefined) ?? "other";
}

/** Null when no picture came with the message. */
export function pictureOutcome(context: Context): Outcome | null {
  const { picture, place } = context.message;
  if (!picture) return null;
  if (place.kind === "group") return refused("group");
  const cleaned = cleanPicture(picture.bytes);
  if (!cleaned.ok) return refused(cleaned.why);
  const what = whatIn(context);
  const words = context.text.trim().slice(0, MOST_WORDS);
  const entry: AlbumEntry = { id: context.id("picture"), person_id: context.snapshot.person.id, heater_id: context.heater?.id ?? null, at_ms: context.now_ms, what, media_type: cleaned.media_type, ...(words ? { words } : {}) };
  const about = TROUBLE_OF[what];
  const trouble = about ? context.knowledge.troubles.get(about) : undefined;
  const walked = trouble ? troubleOutcome(context, trouble, hear(context).signs(trouble)) : null;
  // a tree that found danger in the words goes first and alone
  if (walked && ("ready" in walked || walked.draft.emergency)) return { ...walked, writes: [...(walked.writes ?? []), { write: "picture", picture: entry, bytes: cleaned.bytes }] };
  const earlier = (context.snapshot.album ?? []).filter((one) => one.what === what && what !== "other").at(0);
  const shown: (Block | null | false | undefined)[] = [
    say(text("picture.no-judging"), CAUTION),
    what === "crack" && say(text("picture.ruler"), CAUTION),
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

const refused = (why: string): Outcome => ({ draft: { topic: "my-data", cautions: [CAUTION], headline: text(`picture.refused.${why}`), blocks: [say(text("picture.no-judging"), CAUTION)] } });

const ALBUM = /\b(?:show|list|see) (?:me )?(?:my |our |the )?(?:heater )?(?:album|pictures|photos|photographs)\b|^(?:my )?(?:album|pictures|photos)$/;

export function albumAsked(context: Context, plain: string): Outcome | null {
  if (!ALBUM.test(plain)) return null;
  const album = context.snapshot.album ?? [];
  if (album.length === 0) return { draft: { topic: "my-data", headline: text("picture.none"), blocks: [say(text("picture.how"))] } };
  return {
    draft: {
      topic: "my-data",
      headline: text("picture.album", { pictures: album.length }),
      blocks: [
        {
          kind: "table", cautions: [], columns: ["date", "what", "words"].map((id) => text(`picture.column.${id}`)),
          rows: album.slice(0, 30).map((one) => [text("picture.date", { date: { at_ms: one.at_ms, show: "date" } }), text(`picture.what.${one.what}`), verbatim(one.words ?? "–")]),
        },
        say(text("picture.copy")),
      ],
    },
  };
}
