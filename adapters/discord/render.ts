/** Any `Answer` as Discord messages of Components V2: plain JSON within every limit, cautions first and whole. */
import type { Answer } from "../../src/answer.ts";
import { type DocumentPiece, type Label, labels, type Numbered, type Options, outline, type Piece } from "../outline.ts";
import { chunks, pack, type Part } from "../pack.ts";
import { shorten } from "../plain.ts";
import {
  type ActionRow,
  type Component,
  type DiscordMessage,
  EPHEMERAL,
  IS_COMPONENTS_V2,
  LIMITS,
  type TextDisplay,
  type Upload,
} from "./api.ts";
import { choiceRows, needsWords } from "./choices.ts";
import { customId } from "./custom-id.ts";
import { formRows } from "./modal.ts";
import { bold, bullet, fit, joined, PART, small, TEXT, texts } from "./texts.ts";

export interface DiscordOptions extends Options {
  /** 1 to 80 of A-Z a-z 0-9 _ -: names this answer in the adapter's store when a button is pressed */
  readonly ref: string;
  /** only the person who asked sees it; decided before a reply to an interaction is deferred */
  readonly ephemeral?: boolean;
  /** a button below that shows the answer to everybody in the channel */
  readonly share?: boolean;
  /** a remark below every message of the answer */
  readonly note?: string;
}

/** A bar of this colour stands beside cautions and beside what to do in an emergency; nothing else is coloured. */
const AMBER = 0xc98a1b;
const RED = 0xb3261e;

/** Of each message, one component is left for the "2 of 3" below it, two for the button that shares it. */
const COMPONENTS = LIMITS.components - 3;

/** Below that, so that escaped it stays within the room left beside `TEXT`. */
const MOST_BELOW = 28;

interface Laid extends Part {
  readonly components: readonly Component[];
  readonly upload?: Upload;
}

export function renderDiscord(answer: Answer, options: DiscordOptions): DiscordMessage[] {
  const { pieces, urgent } = outline(answer, options);
  const label = labels(options);
  const now = pieces.slice(0, urgent);
  const cautions = pieces.filter((piece) => piece.kind === "caution");
  const rest = pieces.slice(urgent + cautions.length);
  const parts = [
    ...framed(RED, now, label, true),
    ...framed(AMBER, cautions, label),
    ...rest.flatMap((piece, at) => lay(piece, at, label, options.ref)),
  ];
  const messages = pack(parts, [TEXT, COMPONENTS, LIMITS.files]);
  const shareLabel = options.share ? label("show-here") : "";
  return messages.map((page, at) => {
    const where = messages.length > 1 ? label("part", { part: at + 1, parts: messages.length }) : "";
    return message(page, options, [where, options.note ?? ""].filter(Boolean).join(" · "), at === messages.length - 1 ? shareLabel : "");
  });
}

function message(page: readonly Laid[], options: DiscordOptions, below: string, share: string): DiscordMessage {
  const files = page.flatMap((part) => part.upload ?? []);
  const components = page.flatMap((part) => part.components);
  const described = new Map(
    components.flatMap((component) => (component.type === 12 ? component.items.map((item) => [item.media.url, item.description] as const) : [])),
  );
  return {
    payload: {
      flags: IS_COMPONENTS_V2 | (options.ephemeral ? EPHEMERAL : 0),
      components: [...components, ...fit(shorten(below, MOST_BELOW), PART, small).map(display), ...(share ? [shareRow(share, options.ref)] : [])],
      allowed_mentions: { parse: [] },
      ...(files.length > 0
        ? {
            attachments: files.map((file, id) => ({
              id: String(id),
              filename: file.name,
              ...(described.get(`attachment://${file.name}`) ? { description: described.get(`attachment://${file.name}`) } : {}),
            })),
          }
        : {}),
    },
    files,
  };
}

const shareRow = (label: string, ref: string): ActionRow => ({
  type: 1,
  components: [{ type: 2, style: 2, label: shorten(label, LIMITS.button_label), custom_id: customId("share", ref, 0) }],
});

const display = (content: string): TextDisplay => ({ type: 10, content });
const text = (content: string, keep = false): Laid => ({ components: [display(content)], size: [content.length, 1, 0], keep });

/** A bar beside some pieces: all in one if a message holds them, else cut between them. */
function framed(accent_color: number, pieces: readonly Piece[], label: Label, urgent = false): Laid[] {
  const displays = pieces.flatMap((piece) => texts(piece, label, urgent)).map(display);
  return chunks(displays, (one) => one.content.length, TEXT)
    .flatMap((group) => chunks(group, () => 1, COMPONENTS - 1))
    .map((components) => ({
      components: [{ type: 17, accent_color, components }],
      size: [components.reduce((sum, one) => sum + one.content.length, 0), components.length + 1, 0],
    }));
}

function lay(piece: Piece, at: number, label: Label, ref: string): Laid[] {
  switch (piece.kind) {
    case "picture":
      return picture(piece, at, label);
    case "document":
      return document(piece, at);
    case "choices":
      return choices(piece.choices, label, ref);
    case "form":
      return [
        ...fit(piece.title, PART, bold).map((one) => text(one, true)),
        ...fit(piece.summary, PART, small).map((one) => text(one, true)),
        ...rows(formRows(piece, ref, label)),
      ];
    default: {
      const keep = piece.kind === "headline" || piece.kind === "heading" || piece.kind === "question";
      return texts(piece, label).map((content) => text(content, keep));
    }
  }
}

const rows = (list: readonly ActionRow[]): Laid[] => list.map((row) => ({ components: [row], size: [0, 1 + row.components.length, 0] }));

const choices = (list: readonly Numbered[], label: Label, ref: string): Laid[] => [
  ...(needsWords(list) ? joined(list.flatMap((choice) => bullet(choice.label, `${choice.number}. `))).map((one) => text(one, true)) : []),
  ...rows(choiceRows(list, ref, label)),
];

function document(piece: DocumentPiece, at: number): Laid[] {
  const name = piece.name.replace(/(?=\.\w+$)/, `-${at}`);
  return [
    ...fit(piece.title || "·", PART, bold).map((one) => text(one, true)),
    {
      components: [{ type: 13, file: { url: `attachment://${name}` } }],
      size: [0, 1, 1],
      upload: { name, media_type: piece.media_type, content: piece.content },
    },
  ];
}

function picture(piece: Extract<Piece, { kind: "picture" }>, at: number, label: Label): Laid[] {
  const words = (): Laid[] => fit(label("picture", { alt: piece.alt }) || piece.alt || "·", PART, (one) => one).map((one) => text(one));
  const { photo, file = photo?.name } = piece;
  if (!file) return words();
  const name = `figure-${at}${/\.\w{1,5}$/.exec(file)?.[0] ?? ""}`;
  const shown: Laid = {
    components: [
      {
        type: 12,
        items: [{ media: { url: `attachment://${name}` }, ...(piece.alt ? { description: shorten(piece.alt, LIMITS.alt) } : {}) }],
      },
    ],
    size: [0, 1, 1],
    upload: photo ? { name, media_type: photo.media_type, content: photo.bytes } : { name, path: file },
  };
  return piece.alt.length > LIMITS.alt ? [shown, ...words()] : [shown];
}
