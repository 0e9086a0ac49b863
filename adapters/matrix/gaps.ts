/** Catching up: what the homeserver left out of a sync, or what was sent before we were in, fetched back to where we know everything. */
import { type MatrixClient, Method } from "matrix-js-sdk";
import { KEPT_MS, type RawEvent, type Rows } from "./store/rows.ts";

/** Kinds of events that are worked or stand as marks. */
export const KINDS = ["m.room.message", "m.room.encrypted", "m.reaction"] as const;
const WANTED = new Set<string>(KINDS);
const PAGE = 100;
/** more than a busy month of a large room; what lies further back stays unread */
const MOST_PAGES = 50;

interface Page {
  readonly chunk: readonly RawEvent[];
  readonly end?: string;
}

/** @throws when the homeserver does not give them; the gap stays open */
export async function fillGap(client: MatrixClient, rows: Pick<Rows, "room" | "filled" | "setSent">, room_id: string, now_ms: number): Promise<number> {
  const me = client.getSafeUserId();
  const mark = rows.room(room_id)?.mark ?? null;
  const found: RawEvent[] = [];
  let newest: string | null = null;
  let from: string | undefined;
  const filter = JSON.stringify({ types: [...KINDS, "m.room.member"], lazy_load_members: true });
  for (let page = 0; page < MOST_PAGES; page++) {
    const { chunk, end }: Page = await client.http.authedRequest(Method.Get, `/rooms/${encodeURIComponent(room_id)}/messages`, {
      dir: "b", limit: String(PAGE), filter, ...(from === undefined ? {} : { from }),
    });
    for (const event of chunk) {
      const txn = event.unsigned?.transaction_id;
      if (event.sender === me && typeof txn === "string") rows.setSent(txn, event.event_id, room_id, now_ms);
      if (event.event_id === mark || (mark === null && isBeginning(event, me))) return end_(found, newest);
      if (!WANTED.has(event.type)) continue;
      newest ??= event.event_id;
      if (event.sender !== me && event.origin_server_ts > now_ms - KEPT_MS) found.push({ ...event, room_id });
    }
    if (end === undefined || chunk.length === 0) break;
    from = end;
  }
  return end_(found, newest);

  function end_(list: RawEvent[], last: string | null): number {
    rows.filled(room_id, list.reverse(), last, now_ms);
    return list.length;
  }
}

/** Where a room without a mark begins for us: at what we said last, or when we were asked in. */
function isBeginning(event: RawEvent, me: string): boolean {
  if (event.type !== "m.room.member") return event.sender === me;
  if (event.state_key !== me) return false;
  const before = (event.unsigned?.prev_content as { membership?: string } | undefined)?.membership;
  return event.content.membership !== "join" || (before !== "invite" && before !== "join");
}
