/** What was said last in each room, so that an answer can be put in place of the one right above. Kept in memory: unknown means "no". */
export interface Tails {
  /** Something was said: not a reaction, not an edit. */
  said(room_id: string, event_id: string): void;
  /** What stands right above an event. */
  before(room_id: string, event_id: string): string | null;
}

const MOST = 20;

export function tails(): Tails {
  const rooms = new Map<string, string[]>();
  return {
    said(room_id, event_id) {
      const list = rooms.get(room_id) ?? [];
      if (list.includes(event_id)) return;
      list.push(event_id);
      rooms.set(room_id, list.slice(-MOST));
    },
    before(room_id, event_id) {
      const list = rooms.get(room_id) ?? [];
      const at = list.indexOf(event_id);
      return at > 0 ? (list[at - 1] ?? null) : null;
    },
  };
}
