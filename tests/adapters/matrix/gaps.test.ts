import { expect, test } from "vitest";
import { fillGap } from "../../../adapters/matrix/gaps.ts";
import { openFile } from "../../../adapters/matrix/store/file.ts";
import { type RawEvent, rows } from "../../../adapters/matrix/store/rows.ts";

const ME = "@gleed:x";
const NOW = 1_000_000_000_000;
let at = 0;
const event = (event_id: string, more: Partial<RawEvent> = {}): RawEvent => ({
  event_id, room_id: "!r", sender: "@a:x", type: "m.room.encrypted", origin_server_ts: NOW + at++, content: {}, ...more,
});
const member = (event_id: string, membership: string, before?: string): RawEvent =>
  event(event_id, { type: "m.room.member", state_key: ME, content: { membership }, ...(before ? { unsigned: { prev_content: { membership: before } } } : {}) });

/** A homeserver that has these events, oldest first, and gives them back in pages of two. */
const server = (events: readonly RawEvent[]) =>
  ({
    getSafeUserId: () => ME,
    http: {
      async authedRequest(_method: string, _path: string, { from }: { from?: string }) {
        const start = Number(from ?? 0);
        const chunk = events.toReversed().slice(start, start + 2);
        return { chunk, ...(start + 2 < events.length ? { end: String(start + 2) } : {}) };
      },
    },
  }) as never;

async function found(events: readonly RawEvent[], mark: string | null): Promise<string[]> {
  const kept = rows(openFile(":memory:"));
  kept.newRoom("!r");
  if (mark !== null) {
    kept.filled("!r", [], mark, NOW);
    kept.openGap("!r");
  }
  await fillGap(server(events), kept, "!r", NOW + 1_000);
  expect(kept.room("!r")?.gap).toBe(false);
  return kept.pending().map((one) => one.event.event_id);
}

test("back to the mark, over known events and pages, ours left out", async () => {
  const events = [event("$0"), event("$1"), event("$2"), event("$ours", { sender: ME }), event("$3"), event("$4")];
  expect(await found(events, "$1")).toEqual(["$2", "$3", "$4"]);
});

test("a room that is new begins where we were asked in, so what was said before we came is answered", async () => {
  expect(await found([event("$before"), member("$i", "invite"), event("$1"), member("$j", "join", "invite"), event("$2")], null)).toEqual(["$1", "$2"]);
  expect(await found([event("$before"), member("$j", "join"), event("$1"), member("$name", "join", "join"), event("$2")], null)).toEqual(["$1", "$2"]);
});

test("after the loss of everything it begins at what we said last", async () => {
  expect(await found([member("$j", "join"), event("$1"), event("$ours", { sender: ME }), event("$2")], null)).toEqual(["$2"]);
});

test("our own events tell their transaction ids, also those of before a crash", async () => {
  const kept = rows(openFile(":memory:"));
  kept.newRoom("!r");
  await fillGap(server([event("$1"), event("$mine", { sender: ME, unsigned: { transaction_id: "t1" } })]), kept, "!r", NOW + 1_000);
  expect(kept.sent("t1")).toBe("$mine");
});
