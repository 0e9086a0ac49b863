/** Pictures of the album sent back: the newest, one by its number, the oldest and the newest of a spot side by side; one deleted, asked for once. */
import { ask, type Block, type Choice, say, type Text, text, verbatim } from "../../answer.ts";
import { PHOTO } from "../../pictures/photo-data.ts";
import type { AlbumEntry } from "../../records/types.ts";
import { blocks, type Context, type Outcome } from "../context.ts";
import { readAlbumRequest, type Which } from "../reading/read-album.ts";
import { sameSpot, type What } from "../reading/read-picture.ts";
import { readYesNo } from "../reading/yes-no.ts";

const CAUTION = "not-safe-by-chat";
/** Pictures in one answer. */
const MOST = 3;
const DAY_MS = 86_400_000;
const ENDINGS: Readonly<Record<string, string>> = { "image/jpeg": "jpg", "image/png": "png", "image/webp": "webp" };

/** A picture with the number it is spoken of by: the newest is 1. */
interface Numbered {
  readonly number: number;
  readonly entry: AlbumEntry;
}
const albumOf = ({ snapshot }: Context): Numbered[] => (snapshot.album ?? []).map((entry, at) => ({ number: at + 1, entry }));
const ofKind = (album: readonly Numbered[], what: What | undefined): readonly Numbered[] => (what ? album.filter(({ entry }) => entry.what === what) : album);

const dateOf = (entry: AlbumEntry): Text => text("picture.date", { date: { at_ms: entry.at_ms, show: "date" } });
const widthOf = (entry: AlbumEntry): Text => (entry.width_mm === undefined ? verbatim("–") : text("picture.mm", { mm: entry.width_mm }));
const nameOf = ({ number, entry }: Numbered): Text => text("picture.name", { number, what: text(`picture.what.${entry.what}`), date: dateOf(entry) });

const altOf = (one: Numbered): Text => {
  const { width_mm, words } = one.entry;
  return text(words ? "picture.alt-words" : "picture.alt", {
    number: one.number,
    what: text(`picture.what.${one.entry.what}`),
    date: dateOf(one.entry),
    wide: width_mm === undefined ? verbatim("") : text("picture.alt-wide", { width: widthOf(one.entry) }),
    ...(words ? { words: verbatim(words) } : {}),
  });
};

/** The photograph, as the adapters fetch it when it is shown; it never stands in an answer that is kept. */
function photo(context: Context, one: Numbered): Block {
  const { entry } = one;
  const day = Temporal.Instant.fromEpochMilliseconds(entry.at_ms).toZonedDateTimeISO(context.reader.timezone).toPlainDate().toString();
  const clock = Temporal.Instant.fromEpochMilliseconds(entry.at_ms).toZonedDateTimeISO(context.reader.timezone).toPlainTime().toString({ smallestUnit: "second" }).replaceAll(":", "");
  const name = `${entry.what === "other" ? "heater" : entry.what}-${day}-${clock}.${ENDINGS[entry.media_type] ?? "jpg"}`;
  return { kind: "picture", cautions: [], picture: { chart: PHOTO, data: { picture_id: entry.id, person_id: context.snapshot.person.id, name }, alt: altOf(one) } };
}

/** Before an open question of a tree: "show picture 3" is no width of 3 mm. Null when it is about something else. */
export function albumSaid(context: Context): Outcome | null {
  const plain = context.text.toLowerCase().replace(/[?.!\s]+$/, "").replace(/\s+/g, " ").trim();
  const request = readAlbumRequest(plain);
  if (!request) return answered(context, plain);
  if (!isAlone(context)) return sentence(context, text("picture.alone"));
  const album = albumOf(context);
  if (album.length === 0) return { draft: { topic: "my-data", headline: text("picture.none"), blocks: [say(text("picture.how"))] } };
  switch (request.wants) {
    case "list":
      return listed(context, request.what, 0);
    case "compare":
      return compared(context, request.what ?? "crack", request.spot);
    case "delete-all":
      return sentence(context, text("picture.one-by-one"));
    case "one":
      return withOne(context, request.which, request.what, (one) => shownOne(context, one));
    case "delete":
      return withOne(context, request.which, undefined, (one) => deleteAsked(context, one));
    case "width":
      return withOne(context, request.which, undefined, (one) => widthNoted(context, one, request.width_mm));
  }
}

/** What stands in a group's room is seen by everybody there, unless it is shown to one person alone. */
const isAlone = ({ message: { place } }: Context): boolean => place.kind === "private" || place.whispers === true;
const sentence = (_: Context, headline: Text): Outcome => ({ draft: { topic: "my-data", headline } });

/** A bare number while the album is being looked at; yes or no to a deletion that was asked about. */
function answered(context: Context, plain: string): Outcome | null {
  const { pending, topic } = context.state;
  if (topic !== "my-data" || !isAlone(context)) return null;
  if (pending?.id === "album") {
    const number = /^#?(\d{1,3})$/.exec(plain)?.[1];
    return number === undefined ? null : withOne(context, Number(number), undefined, (one) => shownOne(context, one));
  }
  if (pending?.id !== "album-delete") return null;
  const yes = readYesNo(context.said);
  return yes === "yes" ? deleted(context, String(pending.data.picture_id)) : yes === "no" ? kept() : null;
}

function withOne(context: Context, which: Which, what: What | undefined, then: (one: Numbered) => Outcome): Outcome {
  const album = albumOf(context);
  const kind = ofKind(album, what);
  const one = which === "newest" ? kind[0] : which === "oldest" ? kind.at(-1) : album[which - 1];
  if (one) return then(one);
  return typeof which === "number" ? sentence(context, text("picture.no-such", { number: which, pictures: album.length })) : noneOf(what ?? "other");
}

const noneOf = (what: What): Outcome => ({ draft: { topic: "my-data", headline: text(`picture.none-of.${what}`), blocks: [say(text("picture.how"))] } });
const choice = (id: string, label: Text): Choice => ({ id: `album:${id}`, label });
const looking = (context: Context): NonNullable<Outcome["state"]> => ({ pending: { id: "album", data: {}, at_ms: context.now_ms } });

function listed(context: Context, what: What | undefined, from: number): Outcome {
  const album = ofKind(albumOf(context), what);
  if (album.length === 0) return what ? noneOf(what) : sentence(context, text("picture.none"));
  const now = album.slice(from, from + MOST);
  const rest = album.filter((one) => !now.includes(one));
  const kinds = (["crack", "glass", "soot"] as const).filter((kind) => ofKind(album, kind).length >= 2);
  const choices: Choice[] = [
    ...(album.length > from + MOST ? [choice(`from:${what ?? "all"}:${from + MOST}`, text("picture.next", { pictures: Math.min(MOST, album.length - from - MOST) }))] : []),
    ...kinds.map((kind) => choice(`compare:${kind}`, text(`picture.compare.${kind}`))),
  ];
  return {
    draft: {
      topic: "my-data",
      headline: text(what ? `picture.album-of.${what}` : "picture.album", { pictures: album.length }),
      blocks: blocks(
        ...now.map((one) => photo(context, one)),
        rest.length > 0 && table(rest, text("picture.rest")),
        say(text("picture.pick", { number: now[0]?.number ?? 1 })),
        choices.length > 0 && { kind: "choices", cautions: [], choices },
      ),
    },
    state: looking(context),
  };
}

const table = (list: readonly Numbered[], caption?: Text): Block => ({
  kind: "table", cautions: [], ...(caption ? { caption } : {}),
  columns: ["number", "date", "what", "width", "words"].map((id) => text(`picture.column.${id}`)),
  rows: list.map(({ number, entry }) => [verbatim(String(number)), dateOf(entry), text(`picture.what.${entry.what}`), widthOf(entry), verbatim(entry.words ?? "–")]),
});

const shownOne = (context: Context, one: Numbered): Outcome => ({
  draft: {
    topic: "my-data", cautions: [CAUTION],
    headline: nameOf(one),
    blocks: blocks(
      photo(context, one),
      say(text("picture.no-judging"), CAUTION),
      one.entry.what === "crack" && one.entry.width_mm === undefined && say(text("picture.width-missing", { number: one.number })),
      { kind: "choices", cautions: [], choices: [...(hasTwo(context, one.entry.what) ? [choice(`compare:${one.entry.what}`, text(`picture.compare.${one.entry.what}`))] : []), choice(`delete-ask:${one.entry.id}`, text("picture.delete-this"))] },
    ),
  },
  state: looking(context),
});
const hasTwo = (context: Context, what: What): boolean => what !== "other" && ofKind(albumOf(context), what).length >= 2;

/** Namings of spots among pictures of one kind, newest first, each once. */
const spotsIn = (pictures: readonly Numbered[]): Numbered[] =>
  pictures.reduce<Numbered[]>((spots, one) => {
    const { spot } = one.entry;
    return spot === undefined || spots.some(({ entry }) => sameSpot(entry.spot ?? "", spot)) ? spots : [...spots, one];
  }, []);

function compared(context: Context, what: What, spot: string | undefined): Outcome {
  const kind = ofKind(albumOf(context), what);
  if (kind.length === 0) return noneOf(what);
  const spots = spotsIn(kind);
  if (spot === undefined && spots.length > 1) {
    return { draft: { topic: "my-data", headline: text("picture.which-spot"), blocks: [{ kind: "choices", cautions: [], choices: spots.slice(0, 8).map(({ entry }) => choice(`spot:${entry.id}`, verbatim(entry.spot ?? ""))) }] } };
  }
  const named = spot === undefined ? kind : kind.filter(({ entry }) => entry.spot !== undefined && sameSpot(entry.spot, spot));
  const [newest, oldest] = [named[0], named.at(-1)];
  if (!newest || !oldest) return { draft: { topic: "my-data", headline: text("picture.none-there", { spot: verbatim(spot ?? "") }), blocks: [table(kind)] }, state: looking(context) };
  if (newest === oldest) return { draft: { topic: "my-data", cautions: [CAUTION], headline: text("picture.only-one", { date: dateOf(newest.entry) }), blocks: [photo(context, newest), say(text("picture.no-judging"), CAUTION), say(text("picture.again-later"))] } };
  const days = Math.round((newest.entry.at_ms - oldest.entry.at_ms) / DAY_MS);
  const [before, after] = [oldest.entry.width_mm, newest.entry.width_mm];
  const grew = before !== undefined && after !== undefined ? Math.round((after - before) * 100) / 100 : null;
  const cautions = what === "crack" ? [CAUTION, "cracked"] : [CAUTION];
  return {
    draft: {
      topic: "my-data", cautions,
      headline: text("picture.compared", { what: text(`picture.what.${what}`), from: dateOf(oldest.entry), to: dateOf(newest.entry) }),
      blocks: blocks(
        table([oldest, newest]),
        grew !== null && say(text(grew > 0 ? "picture.grew" : grew < 0 ? "picture.shrank" : "picture.same-width", { mm: Math.abs(grew), days })),
        what === "crack" && grew === null && say(text("picture.widths-missing")),
        what === "crack" && grew !== null && grew > 0 && say(text("picture.grew-then"), "cracked"),
        photo(context, oldest),
        photo(context, newest),
        say(text(spot === undefined && spots.length === 0 && named.length > 1 ? "picture.your-eye-spot" : "picture.your-eye"), CAUTION),
        what !== "other" && { kind: "choices", cautions: [], choices: [{ id: `topic:${{ crack: "cracks", glass: "black-glass", soot: "heavy-soot" }[what]}`, label: text(`picture.talk.${what}`) }] },
      ),
    },
    state: looking(context),
  };
}

function widthNoted(context: Context, { number, entry }: Numbered, width_mm: number): Outcome {
  if (entry.person_id !== context.snapshot.person.id) return sentence(context, text("picture.not-yours", { number }));
  return {
    draft: { topic: "my-data", headline: text("picture.width-noted", { width: text("picture.mm", { mm: width_mm }), date: dateOf(entry) }) },
    writes: [{ write: "picture-width", picture_id: entry.id, width_mm }],
    state: looking(context),
  };
}

function deleteAsked(context: Context, one: Numbered): Outcome {
  const { entry, number } = one;
  if (entry.person_id !== context.snapshot.person.id) return sentence(context, text("picture.not-yours", { number }));
  return {
    draft: {
      topic: "my-data", headline: text("picture.delete-ask", { name: nameOf(one) }),
      blocks: [ask("delete-picture", text("picture.delete-what"), [choice(`delete:${entry.id}`, text("picture.delete-yes")), choice("keep", text("picture.delete-no"))])],
    },
    state: { pending: { id: "album-delete", data: { picture_id: entry.id }, at_ms: context.now_ms } },
  };
}

function deleted(context: Context, id: string): Outcome {
  const one = albumOf(context).find(({ entry }) => entry.id === id);
  if (!one) return sentence(context, text("picture.gone"));
  if (one.entry.person_id !== context.snapshot.person.id) return sentence(context, text("picture.not-yours", { number: one.number }));
  return {
    draft: { topic: "my-data", headline: text("picture.deleted", { what: text(`picture.what.${one.entry.what}`), date: dateOf(one.entry) }) },
    writes: [{ write: "delete-picture", picture_id: id }],
    state: { pending: undefined, undo: undefined },
  };
}
const kept = (): Outcome => ({ draft: { topic: "my-data", headline: text("picture.stays") }, state: { pending: undefined } });

/** `from:<kind or all>:<n>`, `compare:<kind>`, `spot:<id of a picture of it>`, `delete-ask:<id>`, `delete:<id>`, `keep` */
export function albumChoice(context: Context, rest: string): Outcome | null {
  if (!isAlone(context)) return sentence(context, text("picture.alone"));
  const [act = "", ...more] = rest.split(":");
  const given = more.join(":");
  const one = albumOf(context).find(({ entry }) => entry.id === given);
  switch (act) {
    case "from":
      return listed(context, more[0] === "all" ? undefined : (more[0] as What), Math.max(0, Number(more[1]) || 0));
    case "compare":
      return compared(context, given as What, undefined);
    case "spot":
      return one ? compared(context, one.entry.what, one.entry.spot) : sentence(context, text("picture.gone"));
    case "delete-ask":
      return one ? deleteAsked(context, one) : sentence(context, text("picture.gone"));
    case "delete":
      return deleted(context, given);
    case "keep":
      return kept();
    default:
      return null;
  }
}
