/**
 * What a group keeps together: its places on several networks, reckonings shared on purpose, lists its organiser opened, and the winter's
 * bands. A group is known by the id of its first place; somebody belongs to it who talks with Gleed in one of its places.
 */
import type { Fire, Heater, Home, PlaceRow } from "./types.ts";

export interface Group {
  readonly id: string;
  readonly name?: string;
  readonly places: readonly PlaceRow[];
}

/** A reckoning that somebody put up for the group, under a short code. */
export interface Card {
  readonly group_id: string;
  readonly code: string;
  /** null once whoever shared it is forgotten */
  readonly person_id: string | null;
  readonly at_ms: number;
  readonly withdrawn_at_ms: number | null;
  /** shape belongs to the conversation; empty once withdrawn */
  readonly facts: Readonly<Record<string, unknown>>;
}

export const LIST_KINDS = ["order", "sweep", "alarms", "meter", "winter"] as const;
export type ListKind = (typeof LIST_KINDS)[number];

/** What an organiser opened: a joint order, a day of the sweep, a day of testing alarms, a meter that is lent; the winter's hour. */
export interface GroupList {
  readonly group_id: string;
  readonly kind: ListKind;
  /** 0 for one that was not stored before; guards against two changes at once */
  readonly version: number;
  readonly opened_by: string;
  readonly at_ms: number;
  readonly facts: Readonly<Record<string, unknown>>;
}

/** One member's line on a list. */
export interface GroupEntry {
  readonly group_id: string;
  readonly kind: ListKind;
  readonly person_id: string;
  readonly name?: string;
  readonly at_ms: number;
  readonly facts: Readonly<Record<string, unknown>>;
}

/** Somebody's part in the group's winter, by ISO weeks (`2026-W48`): counted from the first, not counted from the last on. */
export interface WinterMember {
  readonly group_id: string;
  readonly person_id: string;
  readonly from_week: string;
  readonly until_week?: string;
}

/** What was published of one week: never who, never a figure of anybody. */
export interface WinterWeek {
  readonly group_id: string;
  readonly week: string;
  readonly facts: Readonly<Record<string, unknown>>;
}

/** What is needed of one heater to place it in the bands of a week. */
export interface WinterHeater {
  readonly heater: Pick<Heater, "id" | "upkeep">;
  readonly weather: Home["weather"];
  readonly fires: readonly Pick<Fire, "lit_at_ms" | "facts">[];
}

export interface LinkCode {
  readonly code: string;
  readonly group_id: string;
  readonly place_id: string;
  readonly made_by: string;
  readonly ends_at_ms: number;
}

/** What a message or a due row needs of groups beside which there are; loaded only when asked for. */
export interface GroupWanted {
  /** codes of cards that may be meant */
  readonly codes?: readonly string[];
  /** codes by which a place may be linked */
  readonly links?: readonly string[];
  /** somebody's name: owners of heaters in the groups who are called so */
  readonly owner?: string;
  /** the group whose last whole week is to be frozen */
  readonly winter_of?: string;
}

export interface GroupLook {
  readonly cards: readonly Card[];
  /** every code in use, by group */
  readonly used: ReadonlyMap<string, readonly string[]>;
  /** this person's own cards that still stand */
  readonly own: readonly Pick<Card, "group_id" | "code">[];
  readonly lists: readonly GroupList[];
  readonly entries: readonly GroupEntry[];
  readonly winter: readonly WinterMember[];
  /** the latest weeks that were published, newest first, at most two a group */
  readonly weeks: readonly WinterWeek[];
  /** where this person is alone with Gleed, on the network they talk on now; null where that is not known */
  readonly private_place: string | null;
  /** those of the name asked for, who own a heater and have a place to be asked in */
  readonly owners: readonly { readonly person_id: string; readonly name: string; readonly place_id: string; readonly member_ids: readonly string[] }[];
  readonly links: readonly (LinkCode & { readonly group: Group })[];
  /** heaters of those who took part in the last whole week; each once, however many fire it */
  readonly freezing?: { readonly group_id: string; readonly week: string; readonly heaters: readonly WinterHeater[]; readonly members: number };
}

export type GroupWrite =
  | { readonly write: "link-code"; readonly link: LinkCode }
  /** the code is used up, and this place belongs to its group */
  | { readonly write: "link-place"; readonly code: string; readonly place_id: string; readonly group_id: string }
  | { readonly write: "unlink-place"; readonly place_id: string }
  | { readonly write: "card"; readonly card: Card }
  /** content gone from the card, from answers kept against repeats, and from what has not been sent yet */
  | { readonly write: "withdraw-card"; readonly group_id: string; readonly code: string }
  | { readonly write: "winter-member"; readonly member: WinterMember }
  | { readonly write: "winter-week"; readonly week: WinterWeek }
  | { readonly write: "group-list"; readonly list: GroupList }
  | { readonly write: "close-list"; readonly group_id: string; readonly kind: ListKind; readonly version: number }
  | { readonly write: "group-entry"; readonly entry: Omit<GroupEntry, "name"> }
  | { readonly write: "drop-entry"; readonly group_id: string; readonly kind: ListKind; readonly person_id: string };
