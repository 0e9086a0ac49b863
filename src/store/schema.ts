/**
 * The tables, as Kysely sees them: columns for what is queried, and one JSON document (`doc`) for the facts, so that a new optional
 * fact needs no migration. Numbers ending in `_ms` are epoch milliseconds in both stores.
 */
export interface Tables {
  /** one row, id 1 */
  clock: { id: number; at_ms: number };
  people: { id: string; created_at_ms: number; version: number; doc: string };
  identities: { network: string; network_id: string; person_id: string; doc: string };
  places: {
    id: string;
    network: string;
    network_id: string;
    kind: "private" | "group";
    /** whose private place it is */
    person_id: string | null;
    group_id: string | null;
    doc: string;
  };
  heaters: { id: string; owner_id: string; version: number; doc: string };
  heater_members: { heater_id: string; person_id: string; joined_at_ms: number };
  homes: { owner_id: string; version: number; doc: string };
  fires: { id: string; heater_id: string; person_id: string; lit_at_ms: number; load_kg: number | null; doc: string };
  talks: { person_id: string; place_id: string; version: number; updated_at_ms: number; doc: string };
  guides: { heater_id: string; fire_id: string; version: number; watch_id: string; place_id: string; doc: string };
  reminders: { id: string; person_id: string; place_id: string; due_at_ms: number; done_at_ms: number | null; doc: string };
  /** a group's own rule, said by one of its moderators; one a place */
  place_rules: { place_id: string; said_by: string; doc: string };
  builder_invitations: { code: string; heater_id: string; person_id: string; place_id: string; ends_at_ms: number };
  builders: { heater_id: string; person_id: string; place_id: string; since_ms: number; doc: string };
  /** codes by which a place is linked to a group, each good once */
  link_codes: { code: string; group_id: string; place_id: string; made_by: string; ends_at_ms: number };
  /** shared reckonings; `person_id` is null once whoever shared it is forgotten */
  cards: { group_id: string; code: string; person_id: string | null; at_ms: number; withdrawn_at_ms: number | null; doc: string };
  winter_members: { group_id: string; person_id: string; from_week: string; until_week: string | null };
  /** what was published of a week; holds nobody */
  winter_weeks: { group_id: string; week: string; doc: string };
  group_lists: { group_id: string; kind: string; version: number; opened_by: string; at_ms: number; doc: string };
  group_entries: { group_id: string; kind: string; person_id: string; at_ms: number; doc: string };
  album: { id: string; person_id: string; heater_id: string | null; at_ms: number; bytes: Uint8Array; doc: string };
  /** `person_id` is null for the message by which somebody had themselves forgotten */
  inbox: { message_key: string; person_id: string | null; at_ms: number; doc: string };
  due: {
    key: string;
    kind: string;
    due_at_ms: number;
    /** not claimed before this instant: `due_at_ms`, later after a failure */
    again_at_ms: number;
    useful_until_ms: number;
    person_id: string;
    place_id: string;
    attempts: number;
    lease: string | null;
    /** by the store's own time, see leases.ts */
    lease_until: number | null;
    doc: string;
  };
  outbox: {
    key: string;
    kind: string;
    due_at_ms: number;
    /** null once sent: what waits is found by this column */
    again_at_ms: number | null;
    useful_until_ms: number;
    person_id: string;
    place_id: string;
    network: string;
    network_place_id: string;
    state: "pending" | "leased" | "attempted" | "sent";
    attempts: number;
    maybe_repeat: number;
    unknown_since_ms: number | null;
    made_at_ms: number;
    sent_at_ms: number | null;
    native_id: string | null;
    last_error: string | null;
    lease: string | null;
    lease_until: number | null;
    doc: string;
  };
}
