/** `npm run demo`: sets up the invented community with its two winters, then plays the talk in community.yaml as a terminal would show it. */
import { renderTerminal } from "../adapters/terminal/render.ts";
import { openCore } from "../src/core/core.ts";
import { silent } from "../src/delivery/log.ts";
import { readerOf } from "../src/delivery/reader.ts";
import type { Message } from "../src/message.ts";
import { renderer, type Reader } from "../src/text/render.ts";
import { community, winters } from "./winters.ts";

const { people, talk, talk_at, seed } = await community();
const start_ms = Date.parse(talk_at);
const usual: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };
let shown: { who: string; lines: string[] }[] = [];
const core = await openCore({
  database: ":memory:", settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: {}, log: silent, ticking: false, stands_at_ms: start_ms,
  outlets: [{
    network: "demo",
    async send(outgoing, reader) {
      shown.push({ who: outgoing.network_place_id, lines: lines(outgoing.answer, reader) });
      return { sent: true, native_id: null };
    },
  }],
});
const render = renderer(core.texts);
const screen = { columns: 80, colour: false };
const lines = (answer: Parameters<typeof renderTerminal>[0], reader: Reader): string[] => [...renderTerminal(answer, { render, reader, maybe_repeat: false, first_number: 1 }, screen).lines];

let count = 0;
const message = (who: string, more: Partial<Message>): Message => ({
  adapter: "demo", native_id: `demo-${count++}`, received_at_ms: core.now(), identity: { network: "demo", id: who, name: who },
  place: { network: "demo", id: who, kind: "private", encrypted: null }, ...more,
});
async function say(who: string, more: Partial<Message>): Promise<void> {
  const { answer, facts } = await core.receive(message(who, more));
  console.log(lines(answer, readerOf(facts, usual)).join("\n"));
}
const rule = (words: string): void => console.log(`\n${"·".repeat(6)} ${words} ${"·".repeat(Math.max(0, 70 - words.length))}\n`);

console.log(`The Two Winters: ${people.length} invented people, two winters of fires each (seed ${seed}).`);
for (const member of people) {
  const fires = winters(member, start_ms, seed);
  const { id, person, heater, house, wood, upkeep, alarms, fires_heater_of, story } = member;
  const records = { ...person, ...(heater ? { heater } : {}), ...(house ? { house } : {}), ...(wood ? { wood } : {}), ...(upkeep ? { upkeep } : {}), ...(alarms ? { alarms } : {}), ...(fires_heater_of ? { fires_heater_of } : {}), fires };
  const { answer } = await core.receive(message(id, { records }));
  const problems = answer.blocks.find((block) => block.kind === "steps" && block.title?.id === "records.problems");
  if (problems) throw new Error(`the demo's records of ${id} do not fit: ${JSON.stringify(problems)}`);
  console.log(`  ${id}: ${story}${fires.length > 0 ? `; ${fires.length} fires` : ""}`);
}
for (const turn of talk) {
  if (turn.passes) {
    shown = [];
    const from = core.now();
    await core.advance(Temporal.Duration.from(turn.passes).total({ unit: "milliseconds" }));
    for (const one of shown) {
      rule(`to ${one.who}, by itself`);
      console.log(one.lines.join("\n"));
    }
    rule(`${Math.round((core.now() - from) / 60_000)} minutes later`);
  } else if (turn.who && turn.says) {
    rule(`${turn.who}: ${turn.says}`);
    await say(turn.who, { text: turn.says });
  } else if (turn.who && turn.presses) {
    rule(`${turn.who} presses ${turn.presses}`);
    await say(turn.who, { choice: turn.presses });
  }
}
await core.close();
