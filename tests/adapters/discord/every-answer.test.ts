/** Real answers as Discord messages: the demo's whole talk, every topic, every tree to its end, the widest table. Within limits, no caution lost. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { renderModal } from "../../../adapters/discord/modal.ts";
import { renderDiscord } from "../../../adapters/discord/render.ts";
import { labels, outline } from "../../../adapters/outline.ts";
import { plain } from "../../../adapters/plain.ts";
import { community, winters } from "../../../demo/winters.ts";
import { answer, type Answer, verbatim } from "../../../src/answer.ts";
import { openCore, type Core } from "../../../src/core/core.ts";
import { silent } from "../../../src/delivery/log.ts";
import { readerOf } from "../../../src/delivery/reader.ts";
import type { Message } from "../../../src/message.ts";
import { renderer, type Reader, type Renderer } from "../../../src/text/render.ts";
import { TOPICS } from "../../../src/topics.ts";
import { squeeze } from "../reading.ts";
import { modalOverLimits, overLimits } from "./limits.ts";
import { readMessages } from "./reader.ts";

const usual: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };
let core: Core;
let render: Renderer;
let count = 0;
const late: { answer: Answer; reader: Reader }[] = [];

beforeAll(async () => {
  const { talk_at } = await community();
  core = await openCore({
    database: ":memory:", settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: {}, log: silent, ticking: false, stands_at_ms: Date.parse(talk_at),
    outlets: [{
      network: "demo",
      async send(outgoing, reader) {
        late.push({ answer: outgoing.answer, reader });
        return { sent: true, native_id: null };
      },
    }],
  });
  render = renderer(core.texts);
});
afterAll(() => core.close());

async function put(who: string, more: Partial<Message>): Promise<{ answer: Answer; reader: Reader }> {
  const { answer: given, facts } = await core.receive({
    adapter: "demo", native_id: `demo-${count++}`, received_at_ms: core.now(), identity: { network: "demo", id: who, name: who }, place: { network: "demo", id: who, kind: "private", encrypted: null }, ...more,
  });
  return { answer: given, reader: readerOf(facts, usual) };
}

/** Everything that is wrong with an answer as messages. */
function wrongWith({ answer: given, reader }: { answer: Answer; reader: Reader }): string[] {
  const options = { render, reader, ref: "1234567890123456789" };
  const messages = renderDiscord(given, { ...options, share: true, ephemeral: true });
  const read = squeeze(readMessages(messages).text);
  const lost = given.cautions.filter((caution) => !read.includes(squeeze(plain(render(caution.text, reader)))));
  const modals = outline(given, options).forms.flatMap((form) => Array.from({ length: Math.ceil(form.fields.length / 5) }, (_, page) => renderModal(form, page, "1", labels(options))));
  return [...messages.flatMap(overLimits), ...modals.flatMap(modalOverLimits), ...lost.map(({ id }) => `caution ${id} is lost`)];
}
const choicesOf = ({ blocks }: Answer): string[] => blocks.flatMap((block) => (block.kind === "question" || block.kind === "choices" ? block.choices.map(({ id }) => id) : []));

test("the demo: two winters of everybody, then the whole talk", { timeout: 60_000 }, async () => {
  const { people, talk, talk_at, seed } = await community();
  let shown = 0;
  const check = (one: { answer: Answer; reader: Reader }): void => {
    shown += 1;
    expect(wrongWith(one)).toEqual([]);
  };
  for (const member of people) {
    const { id, person, heater, house, wood, upkeep, alarms, fires_heater_of } = member;
    const records = { ...person, ...(heater ? { heater } : {}), ...(house ? { house } : {}), ...(wood ? { wood } : {}), ...(upkeep ? { upkeep } : {}), ...(alarms ? { alarms } : {}), ...(fires_heater_of ? { fires_heater_of } : {}), fires: winters(member, Date.parse(talk_at), seed) };
    check(await put(id, { records }));
  }
  for (const turn of talk) {
    if (turn.passes) await core.advance(Temporal.Duration.from(turn.passes).total({ unit: "milliseconds" }));
    else if (turn.who) check(await put(turn.who, turn.says === undefined ? { choice: turn.presses ?? "" } : { text: turn.says }));
    for (const one of late.splice(0)) check(one);
  }
  expect(shown).toBeGreaterThan(10);
});

test("every topic, and every tree followed to its end with nothing known", { timeout: 120_000 }, async () => {
  let longest = 0;
  for (const topic of TOPICS) {
    const who = `new-${topic}`;
    let one = await put(who, { choice: `topic:${topic}` });
    const seen = new Set<string>();
    for (let steps = 0; steps < 30; steps++) {
      expect(wrongWith(one), topic).toEqual([]);
      longest = Math.max(longest, steps);
      const unknown = choicesOf(one.answer).find((id) => id.startsWith("sign:") && id.endsWith("=?") && !seen.has(id));
      if (unknown === undefined) break;
      seen.add(unknown);
      one = await put(who, { choice: unknown });
    }
  }
  expect(longest).toBeGreaterThan(2);
});

test("the widest table, the longest list of causes, thirty choices", () => {
  const wide = answer({
    topic: "show-fires", headline: verbatim("wide"), blocks: [
      { kind: "table", cautions: [], columns: Array.from({ length: 14 }, (_, at) => verbatim(`column ${at} with a long name`)), rows: Array.from({ length: 60 }, (_, row) => Array.from({ length: 14 }, (_cell, at) => verbatim(`cell ${row}/${at} ${"wide ".repeat(6)}`))) },
      { kind: "causes", cautions: [], items: Array.from({ length: 40 }, (_, at) => ({ id: `c${at}`, title: verbatim(`cause ${at}`), share: 1 / 40, because: [verbatim("because ".repeat(20))] })) },
      { kind: "choices", cautions: [], choices: Array.from({ length: 30 }, (_, at) => ({ id: `sign:x:y=${at}`, label: verbatim(`choice ${at}`) })) },
    ],
  }, new Map());
  expect(wrongWith({ answer: wide, reader: usual })).toEqual([]);
});
