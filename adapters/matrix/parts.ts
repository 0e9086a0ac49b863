/** Words as parts of a notice: plain body and HTML side by side, each small enough to be packed. */
import type { Photo } from "../../src/answer.ts";
import type { Cause, Label, Numbered } from "../outline.ts";
import { chunks, cut, type Part } from "../pack.ts";
import { BYTES } from "./api.ts";
import { escapeHtml, unlinked } from "./escape.ts";

/** Bytes of one notice, less room for the "2 of 3" below it. */
export const ROOM = BYTES - 200;
/** Longer pieces come in several parts, so that a cut between notices falls inside them. */
export const PART = 4_500;

/** Room for what a caution is called, in body and HTML. */
const NAME = 200;

export interface Both {
  readonly body: string;
  readonly html: string;
}
export interface Laid extends Part, Both {
  /** a file on disk, or a photograph */
  readonly image?: { readonly from: string | Photo; readonly alt: string };
  readonly file?: { readonly name: string; readonly title: string; readonly media_type: string; readonly content: string };
}

export const bytes = ({ body, html }: Both): number => Buffer.byteLength(body) + Buffer.byteLength(html);

export const part = (both: Both, keep = false): Laid => ({ ...both, size: [bytes(both) + 3], keep });

/** Words in pieces of at most `most` bytes of body and HTML together. Escaped, no UTF-16 unit takes more than nine bytes in both. */
export function fit(words: string, most: number, dress: (body: string, html: string) => Both): Both[] {
  const one = (piece: string): Both => dress(unlinked(piece), escapeHtml(piece).replace(/\n/g, "<br>"));
  const whole = one(words);
  return bytes(whole) <= most ? [whole] : cut(words, Math.floor((most - bytes(dress("", ""))) / 9)).map(one);
}

export const in_ =
  (tag: string) =>
  (body: string, html: string): Both => ({ body, html: `<${tag}>${html}</${tag}>` });
export const strong = (body: string, html: string): Both => ({ body, html: `<p><strong>${html}</strong></p>` });
export const small = (words: string): Both[] =>
  words === "" ? [] : fit(words, PART, (body, html) => ({ body, html: `<p><em>${html}</em></p>` }));

export const title = (words: string | undefined): Laid[] => (words ? fit(words, PART, strong).map((one) => part(one, true)) : []);

/** Whole in one notice; only one longer than any notice is cut, between sentences, and says that it goes on. */
export function caution(piece: { label: string; text: string }, label: Label): Laid[] {
  const named = (name: string, { body, html }: Both): Both =>
    name ? { body: `${name}: ${body}`, html: `<p><strong>${escapeHtml(name)}:</strong> ${html}</p>` } : { body, html: `<p>${html}</p>` };
  const again = label("caution-continued");
  return fit(piece.text, ROOM - NAME, (body, html) => ({ body, html })).map((both, at) =>
    part(named(at === 0 ? piece.label : again, both)),
  );
}

/** Lines gathered into parts, each in its own element. */
export const lines = (list: readonly Both[], open: string, between: string, close: string): Laid[] =>
  chunks(list, (one) => bytes(one) + between.length + 1, PART).map((group) =>
    part({ body: group.map((one) => one.body).join("\n"), html: open + group.map((one) => one.html).join(between) + close }),
  );

/** An item in its pieces: in the plain body `lead` stands before the first, as many spaces before the others. */
const hung = (words: string, lead: string): Both[] =>
  fit(words, PART - 40, (body, html) => ({ body, html })).map((one, at) => ({
    body: (at === 0 ? lead : " ".repeat(lead.length)) + one.body,
    html: one.html,
  }));

/** A long list comes in several, numbered on; the pieces of an item that is itself too long share its number. */
export function list(items: readonly string[], first: number | null): Laid[] {
  const pieces = items.flatMap((item, at) => {
    const lead = first === null ? "- " : `${first + at}. `;
    return hung(item, lead).map((one) => ({ at, ...one }));
  });
  return chunks(pieces, (one) => bytes(one) + 12, PART).map((group) => {
    const inner = group
      .map((one, place) => (place === 0 ? "<li>" : one.at === group[place - 1]?.at ? " " : "</li><li>") + one.html)
      .join("");
    const from = (first ?? 0) + (group[0]?.at ?? 0);
    const [open, close] = first === null ? ["<ul>", "</ul>"] : [from === 1 ? "<ol>" : `<ol start="${from}">`, "</ol>"];
    return part({ body: group.map((one) => one.body).join("\n"), html: `${open}${inner}</li>${close}` });
  });
}

export const numbered = (choices: readonly Numbered[]): Laid[] =>
  list(
    choices.map((choice) => choice.label),
    choices[0]?.number ?? 1,
  );

export function causeItem(cause: Cause): Both[] {
  const name = hung(`${cause.title} (${cause.share})`, "- ");
  const because = cause.because.flatMap((reason) => hung(reason, "  - "));
  const item = (html: string): string => `<li>${html}</li>`;
  const whole: Both = {
    body: [...name, ...because].map((one) => one.body).join("\n"),
    html: item(
      name.map((one) => one.html).join("<br>") + (because.length > 0 ? `<ul>${because.map((one) => item(one.html)).join("")}</ul>` : ""),
    ),
  };
  return bytes(whole) <= PART ? [whole] : [...name, ...because].map((one) => ({ body: one.body, html: item(one.html) }));
}
