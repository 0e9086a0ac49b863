/** Twenty answers as a person sees them in the terminal, for knowledge/ANSWERS.md: `npm run docs`. */
import { renderTerminal } from "../../adapters/terminal/render.ts";
import { openCore, type Core } from "../../src/core/core.ts";
import { silent } from "../../src/delivery/log.ts";
import { readerOf } from "../../src/delivery/reader.ts";
import type { Message } from "../../src/message.ts";
import { renderer } from "../../src/text/render.ts";

const NOW = "2026-11-25T20:00:00Z";
const EVENING = {
  units: "metric", country: "FI", timezone: "Europe/Helsinki", asleep: { from: "23:30", to: "06:30" },
  heater: { name: "the heater", kind: "contraflow", max_load_kg: 16, max_load_source: "sheet", gas_exit: "top", shut_off_damper: true, bypass_damper: true, grate: false, masonry_kg: 2800 },
  house: { heat_loss_W_per_K: 190, wanted_C: 21, vented_hood: true, hood_interlock: false, ventilation: "extract" },
  wood: [{ species: "birch", moisture_pct_wet: 17, basket_kg: 8 }],
  alarms: { co: { present: true, room: "living room", tested_on: "2026-11-20", ends_on: "2031-05-01" } },
  weather: { low_C: -9, high_C: -3 },
};
const FIRES = { fires: [{ lit_at: "2026-11-24T16:00:00Z", load_kg: 6, moisture_pct_wet: 27, species: "birch" }, { lit_at: "2026-11-23T16:00:00Z", load_kg: 12, moisture_pct_wet: 17, damper_closed_at: "2026-11-23T19:40:00Z", bed_at_close: "black" }] };
const DEEP = { weather: { low_C: -26, high_C: -19 } };

interface Asked {
  readonly words: string;
  readonly records?: readonly Record<string, unknown>[];
}
/** What somebody might write late in the evening, cold, worried or both. */
export const ASKED: readonly Asked[] = [
  { words: "how much wood should I put in tonight?", records: [EVENING] },
  { words: "the CO alarm is going off" },
  { words: "there is a roaring noise in the chimney and sparks on the roof" },
  { words: "smoke is coming into the room while I light it" },
  { words: "can I close the damper now? I want to go to bed" },
  { words: "the embers still glow a little but no flames, can I shut the slide?" },
  { words: "why did my glass go black last night?", records: [EVENING, FIRES] },
  { words: "walk me through a fire", records: [EVENING] },
  { words: "the fire keeps going out after ten minutes" },
  { words: "the heater is already cold in the morning", records: [EVENING, FIRES] },
  { words: "it roars and burns far too fast", records: [EVENING] },
  { words: "minus 26 tonight and one fire is not enough", records: [EVENING, DEEP] },
  { words: "it is 14 degrees outside and it does not draw" },
  { words: "should I add more wood now, it is down to embers" },
  { words: "I put the ash in a cardboard box on the porch" },
  { words: "my daughter touched the oven door and burnt her hand" },
  { words: "there is a new crack next to the door" },
  { words: "the power is out, can I still heat?", records: [EVENING] },
  { words: "my moisture meter says 22, is the birch dry enough?" },
  { words: "the door bangs open with a puff of flame" },
];

export async function answersMarkdown(columns = 84): Promise<string> {
  const parts: string[] = [];
  for (const [at, asked] of ASKED.entries()) {
    const core = await openCore({ database: ":memory:", settings: { timezone: "Europe/Helsinki", locale: "en-GB" }, windows_ms: {}, log: silent, ticking: false, stands_at_ms: Date.parse(NOW), outlets: [] });
    for (const [i, records] of (asked.records ?? []).entries()) await core.receive(message(`${at}-records-${i}`, { records }));
    parts.push(`## ${at + 1}. ${asked.words}\n\n\`\`\`text\n${await shown(core, message(`${at}`, { text: asked.words }), columns)}\n\`\`\``);
    await core.close();
  }
  return `# Twenty answers, as the terminal shows them

Made by \`npm run docs\`. Each is asked afresh, at ten in the evening; some people have told Gleed about their heater, some have not. They are read
and mended by one measure: is an owner who is cold and worried helped in ten seconds?

${parts.join("\n\n")}
`;
}

const message = (native_id: string, more: Partial<Message>): Message => ({
  adapter: "docs", native_id, identity: { network: "docs", id: "ana" }, place: { network: "docs", id: "ana", kind: "private", encrypted: null }, received_at_ms: Date.parse(NOW), ...more,
});

async function shown(core: Core, one: Message, columns: number): Promise<string> {
  const { answer, facts } = await core.receive(one);
  const reader = readerOf(facts, { locale: "en-GB", system: "metric", timezone: "Europe/Helsinki" });
  return renderTerminal(answer, { render: renderer(core.texts), reader }, { columns, colour: false }).lines.join("\n");
}
