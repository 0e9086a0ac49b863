/** The content of the Matrix events that Gleed sends (client-server API: m.room.message, m.replace, m.image). */
import type { Photo } from "../../src/answer.ts";

export interface Notice {
  readonly msgtype: "m.notice";
  readonly body: string;
  readonly format: "org.matrix.custom.html";
  readonly formatted_body: string;
  /** empty: nobody is called */
  readonly "m.mentions": Readonly<Record<string, never>>;
}

export interface Edit extends Notice {
  readonly "m.new_content": Notice;
  readonly "m.relates_to": { readonly rel_type: "m.replace"; readonly event_id: string };
}

/** What is sent for one answer, in order. A picture becomes an (encrypted) m.image once its file is uploaded. */
export type Event =
  | { readonly kind: "notice"; readonly content: Notice }
  | { readonly kind: "image"; readonly from: string | Photo; readonly content: ImageText }
  | { readonly kind: "file"; readonly bytes: string; readonly content: FileText };

/** A document becomes an (encrypted) m.file once its words are uploaded. */
export interface FileText {
  readonly msgtype: "m.file";
  readonly body: string;
  readonly filename: string;
  readonly info: { readonly mimetype: string; readonly size: number };
  readonly "m.mentions": Readonly<Record<string, never>>;
}

export interface ImageText {
  readonly msgtype: "m.image";
  /** the description, read aloud and shown below */
  readonly body: string;
  readonly filename: string;
  readonly "m.mentions": Readonly<Record<string, never>>;
}

/**
 * Most bytes of body and HTML in one event. The event limit is 65,536 bytes for all; encryption adds a third, an edit doubles.
 */
export const BYTES = 15_000;
