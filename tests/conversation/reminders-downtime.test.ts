/** The machine off, the network down, the clock set back: one digest in place of a flood, and nothing lost. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openCore, type Core } from "../../src/core/core.ts";
import { silent } from "../../src/delivery/log.ts";
import type { Outgoing } from "../../src/records/ports.ts";
import { renderer } from "../../src/text/render.ts";
import { listeningLog } from "../delivery/stand-ins.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "gleed-downtime-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** Gleed at an instant, over a network that can be cut. */
async function gleed(now: string, log = silent) {
  const sent: { at: string; kind: string; headline: string; outgoing: Outgoing }[] = [];
  let down = false;
  const core: Core = await openCore({
    database: join(folder, "gleed.sqlite"), settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: { lines: 0 }, ticking: false, stands_at_ms: Date.parse(now), log,
    outlets: [{
      network: "lines",
      async send(outgoing) {
        if (down) return { sent: false, retry: true, why: "no route" };
        sent.push({ at: new Date(core.now()).toISOString().slice(0, 16), kind: outgoing.key.split(":")[0] ?? "", headline: render(outgoing.answer.headline, { locale: "en-GB", system: "metric", timezone: "UTC" }), outgoing });
        return { sent: true, native_id: null };
      },
    }],
  });
  const render = renderer(core.texts);
  const say = (text: string) => core.receive({ adapter: "lines", native_id: `${now} ${text}`, identity: { network: "lines", id: "ana" }, place: { network: "lines", id: "ana", kind: "private", encrypted: null }, received_at_ms: core.now(), text });
  return { core, sent, say, cut: (now_down: boolean) => { down = now_down; }, text: (one: Outgoing) => JSON.stringify(one.answer.blocks) };
}
const REMINDERS = [
  "remind me every day at 9 to weigh the basket", "remind me on 27 November at 10 to ring the mason", "remind me on 28 November at 11 to order wood",
  "remind me every Friday at 12 to look at the stack", "remind me on 20 December at 9 to sharpen the axe",
];

describe("a machine that was off for nine days", () => {
  it("says once what came due meanwhile, each thing once, and goes on as if nothing had been", async () => {
    const before = await gleed("2026-11-25T16:00:00Z");
    for (const words of REMINDERS) await before.say(words);
    await before.core.close();
    const after = await gleed("2026-12-04T16:00:00Z");
    await after.core.advance(10 * 60_000);
    expect(after.sent.map(({ kind }) => kind)).toEqual(["digest"]);
    const [digest] = after.sent;
    for (const what of ["weigh the basket", "ring the mason", "order wood", "look at the stack"]) expect(after.text(digest?.outgoing as Outgoing).split(`"words":"${what}"`).length, what).toBeGreaterThan(1);
    expect(after.text(digest?.outgoing as Outgoing)).not.toContain("sharpen the axe");
    await after.core.advance(2 * DAY);
    expect(after.sent.slice(1).map(({ at, headline }) => `${at} ${headline}`)).toEqual(["2026-12-05T09:00 weigh the basket", "2026-12-06T09:00 weigh the basket"]);
    await after.core.close();
  });
  it("one late reminder is said by itself, with the time it was for", async () => {
    const before = await gleed("2026-11-25T16:00:00Z");
    await before.say("remind me on 27 November at 10 to ring the mason");
    await before.core.close();
    const after = await gleed("2026-12-04T16:00:00Z");
    await after.core.advance(10 * 60_000);
    expect(after.sent.map(({ headline }) => headline)).toEqual(["ring the mason"]);
    expect(after.text(after.sent[0]?.outgoing as Outgoing)).toContain("remind.now-late");
    await after.core.close();
  });
});

describe("a network that is down for two days", () => {
  it("nothing is lost, and it comes as one message when the network is back", async () => {
    const log = listeningLog();
    const world = await gleed("2026-11-25T16:00:00Z", log);
    for (const words of REMINDERS.slice(1, 4)) await world.say(words);
    world.cut(true);
    await world.core.advance(3 * DAY);
    expect(world.sent).toEqual([]);
    expect(log.lines.some(({ words, data }) => words === "sending failed, will try again" && data.why === "no route")).toBe(true);
    world.cut(false);
    await world.core.advance(HOUR);
    expect(world.sent.map(({ kind }) => kind)).toEqual(["digest"]);
    for (const what of ["ring the mason", "order wood", "look at the stack"]) expect(world.text(world.sent[0]?.outgoing as Outgoing)).toContain(what);
    await world.core.close();
  });
});

describe("a clock that was set back an hour between two starts", () => {
  it("says nothing twice", async () => {
    const before = await gleed("2026-11-25T16:00:00Z");
    await before.say("remind me tomorrow at 9 to weigh the basket");
    await before.core.advance(17 * HOUR + 60_000);
    expect(before.sent).toHaveLength(1);
    await before.core.close();
    const after = await gleed("2026-11-26T08:01:00Z");
    await after.core.advance(2 * HOUR);
    expect(after.sent).toEqual([]);
    await after.core.close();
  });
});
