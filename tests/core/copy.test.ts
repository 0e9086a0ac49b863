/** A person's own copy, and being forgotten, through the talk. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openCore, type Core } from "../../src/core/core.ts";
import { silent } from "../../src/delivery/log.ts";
import type { Message } from "../../src/message.ts";
import { writeDocument } from "../../src/pages/write.ts";
import { renderer } from "../../src/text/render.ts";

let folder: string;
let core: Core;
let count = 0;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "gleed-copy-"));
  core = await openCore({ database: join(folder, "gleed.sqlite"), settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: {}, ticking: false, stands_at_ms: Date.parse("2026-11-25T16:00:00Z"), log: silent, outlets: [] });
});
afterEach(async () => {
  await core.close();
  rmSync(folder, { recursive: true, force: true });
});
const put = (more: Partial<Message>, kind: "private" | "group" = "private", id = "ana") =>
  core.receive({ adapter: "lines", native_id: `${count++}`, identity: { network: "lines", id, name: id === "ana" ? "Ana Unmistakable" : "Ben" }, place: { network: "lines", id: kind === "private" ? id : "village", kind, encrypted: null }, received_at_ms: core.now(), ...more });

async function household(): Promise<void> {
  await put({ records: { timezone: "Europe/Helsinki", latitude: 60.2, longitude: 24.9, heater: { name: "Xylophone", max_load_kg: 14 }, fires: [{ lit_at: "2026-11-24T16:00:00Z", load_kg: 12.5, species: "birch", note: '=HYPERLINK("x"), "quoted"\nand a line' }, { lit_at: "2026-11-23T16:00:00Z" }] } });
  await put({ text: "remind me every first Sunday at 9 to polish the zither" });
  await put({ text: "the glass went black", picture: { name: "glass.png", media_type: "image/png", bytes: Buffer.from("unmistakable picture bytes") } });
}
const documents = ({ answer }: Awaited<ReturnType<typeof put>>) =>
  answer.blocks.flatMap((block) => (block.kind === "document" ? [writeDocument(block.document, renderer(core.texts), { locale: "en-GB", system: "metric", timezone: "UTC" })] : []));

describe("a copy of one's own", () => {
  it("holds everything as JSON, and the fires as a table a spreadsheet opens without running it", async () => {
    await household();
    const [json, csv] = documents(await put({ choice: "data:export" }));
    const copy = JSON.parse(json?.content ?? "") as Record<string, unknown[]>;
    expect(json).toMatchObject({ name: "my-records.json", media_type: "application/json" });
    for (const part of ["Xylophone", "polish the zither", "Ana Unmistakable", "birch"]) expect(json?.content).toContain(part);
    expect(copy.fires).toHaveLength(2);
    expect(csv).toMatchObject({ name: "my-fires.csv", media_type: "text/csv" });
    const [header, ...rows] = csv?.content.split("\r\n") ?? [];
    expect(header).toBe("lit_at,load_kg,species,moisture_pct_wet,stack,lit,air,flame_out_at,air_closed_at,damper_closed_at,bed_at_close,outside_C,note");
    expect(rows[0]).toBe("2026-11-23T16:00:00Z,,,,,,,,,,,,");
    expect(rows[1]).toContain(`2026-11-24T16:00:00Z,12.5,birch`);
    expect(rows[1]).toContain(`"'=HYPERLINK(""x"")`);
  });
  it("is made afresh each time and stored nowhere: a copy holds no copy", async () => {
    await household();
    const first = documents(await put({ choice: "data:export" }))[0]?.content.length ?? 0;
    for (const _ of [1, 2, 3]) await put({ text: "give me a copy of my data" });
    const [json] = documents(await put({ choice: "data:export" }));
    expect(json?.content.length).toBeLessThan(first * 1.6);
    expect(json?.content.split("polish the zither").length).toBeLessThan(6);
  });
  it("in a group there is none", async () => {
    await household();
    const answered = await put({ choice: "data:export" }, "group");
    expect(answered.answer.blocks).toEqual([]);
    expect(answered.answer.headline.id).toBe("data.private-only");
  });
});

describe("being forgotten, by talking", () => {
  it("asks once, and then not one byte is left in the file or its log", async () => {
    await household();
    await put({ text: "hello" }, "private", "ben");
    const there = (): string => readdirSync(folder).map((name) => readFileSync(join(folder, name), "latin1")).join("");
    expect(there()).toContain("polish the zither");
    expect((await put({ choice: "data:delete" })).answer.headline.id).toBe("data.delete-ask");
    expect((await put({ choice: "data:delete-yes" })).answer.headline.id).toBe("data.deleted");
    for (const trace of ["Unmistakable", "Xylophone", "zither", "HYPERLINK", "unmistakable picture bytes"]) expect(there(), trace).not.toContain(trace);
    expect(await core.exportPerson("lines", "ana")).toBeNull();
    expect(await core.exportPerson("lines", "ben")).not.toBeNull();
    expect((await put({ text: "show my reminders" })).answer.headline.args).toEqual({ count: 0 });
  });
});
