/**
 * What Gleed says, before any network has shaped it. Plain data, so that it can be stored, sent again and rendered by every mouth.
 *
 * Advice on a hazard cannot exist without its caution: an `Answer` is made only by `answer()`, which collects the cautions of every
 * block and refuses a hazardous answer that names none.
 */
import type { Quantity } from "./quantities.ts";
import type { TopicId } from "./topics.ts";

/** A sentence by its place in the catalogues; turned into words at the edge, in the reader's language. */
export interface Text {
  readonly id: string;
  readonly args?: Readonly<Record<string, Arg>>;
}
/** An instant as a person reads it: in their zone, as a clock time, a day or both. */
export interface Moment {
  readonly at_ms: number;
  readonly show: "time" | "day" | "day-time" | "date";
}
export type Arg = string | number | Quantity | Moment | Text | readonly (string | Text)[];

/** Words of a person or a builder, never a sentence of ours: shown as they are, always escaped. */
export const verbatim = (words: string): Text => ({ id: "verbatim", args: { words } });
/** A sentence that code of ours made in English: shown in the reader's language where `src/text/sentences.*.yaml` knows it. */
export const ours = (words: string): Text => ({ id: "ours", args: { words } });
export const text = (id: string, args?: Record<string, Arg>): Text => (args ? { id, args } : { id });

export interface Caution {
  readonly id: string;
  readonly text: Text;
}

export interface Choice {
  readonly id: string;
  readonly label: Text;
}

/** Chart data; `pictures/` draws it, an adapter that cannot show it reads `alt` aloud. */
export interface Picture {
  readonly chart: string;
  readonly data: Readonly<Record<string, unknown>>;
  readonly alt: Text;
  /** where the drawn file lies, filled in by whoever drew it */
  readonly file?: string;
  /** the photograph itself, on its way out only: nobody keeps an answer with one */
  readonly photo?: Photo;
}
export interface Photo {
  readonly name: string;
  readonly media_type: string;
  readonly bytes: Uint8Array;
}

export interface FormField {
  readonly key: string;
  readonly label: Text;
  readonly kind: "text" | "number" | "choice" | "date" | "yes-no";
  readonly unit?: string;
  readonly choices?: readonly Choice[];
  readonly value?: string;
  readonly hint?: Text;
}

/**
 * A page or a table to keep, print or send on by oneself. An adapter attaches it as a file (`pages/` writes it in the reader's language and
 * units); where no file can go, its words are read in its place.
 */
export interface Document {
  /** file name with its ending: small letters, digits, hyphens */
  readonly name: string;
  readonly media_type: "text/html" | "text/csv" | "text/plain" | "text/calendar" | "application/json";
  readonly title: Text;
  readonly body: readonly PageBlock[];
  /** a second form of a document that stands in the same answer: no need to read it out as well */
  readonly twin?: true;
}
export type PageBlock =
  | Extract<Block, { kind: "text" | "heading" | "steps" | "table" | "numbers" | "quote" }>
  /** a line drawing made by `pages/`, never by a person */
  | { readonly kind: "drawing"; readonly svg: string; readonly alt: Text };

interface Touching {
  /** ids of the cautions this block needs; an empty list says that it touches no hazard */
  readonly cautions: readonly string[];
}
export type Block = Touching &
  (
    | { readonly kind: "text"; readonly text: Text }
    | { readonly kind: "heading"; readonly text: Text }
    | { readonly kind: "steps"; readonly title?: Text; readonly ordered: boolean; readonly steps: readonly Text[] }
    | { readonly kind: "table"; readonly columns: readonly Text[]; readonly rows: readonly (readonly Text[])[]; readonly caption?: Text }
    | { readonly kind: "numbers"; readonly items: readonly NumberItem[] }
    | { readonly kind: "causes"; readonly items: readonly CauseItem[] }
    | { readonly kind: "picture"; readonly picture: Picture }
    | { readonly kind: "document"; readonly document: Document }
    | { readonly kind: "question"; readonly id: string; readonly text: Text; readonly choices: readonly Choice[] }
    | { readonly kind: "choices"; readonly choices: readonly Choice[] }
    | { readonly kind: "form"; readonly id: string; readonly title: Text; readonly fields: readonly FormField[] }
    | { readonly kind: "quote"; readonly who: Text; readonly words: Text }
  );

export interface NumberItem {
  /** key with its unit, such as `load_kg`: the name the figure has outside */
  readonly key: string;
  readonly label: Text;
  readonly quantity: Quantity;
}
export interface CauseItem {
  readonly id: string;
  readonly title: Text;
  /** 0 to 1 */
  readonly share: number;
  readonly because: readonly Text[];
}

export type Audience = "person" | "place";

interface Body {
  readonly topic: TopicId;
  /** other topics this answer may be about: the second of two close ones first */
  readonly also: readonly TopicId[];
  readonly emergency: boolean;
  /** read at a glance */
  readonly headline: Text;
  readonly blocks: readonly Block[];
  readonly audience: Audience;
  /** key of a live answer that this one replaces (the fire guide keeps one message up to date) */
  readonly live?: string;
  /** says nothing new: what stands there under the same key is changed where it stands, and nobody is called */
  readonly in_place?: true;
}
declare const made: unique symbol;
export type Answer = Body & { readonly [made]: true } & (
    | { readonly hazard: false; readonly cautions: readonly [] }
    | { readonly hazard: true; readonly cautions: readonly [Caution, ...Caution[]] }
  );

export interface Draft {
  readonly topic: TopicId;
  readonly also?: readonly TopicId[];
  readonly headline: Text;
  /** cautions the headline itself needs, or the topic as a whole */
  readonly cautions?: readonly string[];
  readonly blocks?: readonly Block[];
  readonly emergency?: boolean;
  readonly audience?: Audience;
  readonly live?: string;
  readonly in_place?: true;
}

/** The catalogue of cautions, from knowledge: id to text. */
export type Cautions = ReadonlyMap<string, Caution>;

/**
 * The only way to make an `Answer`.
 * @throws RangeError when a block names a caution that the catalogue lacks, or when a topic that always carries one has none.
 */
export function answer(draft: Draft, catalogue: Cautions, always: ReadonlySet<TopicId> = new Set()): Answer {
  const ids = new Set([...(draft.cautions ?? []), ...(draft.blocks ?? []).flatMap((block) => block.cautions)]);
  const cautions = [...ids].map((id) => {
    const caution = catalogue.get(id);
    if (!caution) throw new RangeError(`no caution "${id}" in the catalogue`);
    return caution;
  });
  if ((draft.emergency || always.has(draft.topic)) && cautions.length === 0) {
    throw new RangeError(`an answer on ${draft.topic} touches a hazard and names no caution`);
  }
  const body: Body = {
    topic: draft.topic,
    also: draft.also ?? [],
    emergency: draft.emergency ?? false,
    headline: draft.headline,
    blocks: draft.blocks ?? [],
    audience: draft.audience ?? "person",
    ...(draft.live ? { live: draft.live } : {}),
    ...(draft.in_place ? { in_place: draft.in_place } : {}),
  };
  const [first, ...rest] = cautions;
  return (first ? { ...body, hazard: true, cautions: [first, ...rest] } : { ...body, hazard: false, cautions: [] }) as unknown as Answer;
}

/** Short hands for the blocks that most answers are made of. */
type BlockOf<K extends Block["kind"]> = Extract<Block, { kind: K }>;
export const say = (words: Text, ...cautions: string[]): BlockOf<"text"> => ({ kind: "text", text: words, cautions });
export const heading = (words: Text): BlockOf<"heading"> => ({ kind: "heading", text: words, cautions: [] });
export const steps = (list: readonly Text[], options: { title?: Text; ordered?: boolean; cautions?: readonly string[] } = {}): BlockOf<"steps"> => ({
  kind: "steps",
  steps: list,
  ordered: options.ordered ?? true,
  cautions: options.cautions ?? [],
  ...(options.title ? { title: options.title } : {}),
});
export const numbers = (...items: NumberItem[]): BlockOf<"numbers"> => ({ kind: "numbers", items, cautions: [] });
export const ask = (id: string, words: Text, choices: readonly Choice[] = [], ...cautions: string[]): Block => ({
  kind: "question", id, text: words, choices, cautions,
});
