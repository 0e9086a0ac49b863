/** The part of Discord's public API (version 10) that Gleed's messages are made of: Components V2, modals, attachments. */

export interface TextDisplay {
  readonly type: 10;
  readonly content: string;
}
export interface Separator {
  readonly type: 14;
  readonly divider: boolean;
  readonly spacing: 1 | 2;
}
export interface MediaGallery {
  readonly type: 12;
  readonly items: readonly { readonly media: { readonly url: string }; readonly description?: string }[];
}
/** Shows an uploaded file below the text. */
export interface FileComponent {
  readonly type: 13;
  readonly file: { readonly url: string };
}
export interface Button {
  readonly type: 2;
  readonly style: 1 | 2 | 3 | 4;
  readonly label: string;
  readonly custom_id: string;
}
export interface SelectOption {
  readonly label: string;
  readonly value: string;
  readonly default?: boolean;
}
export interface StringSelect {
  readonly type: 3;
  readonly custom_id: string;
  readonly placeholder?: string;
  readonly options: readonly SelectOption[];
  readonly required?: boolean;
  readonly min_values?: number;
  readonly max_values?: number;
}
export interface ActionRow {
  readonly type: 1;
  readonly components: readonly (Button | StringSelect)[];
}
export interface Container {
  readonly type: 17;
  readonly accent_color?: number;
  readonly components: readonly (TextDisplay | Separator | ActionRow | MediaGallery)[];
}
export type Component = TextDisplay | Separator | MediaGallery | FileComponent | ActionRow | Container;

export interface TextInput {
  readonly type: 4;
  readonly custom_id: string;
  /** 1 one line, 2 several */
  readonly style: 1 | 2;
  readonly required: boolean;
  readonly max_length?: number;
  readonly value?: string;
  readonly placeholder?: string;
}
export interface ModalLabel {
  readonly type: 18;
  readonly label: string;
  readonly description?: string;
  readonly component: TextInput | StringSelect;
}
export interface Modal {
  readonly title: string;
  readonly custom_id: string;
  readonly components: readonly ModalLabel[];
}

export interface MessagePayload {
  readonly flags: number;
  readonly components: readonly Component[];
  readonly allowed_mentions: { readonly parse: readonly [] };
  readonly attachments?: readonly { readonly id: string; readonly filename: string; readonly description?: string }[];
}
/** A file to be uploaded as `files[n]`, n being its place in the list: one that lies on disk, or its words or bytes. */
export type Upload =
  | { readonly name: string; readonly path: string }
  | { readonly name: string; readonly media_type: string; readonly content: string | Uint8Array };
export interface DiscordMessage {
  readonly payload: MessagePayload;
  readonly files: readonly Upload[];
}

export const IS_COMPONENTS_V2 = 1 << 15;
export const EPHEMERAL = 1 << 6;

/** Limits of the platform that shape what is built here. Lengths are counted in UTF-16 units, which is never less than Discord counts. */
export const LIMITS = {
  components: 40,
  text: 4000,
  alt: 1024,
  files: 10,
  custom_id: 100,
  button_label: 80,
  buttons_in_row: 5,
  options: 25,
  option_label: 100,
  placeholder: 150,
  modal_title: 45,
  modal_fields: 5,
  field_label: 45,
  field_description: 100,
  field_placeholder: 100,
  field_value: 4000,
} as const;
