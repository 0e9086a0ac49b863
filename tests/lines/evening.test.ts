/** One evening through `lines`, with time moved on; then the same evening killed and started again at ten different moments, on both stores. */
import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pg from "pg";
import { afterAll, describe, expect, it } from "vitest";
import { startLines, type LinesProcess } from "./process.ts";

const NOW = "2026-11-25T17:30:00Z";
const say = (person: string, text: string) => ({ person, room: "private", text });
const press = (person: string, choose: string) => ({ person, room: "private", choose });

const EVENING: readonly unknown[] = [
  { person: "ana", room: "private", records: { heater: { kind: "contraflow", max_load_kg: 14, max_load_source: "sheet", shut_off_damper: true, gas_exit: "top" }, asleep: { from: "23:30", to: "06:30" }, wood: [{ species: "birch", moisture_pct_wet: 17, measured_on: "2026-11-01" }], alarms: { co: { present: true, room: "living room", tested_on: "2026-11-10", ends_on: "2031-01-01" } } } },
  { person: "ben", room: "private", records: { fires_heater_of: "ana" } },
  say("ana", "walk me through a fire"),
  press("ana", "guide:lit-now"),
  say("ben", "light a fire"),
  { advance: "PT25M" },
  press("ana", "guide:all-alight"),
  { advance: "PT50M" },
  say("ana", "small blue flames"),
  { advance: "PT20M" },
  say("ana", "no flames, raked together"),
  { advance: "PT12M" },
  press("ana", "guide:air-shut"),
  { advance: "PT1H" },
  say("ana", "still glowing a bit"),
  { advance: "PT40M" },
  say("ana", "raked, room dark, all black, co alarm works"),
  press("ana", "guide:damper-shut"),
  say("ana", "show my fires"),
  say("ben", "show my fires"),
  say("ben", "light a fire"),
];
/** Behind these lines the process is killed; a quick run takes three of the ten. */
const KILL_AFTER = process.env.GLEED_TEST_FULL ? [0, 2, 3, 5, 6, 8, 10, 12, 15, 17] : [2, 8, 15];

// biome-ignore lint/suspicious/noExplicitAny: the outside interface, read as an outsider reads it
type Out = any;
const POSTGRES = process.env.GLEED_TEST_POSTGRES;
/** A database of its own for each run: the clock starts at the latest instant that one holds. */
const BOTH: readonly { name: string; there: boolean; database: () => Promise<string> }[] = [
  { name: "SQLite", there: true, database: async () => join(folder, `${randomUUID()}.sqlite`) },
  {
    name: "PostgreSQL",
    there: POSTGRES !== undefined,
    async database() {
      const name = `evening_${randomUUID().replaceAll("-", "")}`;
      const client = new pg.Client({ connectionString: POSTGRES });
      await client.connect();
      await client.query(`create database ${name}`);
      await client.end();
      const url = new URL(POSTGRES as string);
      url.pathname = `/${name}`;
      return url.href;
    },
  },
];
const folder = mkdtempSync(join(tmpdir(), "gleed-evening-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Names are made new for each run where runs share a database. */
const named = (line: unknown, run: string): unknown => JSON.parse(JSON.stringify(line).replaceAll('"ana"', `"ana${run}"`).replaceAll('"ben"', `"ben${run}"`));

async function play(database: string, run: string, killAfter: number | null): Promise<Out[]> {
  const env = { GLEED_DATABASE: database, GLEED_NOW: NOW };
  let lines: LinesProcess = startLines(env);
  const out: Out[] = [];
  for (const [i, line] of EVENING.entries()) {
    out.push((await lines.ask(named(line, run))).value);
    if (i === killAfter) {
      await lines.kill();
      lines = startLines(env);
      // what is overdue comes now; nothing of it may be a repeat
      const overdue = (await lines.ask({ advance: "PT0S" })).value;
      expect(overdue.answers, `after a kill behind line ${i}`).toEqual([]);
    }
  }
  await lines.end();
  return out;
}

/** What of an output must be the same however often the process died: all but the names. */
const essence = (out: Out[], run: string): unknown =>
  JSON.parse(JSON.stringify(out.map((line) => (line.error ? line : line.answers.map((a: Out) => ({ at: a.at, topic: a.topic, headline: a.headline, text: a.text, numbers: a.numbers }))))).replaceAll(`ana${run}`, "ana").replaceAll(`ben${run}`, "ben"));

describe.each(BOTH)("an evening on $name", ({ name, there, database }) => {
  const maybe = there ? it : it.skip;

  maybe("runs from the match to the black bed", async () => {
    const out = await play(await database(), "0", null);
    const text = (i: number): string => out[i].answers.map((a: Out) => a.text).join("\n");
    expect(text(2)).toContain("match");
    expect(text(4)).toContain("A fire is burning already: ana0 lit it at 17:30");
    expect(out[4].answers[0].hazard).toBe(true);
    expect(out[5].answers.length).toBe(1);
    expect(text(5)).toContain("What do you see?");
    expect(text(8)).toContain("The air at the door stays open");
    expect(text(8)).not.toMatch(/may be (shut|closed)/);
    expect(text(10)).not.toContain("may be shut.");
    expect(text(14)).toContain("The flue damper stays open");
    expect(text(16)).toContain("damper may be closed");
    expect(text(17)).toContain("written down");
    for (const i of [18, 19]) expect(text(i)).toContain("birch");
    expect(text(18)).toContain("1 fire,");
    expect(text(20)).toContain("Not yet. The next fire can be lit from");
    for (const line of out) for (const a of line.answers ?? []) if (a.at) expect(a.text).not.toMatch(/time to close/i);
  }, 60_000);

  maybe(`killed and started again at ${KILL_AFTER.length} moments, loses and doubles nothing`, async () => {
    const plain = essence(await play(await database(), `${name}x`, null), `${name}x`);
    for (const [n, after] of KILL_AFTER.entries()) {
      const run = `${name}${n}`;
      expect(essence(await play(await database(), run, after), run), `killed behind line ${after}`).toEqual(plain);
    }
  }, 180_000);
});
