import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough } from "node:stream";
import { afterEach, expect, test } from "vitest";
import { type Answer, answer, ask, say, verbatim } from "../../../src/answer.ts";
import type { Message } from "../../../src/message.ts";
import type { Outgoing } from "../../../src/records/ports.ts";
import type { Core } from "../../../adapters/adapter.ts";
import { readHistory } from "../../../adapters/terminal/history.ts";
import { type Terminal, terminal, type TerminalOptions } from "../../../adapters/terminal/index.ts";
import { three } from "../three-answers.ts";
import { reader, render } from "../words.ts";

const hello = answer({ topic: "help", headline: verbatim("Hello to you"), blocks: [] }, new Map());
const piles = answer(
  {
    topic: "help",
    headline: verbatim("Two piles"),
    blocks: [
      ask("pile", verbatim("Which one?"), [
        { id: "north", label: verbatim("North wall") },
        { id: "shed", label: verbatim("Shed") },
      ]),
    ],
  },
  new Map(),
);
const guide = (minute: number, choice = "a"): Answer =>
  answer(
    {
      topic: "light-fire",
      live: "g",
      headline: verbatim(`Minute ${minute}`),
      blocks: [say(verbatim("Burning.")), ask("q", verbatim("Well?"), [{ id: choice, label: verbatim("Caught") }])],
    },
    new Map(),
  );

const warm = answer(
  {
    topic: "heat-curve",
    headline: verbatim("Warmest at ten"),
    blocks: [{ kind: "picture", cautions: [], picture: { chart: "heat-curve", data: {}, alt: verbatim("Warm from eight to noon.") } }],
  },
  new Map(),
);

interface Drive {
  readonly got: Message[];
  readonly adapter: Terminal;
  readonly input: PassThrough;
  readonly shown: () => string;
  type(keys: string): Promise<void>;
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 15));

async function drive(
  reply: (message: Message) => Answer | Promise<Answer>,
  { tty = false, columns = 80, ...more }: Partial<TerminalOptions> & { tty?: boolean; columns?: number } = {},
): Promise<Drive> {
  const input = Object.assign(new PassThrough(), { isTTY: tty, setRawMode: () => input });
  const output = Object.assign(new PassThrough(), { isTTY: tty, columns, rows: 50 });
  let shown = "";
  output.on("data", (chunk) => {
    shown += chunk;
  });
  const got: Message[] = [];
  const core: Core = {
    emergency: (message) => (/alarm/.test(message.text ?? "") ? { answer: three.emergency, reader } : null),
    async receive(message) {
      got.push(message);
      return { answer: await reply(message), reader };
    },
  };
  const adapter = terminal({ stdin: input, stdout: output, render, reader, person: { id: "ana" }, session: "s", now: () => 7, ...more });
  await adapter.start(core);
  return {
    got,
    adapter,
    input,
    shown: () => shown,
    async type(keys) {
      input.write(keys);
      await settled();
    },
  };
}
const outgoing = (one: Answer, maybe_repeat = false): Outgoing => ({ answer: one, maybe_repeat }) as Outgoing;

test("piped: each line is a message with an id of its own, answered in order, until the input ends", async () => {
  const talk = await drive((message) => (message.text === "piles" ? piles : hello));
  talk.input.end("piles\n2\n\nnice");
  await talk.adapter.ended;
  expect(talk.got.map(({ native_id, text, choice }) => ({ native_id, text, choice }))).toEqual([
    { native_id: "s-1", text: "piles", choice: undefined },
    { native_id: "s-2", text: undefined, choice: "shed" },
    { native_id: "s-4", text: "nice", choice: undefined },
  ]);
  expect(talk.got[0]).toMatchObject({
    adapter: "terminal",
    identity: { network: "terminal", id: "ana" },
    place: { kind: "private" },
    received_at_ms: 7,
  });
  expect(talk.shown()).toBe(
    "Two piles\n\nWhich one?\n  1  North wall\n  2  Shed\nType a number, or the words.\n\nHello to you\n\nHello to you\n\n",
  );
});

test("nothing typed: the greeting, and the end", async () => {
  const talk = await drive(() => hello, { greeting: verbatim("Good evening.") });
  talk.input.end();
  await talk.adapter.ended;
  expect(talk.shown()).toBe("Good evening.\n\n");
});

test("danger is answered while an earlier line hangs, and the late answer takes none of its numbers", async () => {
  const hanging = Promise.withResolvers<Answer>();
  const talk = await drive(
    (message) => (message.text === "slow" ? hanging.promise : message.emergency_answered ? three.emergency : hello),
    { tty: true },
  );
  await talk.type("slow\r");
  await talk.type("the alarm sounds\r");
  expect(talk.shown()).toContain("Get everyone out now");
  hanging.resolve(piles);
  await settled();
  expect(talk.shown()).toContain("  3  North wall");
  await talk.type("1\r");
  expect(talk.got.map((one) => one.choice ?? one.text)).toEqual(["slow", "the alarm sounds", "yes"]);
  expect(talk.got[1]?.emergency_answered).toBe("co-alarm");
  expect(talk.shown().split("Get everyone out now")).toHaveLength(2);
});

test("piped danger does not wait behind a line that hangs", async () => {
  const talk = await drive(() => new Promise<Answer>(() => {}));
  talk.input.write("hello\nthe alarm sounds\n");
  await new Promise((resolve) => setTimeout(resolve, 400));
  expect(talk.shown().startsWith("Get everyone out now")).toBe(true);
});

test("a failing core is said, and the talk goes on", async () => {
  const errors: unknown[] = [];
  const talk = await drive(
    (message) => {
      if (message.text === "fail") throw new Error("no");
      return hello;
    },
    { onError: (error) => errors.push(error) },
  );
  talk.input.end("fail\nagain\n");
  await talk.adapter.ended;
  expect(talk.shown()).toBe("That could not be answered just now. Please say it again.\n\nHello to you\n\n");
  expect(errors).toHaveLength(1);
});

test("a form is one question at a time; danger breaks it off and it goes on where it was", async () => {
  const talk = await drive((message) => (message.form ? hello : message.emergency_answered ? three.emergency : three.checkIn), {
    tty: true,
  });
  await talk.type("write\r");
  await talk.type("5\r");
  await talk.type("13 kg\r");
  await talk.type("the alarm sounds\r");
  await talk.type("write\r");
  await talk.type("5\r");
  await talk.type("nonsense\r");
  expect(talk.shown()).toContain("Type a number from 1 to 2, or one of the words.");
  for (const line of ["2", "", "back", "15", "stop"]) await talk.type(`${line}\r`);
  expect(talk.got.at(-1)?.form).toEqual({ id: "fire", values: { load_kg: "13 kg", species: "spruce", moisture_pct_wet: "15" } });
});

test("on a terminal a live answer is put in its own place; after other words it is printed again", async () => {
  const talk = await drive(() => guide(0), { tty: true });
  await talk.type("guide\r");
  const before = talk.shown().length;
  await talk.adapter.send(outgoing(guide(5)), reader);
  const update = talk.shown().slice(before);
  expect(update).toMatch(/\u001B\[8A[\s\S]*Minute 5/);
  await talk.adapter.send(outgoing(hello), reader);
  const later = talk.shown().length;
  await talk.adapter.send(outgoing(guide(9), true), reader);
  expect(talk.shown().slice(later)).not.toMatch(/\u001B\[\d+A/);
  expect(talk.shown()).toContain("This may have reached you already.");
});

test("a half-typed line outlives a message that comes by itself", async () => {
  const talk = await drive(() => hello, { tty: true });
  await talk.type("half a");
  await talk.adapter.send(outgoing(piles), reader);
  await talk.type(" line\r");
  expect(talk.got[0]?.text).toBe("half a line");
});

test("Ctrl-C puts the line aside where the up arrow finds it; twice on an empty line leaves", async () => {
  const talk = await drive(() => hello, { tty: true });
  await talk.type("precious");
  await talk.type("\u0003");
  expect(talk.shown()).toContain("the up arrow brings it back");
  await talk.type("\u001B[A\r");
  expect(talk.got.map((one) => one.text)).toEqual(["precious"]);
  await talk.type("\u0003");
  expect(talk.shown()).toContain("Press Ctrl-C once more");
  await talk.type("\u0003");
  await talk.adapter.ended;
  expect(await talk.adapter.send(outgoing(hello), reader)).toEqual({ sent: true, native_id: null });
});

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

test("typed lines are found again at the next start, by nobody else; without a file none are kept", async () => {
  const folder = mkdtempSync(join(tmpdir(), "typed-"));
  folders.push(folder);
  const history = join(folder, "state", "typed-lines");
  const first = await drive(() => hello, { tty: true, history });
  await first.type("one\rtwo\rbye\r");
  await first.adapter.ended;
  expect(readFileSync(history, "utf8")).toBe("one\ntwo\n");
  expect(statSync(history).mode & 0o077).toBe(0);
  const second = await drive(() => hello, { tty: true, history });
  await second.type("\u001B[A\u001B[A\r");
  expect(second.got[0]?.text).toBe("one");
  await second.adapter.stop();
  expect(readHistory(join(folder, "none"))).toEqual([]);
});

test("a picture is kept as a file: its words and where it lies are shown, in answers and in what comes by itself", async () => {
  const asked: string[] = [];
  const draw: NonNullable<TerminalOptions["draw"]> = async ({ chart }) => {
    asked.push(chart);
    return "/home/ana/pictures/heat-curve.png";
  };
  const talk = await drive(() => warm, { draw });
  talk.input.write("when is it warmest?\n");
  await settled();
  expect(talk.shown()).toBe("Warmest at ten\n\nPicture: Warm from eight to noon.\nSaved as /home/ana/pictures/heat-curve.png\n\n");
  await talk.adapter.send(outgoing(warm), reader);
  expect(talk.shown().split("Saved as /home/ana/pictures/heat-curve.png")).toHaveLength(3);
  expect(asked).toEqual(["heat-curve", "heat-curve"]);
});

test("a picture that cannot be drawn is given in words, and danger behind it does not wait", async () => {
  const drawing = Promise.withResolvers<string>();
  const errors: unknown[] = [];
  const talk = await drive((message) => (message.emergency_answered ? three.emergency : warm), { tty: true, draw: () => drawing.promise, onError: (error) => errors.push(error) });
  await talk.type("when is it warmest?\r");
  await talk.type("the alarm sounds\r");
  expect(talk.shown()).toContain("Get everyone out now");
  expect(talk.shown()).not.toContain("Picture:");
  drawing.reject(new Error("no pen"));
  await settled();
  expect(talk.shown()).toContain("Picture: Warm from eight to noon.");
  expect(talk.shown()).not.toContain("Drawn in");
  expect(errors.map(String)).toEqual(["Error: no pen"]);
});
