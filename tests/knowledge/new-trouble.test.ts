/** A new trouble is one file: loaded, asked about in its owner's words, walked, offered and listed, without a line of code. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadKnowledge } from "../../src/knowledge/load.ts";
import { writePages } from "../../src/pages/knowledge/write.ts";
import { openTalk, type Talk } from "../support/talk.ts";

const SHIPPED = fileURLToPath(new URL("../../knowledge", import.meta.url));
const FILE = `id: wobbly-bench
title: A heated bench that wobbles
symptom: The heated bench beside the heater moves or rocks when somebody sits down.
hazard: medium
cautions: [cracked]
first_of_all: [Nobody sits on it until it is known why.]
words: [bench wobbles, bench rocks, heated seat moves, bench gives way, seat is loose]
signs:
  people:
    ask: Does an alarm sound, or is anyone unwell?
    kind: yes-no
    first: true
    stop: { yes: { emergency: co-alarm } }
  gap:
    ask: Is there a gap between bench and heater that was not there before?
    kind: choice
    says: There is a new gap.
    answers:
      - { id: none, label: "No gap", words: [no gap, tight] }
      - { id: hair, label: A hairline }
      - { id: wide, label: "Wider than 3 mm", says: The gap is wider than 3 mm., words: [finger wide, wide gap] }
  floor:
    ask: Does the floor under it give when you step on it?
    kind: yes-no
    says: The floor gives.
causes:
  settled-floor:
    title: The floor has settled
    prior: 60
    why: A floor that settles takes the bench with it and leaves the heater standing on its own foundation.
    weighs: { floor: { yes: 8, no: 0.2 }, gap: { none: 0.4, hair: 1, wide: 2 } }
    now: [Keep people off the bench.]
    before_next_fire: [Have the builder look at the joint between bench and heater.]
    call: [builder]
    no_fire: true
    hazard: high
    source: common practice
  loose-slab:
    title: The seat slab is loose
    prior: 40
    why: The mortar under the slab has let go; the channel below stays whole.
    weighs: { floor: { yes: 0.3, no: 1.6 }, gap: { none: 3, hair: 1, wide: 0.3 } }
    now: [Keep people off the bench.]
    before_next_fire: [Have the slab bedded again.]
    call: [builder]
    source: common practice
near: [cracks]
sources: [common practice]
`;

let folder: string;
let talk: Talk;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "gleed-knowledge-"));
  cpSync(SHIPPED, folder, { recursive: true });
  writeFileSync(join(folder, "troubles", "wobbly-bench.yaml"), FILE);
  talk = await openTalk({ knowledge: folder });
});
afterAll(async () => {
  await talk.close();
  rmSync(folder, { recursive: true, force: true });
});

describe("a trouble nobody had thought of", () => {
  it.each(["our bench wobbles when I sit down", "The heated seat moves!", "benhc rocks since yesterday"])("%s", async (words) => {
    const answer = await talk.say(`someone ${words.length}`, words);
    expect(answer.topic).toBe("wobbly-bench");
    expect(answer.cautions.map(({ id }) => id)).toContain("cracked");
    expect(answer.question?.text).toBe("Does an alarm sound, or is anyone unwell?");
  });
  it("stands beside a topic that can hurt someone, never in its place", async () => {
    const answer = await talk.say("fay", "help, the bench gives way under grandpa");
    expect(answer.topic).toBe("children-and-clearance");
    expect(answer.also).toEqual(["wobbly-bench"]);
    expect(answer.choices).toContainEqual({ id: "topic:wobbly-bench", label: "A heated bench that wobbles" });
  });
  it("is walked: its question of life and limb first, then what tells most, to a cause with what to do", async () => {
    await talk.say("ana", "our bench wobbles");
    const gate = await talk.say("ana", "no, nobody");
    expect(gate.question?.text).toMatch(/floor under it give/);
    const end = await talk.say("ana", "yes");
    expect(end.causes[0]).toMatchObject({ id: "settled-floor", because: ["The floor gives."] });
    expect(end.text).toMatch(/No fire|no fire/);
    expect(end.text).toMatch(/Keep people off the bench/);
    expect(end.cautions.map(({ id }) => id)).toContain("cracked");
  });
  it("its emergency is the emergency", async () => {
    await talk.say("ben", "the bench wobbles");
    expect((await talk.say("ben", "yes, the alarm is sounding")).emergency).toBe(true);
  });
  it("is offered by help and by its button, and noted for the brief to the builder", async () => {
    const help = await talk.say("cleo", "help");
    expect(help.choices).toContainEqual({ id: "topic:wobbly-bench", label: "A heated bench that wobbles" });
    expect((await talk.choose("cleo", "topic:wobbly-bench")).topic).toBe("wobbly-bench");
    await talk.choose("cleo", "sign:wobbly-bench:people=no");
    expect((await talk.say("cleo", "brief for my builder")).text).toMatch(/A heated bench that wobbles/);
  });
  it("takes nothing away from the troubles there are, least of all those that hurt", async () => {
    for (const [words, topic] of [["my glass is black", "black-glass"], ["smoke comes out when I light it", "smoke-at-lighting"], ["a crack above the door", "cracks"], ["hot ash beside the bench", "ash-removal"]] as const) {
      expect((await talk.say("dan", words)).topic, words).toBe(topic);
    }
    expect((await talk.say("eve", "the bench wobbles and the co alarm is going off")).emergency).toBe(true);
  });
  it("stands on the page of the whole knowledge", async () => {
    const to = mkdtempSync(join(tmpdir(), "gleed-page-"));
    await writePages(await loadKnowledge(folder), folder, to);
    expect(readFileSync(join(to, "index.html"), "utf8")).toMatch(/id="trouble-wobbly-bench"[\s\S]*tree-wobbly-bench-t/);
    rmSync(to, { recursive: true });
  });
});
