/**
 * The people, heaters and fires that Gleed keeps, as the program holds them.
 *
 * - person: somebody, with identities on one or more networks
 * - place: where a talk happens on a network: private, or a group's room
 * - heater: its own record; several people fire it, everyone of them sees the running fire
 * - home: house, wood, alarms and weather, kept by the person who owns the heater
 * - fire: lighting to black bed, one row each
 * - guide: the fire that is being walked through now, at most one a heater
 * - talk: what one person's conversation in one place is about, with an age and a version
 */
import type { Group, GroupLook, GroupWrite } from "./group.ts";
import type { AlarmsFacts, DayWeatherFacts, FireFacts, HeaterFacts, HouseFacts, PersonFacts, UpkeepFacts, WoodFacts } from "./schemas.ts";

export interface Person {
  readonly id: string;
  readonly created_at_ms: number;
  /** name as the network gave it, for the others of the same heater; never shown in a group's figures */
  readonly name?: string;
  readonly facts: Omit<PersonFacts, "fires_heater_of">;
  /** which of several heaters is meant when none is named */
  readonly heater_id?: string;
}

export interface Heater {
  readonly id: string;
  readonly owner_id: string;
  /** everyone who fires it, the owner included */
  readonly member_ids: readonly string[];
  readonly facts: HeaterFacts;
  readonly upkeep: UpkeepFacts & UpkeepKept;
  /** rules of its builder or its group; they only ever tighten (see limits.ts) */
  readonly rules: readonly HeaterRule[];
  /** rules that later ones took the place of, newest first, at most twenty */
  readonly rules_before?: readonly HeaterRule[];
}

/** What Gleed itself notes of a heater's upkeep; days as written (2026-10-03), by job or sign of knowledge/upkeep.yaml. */
export interface UpkeepKept {
  readonly done?: Readonly<Record<string, string>>;
  /** when a job was last spoken of without being asked */
  readonly told?: Readonly<Record<string, string>>;
  /** days on which a sign was seen, oldest first, at most a dozen */
  readonly signs?: Readonly<Record<string, readonly string[]>>;
  /** true: speak of no job without being asked */
  readonly silent?: boolean;
}

/** A builder's or local rule. Each field can only narrow what `limits()` allows. */
export interface HeaterRule {
  readonly from: "builder" | "law" | "group";
  readonly said_by: string;
  readonly said_at_ms: number;
  readonly max_load_kg?: number;
  readonly min_load_kg?: number;
  readonly max_day_kg?: number;
  readonly spacing_h?: number;
  readonly no_fire?: { readonly from: string; readonly to: string };
  /** holds for heaters of this kind only */
  readonly kind?: HeaterFacts["kind"];
  /** which of the builder's rules this is, from 1; a change makes the next */
  readonly version?: number;
  /** how the builder calls himself or herself in a file of rules */
  readonly builder?: string;
  readonly lighting?: "top" | "bottom";
  /** said beside the gates of closing down, which it does not touch */
  readonly close_down?: string;
  /** the builder's sheet has the load burnt in two batches; together they stay under the same limits. Without it there is one batch */
  readonly two_batches?: true;
  /** shown as "your builder says", beside a caution, never in its place */
  readonly words?: string;
  readonly call?: string;
}

export interface Home {
  readonly owner_id: string;
  readonly house: HouseFacts;
  readonly wood: readonly WoodFacts[];
  readonly alarms: AlarmsFacts;
  readonly weather: readonly DayWeatherFacts[];
}

export interface Fire {
  readonly id: string;
  readonly heater_id: string;
  readonly person_id: string;
  readonly lit_at_ms: number;
  readonly facts: FireFacts;
}

export interface Talk {
  readonly person_id: string;
  readonly place_id: string;
  readonly version: number;
  readonly updated_at_ms: number;
  /** what the last answers were about and what was asked; shape belongs to the conversation */
  readonly state: Readonly<Record<string, unknown>>;
}

export interface Guide {
  readonly heater_id: string;
  readonly fire_id: string;
  readonly version: number;
  /** who is on watch: check-ins go to this person */
  readonly watch_id: string;
  readonly place_id: string;
  /** shape belongs to firing/ */
  readonly state: Readonly<Record<string, unknown>>;
}

export interface PlaceRow {
  readonly id: string;
  readonly network: string;
  readonly network_id: string;
  readonly kind: "private" | "group";
  readonly name?: string;
  readonly group_id?: string;
  /** whose private place it is, where that is known */
  readonly person_id?: string;
}

/** Everything deciding may look at. Loaded once, never touched while deciding. */
export interface Snapshot {
  readonly person: Person;
  readonly place: PlaceRow;
  readonly talk: Talk;
  /** the heaters this person fires, the one meant first */
  readonly heaters: readonly Heater[];
  /** names of the other people who fire these heaters, by id */
  readonly names: ReadonlyMap<string, string>;
  /** the home of the heater's owner */
  readonly home: Home;
  /** latest fires of the heater meant, newest first (at most 60) */
  readonly fires: readonly Fire[];
  /** how many fires the heater meant has in all, and what they burnt */
  readonly totals: { readonly fires: number; readonly load_kg: number; readonly since_sweep_kg: number; readonly since_sweep_fires: number };
  /** stretches of fires of the heater meant with less than 30 days between, oldest first; of the last four years */
  readonly stretches?: readonly FireStretch[];
  readonly guide: Guide | null;
  /** open ones of this person; in a group's room, those of the room too */
  readonly reminders: readonly Reminder[];
  /** what moderators of groups have set, in whose rooms somebody of this heater talks; narrows like the heater's own rules */
  readonly group_rules?: readonly HeaterRule[];
  /** the groups this person belongs to, that of the place first */
  readonly groups?: readonly Group[];
  /** what groups keep, where the cause asked for it */
  readonly group?: GroupLook;
  /** pictures of the heater meant, newest first, without their bytes (at most 60) */
  readonly album?: readonly AlbumEntry[];
  /** builders of the heater meant, accepted or asking */
  readonly builders?: readonly BuilderLink[];
  /** heaters of which the person is the accepted builder */
  readonly builds?: readonly BuiltHeater[];
}

/** A picture kept of a heater: the crack, the glass, the soot as they were on a day. */
export interface AlbumEntry {
  readonly id: string;
  readonly person_id: string;
  readonly heater_id: string | null;
  readonly at_ms: number;
  readonly what: "crack" | "glass" | "soot" | "other";
  readonly media_type: string;
  /** what the person wrote beside it */
  readonly words?: string;
  /** of what part, in the person's words: pictures of one spot are compared */
  readonly spot?: string;
  /** of a crack, at its widest, as the person measured it */
  readonly width_mm?: number;
}

/** Somebody whom the owner of a heater accepted as its builder, or who asked to be. */
export interface BuilderLink {
  readonly heater_id: string;
  readonly person_id: string;
  /** the builder's private place: rules and hand-overs are spoken of there */
  readonly place_id: string;
  readonly name?: string;
  /** where the owner is told what the builder did */
  readonly owner_id: string;
  readonly owner_place_id: string;
  readonly owner_name?: string;
  readonly since_ms: number;
  /** the owner said yes */
  readonly accepted: boolean;
  /** the owner shows the first fires */
  readonly first_fires: boolean;
}
/** A heater of which the person is the accepted builder. */
export interface BuiltHeater {
  readonly link: BuilderLink;
  readonly heater: Heater;
  /** newest first; empty unless the owner shows them */
  readonly fires: readonly Fire[];
}

export interface FireStretch {
  readonly first_ms: number;
  readonly last_ms: number;
  readonly fires: number;
}

export interface Reminder {
  readonly id: string;
  readonly person_id: string;
  readonly place_id: string;
  readonly what: string;
  readonly due_at_ms: number;
  /** RFC 5545: DTSTART as local time without a zone, and an RRULE; the person's zone at the time is what counts */
  readonly rule?: string;
  readonly done_at_ms?: number;
  /** job of knowledge/upkeep.yaml whose record is written when it is done */
  readonly task?: string;
  /** when it was last said */
  readonly told_at_ms?: number;
  /** it fell due while it could not be said, and belongs into the next digest */
  readonly missed_at_ms?: number;
}

/** What a decision wants to be kept; committed in one transaction with everything else the message causes. */
export type Write =
  | { readonly write: "person"; readonly person: Person }
  | { readonly write: "heater"; readonly heater: Heater }
  | { readonly write: "join-heater"; readonly heater_id: string; readonly person_id: string }
  | { readonly write: "home"; readonly home: Home }
  | { readonly write: "fire"; readonly fire: Fire }
  | { readonly write: "delete-fire"; readonly fire_id: string }
  | { readonly write: "talk"; readonly state: Readonly<Record<string, unknown>> }
  | { readonly write: "guide"; readonly guide: Guide }
  | { readonly write: "end-guide"; readonly heater_id: string }
  | { readonly write: "reminder"; readonly reminder: Reminder }
  /** what a moderator set for a group, in place of what was set before; null lifts it */
  | { readonly write: "group-rule"; readonly place_id: string; readonly rule: HeaterRule | null }
  | { readonly write: "builder-invitation"; readonly code: string; readonly heater_id: string; readonly place_id: string; readonly ends_at_ms: number }
  | { readonly write: "builder"; readonly link: BuilderLink }
  | { readonly write: "end-builder"; readonly heater_id: string; readonly person_id: string }
  | GroupWrite
  | { readonly write: "picture"; readonly picture: AlbumEntry; readonly bytes: Uint8Array }
  | { readonly write: "picture-width"; readonly picture_id: string; readonly width_mm: number }
  | { readonly write: "delete-picture"; readonly picture_id: string }
  | { readonly write: "forget-person"; readonly person_id: string };

/** Something that falls due later; the key is made of its cause, so that asking twice makes one row. */
export interface Due {
  readonly key: string;
  readonly kind: DueKind;
  readonly due_at_ms: number;
  readonly useful_until_ms: number;
  readonly person_id: string;
  readonly place_id: string;
  readonly payload: Readonly<Record<string, unknown>>;
}
/** A due row as the decision sees it. */
export type DueRowLike = Due;
export type DueKind = "guide-check-in" | "light-by" | "reminder" | "upkeep" | "digest" | "group-week" | "group-day";

export interface Decided<A> {
  readonly answer: A;
  readonly writes: readonly Write[];
  readonly due: readonly Due[];
  /** keys (or key prefixes ending in `*`) of due rows that are no longer wanted */
  readonly cancel: readonly string[];
  /** messages to others that this decision causes, e.g. the person who takes over the watch */
  readonly also_tell?: readonly { readonly key: string; readonly person_id: string; readonly place_id: string; readonly answer: A }[];
}
