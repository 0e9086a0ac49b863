/**
 * `node tests/adapters/discord/phone.ts out.html`: real answers laid out as a phone of 400 CSS pixels lays out Components V2 (text column
 * beside the picture of whoever speaks, bars, rows of buttons that wrap), in a plain look of our own, to be looked at:
 *   chromium --headless --hide-scrollbars --window-size=2096,1700 --screenshot=demo/pictures/discord-phone.png out.html
 */
import { writeFileSync } from "node:fs";
import type { Component } from "../../../adapters/discord/api.ts";
import { renderDiscord } from "../../../adapters/discord/render.ts";
import type { Answer } from "../../../src/answer.ts";
import { openCore } from "../../../src/core/core.ts";
import { silent } from "../../../src/delivery/log.ts";
import { readerOf } from "../../../src/delivery/reader.ts";
import { fileFor } from "../../../src/pictures/album.ts";
import { renderer, type Reader } from "../../../src/text/render.ts";
import { community, winters } from "../../../demo/winters.ts";

const SAYS: readonly { readonly asks: string; readonly text?: string; readonly choice?: string }[] = [
  { asks: "/ask when is the heater warmest?", text: "when is the heater warmest if I burn 12 kg at 18:00?" },
  { asks: "/ask why is my glass black?", text: "why is my glass black?" },
  { asks: "@Gleed the CO alarm is going off", text: "the CO alarm is going off" },
  { asks: "/fires", choice: "topic:show-fires" },
  { asks: "/fire", choice: "topic:light-fire" },
];

const html = (words: string): string => words.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");

/** The Markdown that the adapter writes, and no more. */
function markdown(content: string): string {
  return content.split(/(```\n[\s\S]*?\n```)/).map((piece, at) => {
    if (at % 2 === 1) return `<pre>${html(piece.slice(4, -4))}</pre>`;
    const kept: string[] = [];
    const bare = piece.replace(/\\([^0-9A-Za-z\s])/g, (_, mark: string) => String.fromCharCode(0xe000 + kept.push(mark) - 1));
    const inline = (line: string): string => html(line).replace(/\*\*(.+?)\*\*/g, "<b>$1</b>");
    const lines = bare.split("\n").filter((line, i, all) => line !== "" || (i > 0 && i < all.length - 1)).map((line) => {
      const head = /^(#{1,3}) (.*)$/.exec(line);
      if (head) return `<div class="h${head[1]?.length}">${inline(head[2] ?? "")}</div>`;
      if (line.startsWith("-# ")) return `<div class="small">${inline(line.slice(3))}</div>`;
      if (line.startsWith("> ")) return `<div class="quote">${inline(line.slice(2))}</div>`;
      const item = /^( *)(-|\d+\.) (.*)$/.exec(line);
      if (item) return `<div class="item" style="margin-left:${8 + (item[1]?.length ?? 0) * 8}px"><span>${item[2] === "-" ? "•" : item[2]}</span><span>${inline(item[3] ?? "")}</span></div>`;
      return `<div>${inline(line) || "&nbsp;"}</div>`;
    });
    return lines.join("").replace(/[\uE000-\uF8FF]/g, (mark) => html(kept[mark.charCodeAt(0) - 0xe000] ?? mark));
  }).join("");
}

function component(one: Component, files: ReadonlyMap<string, string>): string {
  switch (one.type) {
    case 10:
      return `<div class="text">${markdown(one.content)}</div>`;
    case 17:
      return `<div class="box" style="border-color:#${(one.accent_color ?? 0x888888).toString(16).padStart(6, "0")}">${one.components.map((inner) => component(inner, files)).join("")}</div>`;
    case 1:
      return `<div class="row">${one.components.map((part) => (part.type === 2 ? `<span class="button">${html(part.label)}</span>` : `<span class="select">${html(part.placeholder ?? "")} ⌄</span>`)).join("")}</div>`;
    case 12:
      return one.items.map((item) => `<img src="file://${files.get(item.media.url.replace("attachment://", ""))}" alt="${html(item.description ?? "")}">`).join("");
    default:
      return "";
  }
}

const { people, talk_at, seed } = await community();
const core = await openCore({ database: ":memory:", settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: {}, log: silent, ticking: false, stands_at_ms: Date.parse(talk_at), outlets: [] });
const render = renderer(core.texts);
const usual: Reader = { locale: "en-GB", system: "metric", timezone: "UTC" };
let count = 0;
const put = (who: string, more: object): ReturnType<typeof core.receive> => core.receive({ adapter: "demo", native_id: `p${count++}`, received_at_ms: core.now(), identity: { network: "demo", id: who, name: who }, place: { network: "demo", id: who, kind: "private", encrypted: null }, ...more });

const member = people.find((one) => one.heater && one.wood);
if (!member) throw new Error("nobody in the demo has a heater");
const { id, person, heater, house, wood, upkeep, alarms } = member;
await put(id, { records: { ...person, heater, ...(house ? { house } : {}), ...(wood ? { wood } : {}), ...(upkeep ? { upkeep } : {}), ...(alarms ? { alarms } : {}), fires: winters(member, Date.parse(talk_at) - 2 * 86_400_000, seed) } });

const columns: string[] = [];
for (const { asks, ...more } of SAYS) {
  const { answer, facts } = await put(id, more);
  const reader = readerOf(facts, usual);
  const blocks = await Promise.all(answer.blocks.map(async (block) => (block.kind === "picture" ? { ...block, picture: { ...block.picture, file: await fileFor(block.picture, reader, "/tmp/gleed-phone-pictures") } } : block)));
  const messages = renderDiscord({ ...answer, blocks } as Answer, { render, reader, ref: "1", ephemeral: true, share: !answer.emergency && answer.live === undefined });
  const body = messages.map(({ payload, files }) => payload.components.map((one) => component(one, new Map(files.flatMap((file) => ("path" in file ? [[file.name, file.path] as const] : []))))).join("")).join('<hr>');
  columns.push(`<section><p class="asks">${html(asks)}</p><div class="said"><i></i><div><b class="who">Gleed</b>${body}</div></div></section>`);
}
await core.close();

const STYLE = `
body{margin:0;display:flex;gap:16px;padding:16px;background:#cfcfd4;font:16px/1.35 "DejaVu Sans","Liberation Sans",sans-serif;color:#1d1d22;align-items:flex-start}
section{width:400px;box-sizing:border-box;background:#fff;padding:12px;flex:none}
.asks{margin:0 0 10px;color:#55555c;font-size:14px}
.said{display:flex;gap:12px}.said>i{flex:none;width:40px;height:40px;border-radius:50%;background:#b9b9c2}.said>div{min-width:0;flex:1}
.who{display:block;margin-bottom:4px}.text{margin:4px 0;overflow-wrap:anywhere}
.box{border-left:4px solid;background:#f3f3f5;border-radius:6px;padding:6px 10px;margin:6px 0}
.h2{font-size:20px;font-weight:700;margin:6px 0}.h3{font-size:17px;font-weight:700;margin:6px 0}.small{font-size:13px;color:#55555c}.quote{border-left:3px solid #b9b9c2;padding-left:8px}
.item{display:flex;gap:6px}.item>:first-child{flex:none}pre{margin:4px 0;padding:6px;background:#f0f0f2;border:1px solid #ddd;font:11.5px/1.35 "DejaVu Sans Mono",monospace;white-space:pre-wrap;overflow-wrap:anywhere}
.row{display:flex;flex-wrap:wrap;gap:6px;margin:6px 0}.button,.select{background:#e3e3e8;border-radius:6px;padding:6px 12px;font-size:14px}.select{flex:1}
img{max-width:100%;border-radius:6px;margin:4px 0}hr{border:0;border-top:1px dashed #bbb}`;
writeFileSync(process.argv[2] ?? "phone.html", `<!doctype html><meta charset="utf-8"><title>Answers at 400 px</title><style>${STYLE}</style>${columns.join("")}`);
// the worker that draws would keep the process alive
process.exit(0);
