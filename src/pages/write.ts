/** A `Document` as the bytes of a file, in its reader's language and units, and as plain words for where no file can go. */
import type { Document, Text } from "../answer.ts";
import type { Reader, Renderer } from "../text/render.ts";
import { toCsv } from "./csv.ts";
import { toHtml } from "./html.ts";
import { toPlain } from "./plain.ts";

export interface Written {
  readonly name: string;
  readonly media_type: string;
  readonly content: string;
}

export function writeDocument(document: Document, render: Renderer, reader: Reader): Written & { readonly words: string } {
  const say = (one: Text): string => render(one, reader);
  const { name, media_type } = document;
  const words = toPlain(document, say, reader);
  // made by a program for a program: nothing of ours around it
  if (media_type === "text/calendar" || media_type === "application/json") return { name, media_type, content: words, words };
  const content = media_type === "text/html" ? toHtml(document, say, reader) : media_type === "text/csv" ? toCsv(document, say) : `${say(document.title)}\n\n${words}\n`;
  return { name, media_type, content, words };
}
