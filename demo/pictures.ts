/** `node demo/pictures.ts`, part of `npm run docs`: the README's pictures, asked for by one of the invented community and drawn as for anybody. */
import { mkdir, writeFile } from "node:fs/promises";
import { openCore } from "../src/core/core.ts";
import { silent } from "../src/delivery/log.ts";
import { readerOf } from "../src/delivery/reader.ts";
import { draw, stopDrawing } from "../src/pictures/draw.ts";
import { renderer } from "../src/text/render.ts";
import { community, winters } from "./winters.ts";

const WHO = "maren";
const ASKED = {
  "heat-curve": "when is the heater warmest if I light 12 kg at 18:00 tomorrow?",
  "fire-plan": "plan my fires: tonight -3/1, Thu -4/0, Fri -7/-2, Sat -9/-4, Sun -4/1, Mon 1/5, Tue 2/6",
  drying: "birch split 10 cm thick, stacked 10 May 2026 at 45 % wet basis, covered on top: when will it be ready?",
} as const;
const FOLDER = new URL("./pictures/", import.meta.url);
const PATIENT_MS = 60_000;

const { people, talk_at, seed } = await community();
const start_ms = Date.parse(talk_at);
const member = people.find(({ id }) => id === WHO);
if (!member) throw new Error(`${WHO} has left the community`);
const core = await openCore({ database: ":memory:", settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: {}, log: silent, ticking: false, stands_at_ms: start_ms, outlets: [] });
const render = renderer(core.texts);
let count = 0;
const put = (more: object): ReturnType<typeof core.receive> =>
  core.receive({ adapter: "demo", native_id: `picture-${count++}`, received_at_ms: core.now(), identity: { network: "demo", id: WHO, name: WHO }, place: { network: "demo", id: WHO, kind: "private", encrypted: null }, ...more });

const { person, heater, house, wood, upkeep, alarms } = member;
await put({ records: { ...person, heater, house, wood, upkeep, alarms, fires: winters(member, start_ms, seed) } });
await mkdir(FOLDER, { recursive: true });
for (const [chart, question] of Object.entries(ASKED)) {
  const { answer, facts } = await put({ text: question });
  const reader = readerOf(facts, { locale: "en-GB", system: "metric", timezone: "UTC" });
  const block = answer.blocks.find((one) => one.kind === "picture" && one.picture.chart === chart);
  if (block?.kind !== "picture") throw new Error(`"${question}" was answered with ${answer.topic}, without a picture of ${chart}`);
  await writeFile(new URL(`${chart}.png`, FOLDER), await draw(block.picture, reader, PATIENT_MS));
  console.log(`${chart}: ${question}\n  ${render(block.picture.alt, reader)}`);
}
await core.close();
await stopDrawing();
