/** A headless Chromium, spoken to in its DevTools protocol. https://chromedevtools.github.io/devtools-protocol/ */
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";

const PLACES = [process.env.GLEED_TEST_CHROMIUM, "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
export const chromium = PLACES.find((place) => place !== undefined && existsSync(place));

export interface Page {
  /** what went wrong in the page so far: errors of scripts, and what the console or the security policy complained of */
  readonly complaints: readonly string[];
  open(url: string): Promise<void>;
  size(width: number, height: number, phone?: boolean): Promise<void>;
  scripts(on: boolean): Promise<void>;
  scheme(which: "light" | "dark"): Promise<void>;
  media(which: "print" | "screen"): Promise<void>;
  /** an expression worked out in the page */
  value<T>(expression: string): Promise<T>;
  press(key: string): Promise<void>;
  write(words: string): Promise<void>;
  shot(): Promise<Buffer>;
  pdf(): Promise<Buffer>;
}
export interface Browser {
  page(): Promise<Page>;
  close(): Promise<void>;
}

type Params = Record<string, unknown>;
interface Told {
  readonly id?: number;
  readonly method?: string;
  readonly params?: Params;
  readonly result?: Params;
  readonly error?: { readonly message: string };
  readonly sessionId?: string;
}

export async function openBrowser(): Promise<Browser> {
  if (!chromium) throw new Error("no Chromium here");
  const profile = mkdtempSync(join(tmpdir(), "gleed-chromium-"));
  const child = spawn(chromium, ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run", "--remote-debugging-port=0", `--user-data-dir=${profile}`, "about:blank"], { stdio: ["ignore", "ignore", "pipe"] });
  const url = await new Promise<string>((found, failed) => {
    child.once("exit", (code) => failed(new Error(`Chromium ended with ${code}`)));
    child.once("error", failed);
    createInterface({ input: child.stderr }).on("line", (line) => {
      const at = /DevTools listening on (ws:\S+)/.exec(line)?.[1];
      if (at) found(at);
    });
  });
  const socket = new WebSocket(url);
  await new Promise((opened, failed) => {
    socket.addEventListener("open", opened, { once: true });
    socket.addEventListener("error", () => failed(new Error("Chromium does not speak")), { once: true });
  });
  const waiting = new Map<number, { done(result: Params): void; failed(error: Error): void }>();
  const listeners = new Set<(told: Told) => void>();
  socket.addEventListener("message", ({ data }) => {
    const told = JSON.parse(String(data)) as Told;
    const asked = told.id === undefined ? undefined : waiting.get(told.id);
    if (told.id !== undefined) waiting.delete(told.id);
    if (asked && told.error) asked.failed(new Error(told.error.message));
    else if (asked) asked.done(told.result ?? {});
    else for (const listener of listeners) listener(told);
  });
  let last = 0;
  const send = (method: string, params: Params = {}, sessionId?: string): Promise<Params> =>
    new Promise((done, failed) => {
      const id = ++last;
      waiting.set(id, { done, failed });
      socket.send(JSON.stringify({ id, method, params, ...(sessionId ? { sessionId } : {}) }));
    });
  return {
    async page() {
      const { targetId } = await send("Target.createTarget", { url: "about:blank" });
      const { sessionId } = await send("Target.attachToTarget", { targetId, flatten: true });
      return pageOf((method, params) => send(method, params, String(sessionId)), (listener) => listeners.add((told) => (told.sessionId === sessionId ? listener(told) : undefined)));
    },
    async close() {
      await send("Browser.close").catch(() => {});
      socket.close();
      if (child.exitCode === null) await new Promise((ended) => child.once("exit", ended));
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

async function pageOf(send: (method: string, params?: Params) => Promise<Params>, listen: (listener: (told: Told) => void) => void): Promise<Page> {
  const complaints: string[] = [];
  let loaded: (() => void) | null = null;
  listen(({ method, params = {} }) => {
    if (method === "Page.loadEventFired" || method === "Page.navigatedWithinDocument") loaded?.();
    if (method === "Runtime.exceptionThrown") complaints.push(JSON.stringify(params.exceptionDetails));
    if (method === "Runtime.consoleAPICalled" && (params.type === "error" || params.type === "warning")) complaints.push(JSON.stringify(params.args));
    if (method === "Log.entryAdded") complaints.push(String((params.entry as { text?: string }).text));
    if (method === "Network.requestWillBeSent" && !/^(?:file|data|about):/.test(String((params.request as { url?: string }).url))) complaints.push(`it asked the network for ${(params.request as { url?: string }).url}`);
  });
  for (const domain of ["Page", "Runtime", "Log", "Network"]) await send(`${domain}.enable`);
  const features = { scheme: "light", media: "" };
  const emulate = () => send("Emulation.setEmulatedMedia", { media: features.media, features: [{ name: "prefers-color-scheme", value: features.scheme }] });
  return {
    complaints,
    async open(url) {
      const done = new Promise<void>((fired) => { loaded = fired; });
      await send("Page.navigate", { url });
      await done;
    },
    size: async (width, height, phone = false) => void (await send("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: 1, mobile: phone })),
    scripts: async (on) => void (await send("Emulation.setScriptExecutionDisabled", { value: !on })),
    async scheme(which) {
      features.scheme = which;
      await emulate();
    },
    async media(which) {
      features.media = which === "print" ? "print" : "";
      await emulate();
    },
    async value<T>(expression: string) {
      const { result, exceptionDetails } = await send("Runtime.evaluate", { expression, returnByValue: true, awaitPromise: true });
      if (exceptionDetails) throw new Error(JSON.stringify(exceptionDetails));
      return (result as { value: T }).value;
    },
    async press(key) {
      const code = { Tab: 9, Enter: 13, Escape: 27 }[key] ?? 0;
      const text = key === "Enter" ? "\r" : undefined;
      await send("Input.dispatchKeyEvent", { type: text ? "keyDown" : "rawKeyDown", key, code: key, windowsVirtualKeyCode: code, ...(text ? { text } : {}) });
      await send("Input.dispatchKeyEvent", { type: "keyUp", key, code: key, windowsVirtualKeyCode: code });
    },
    write: async (words) => void (await send("Input.insertText", { text: words })),
    shot: async () => Buffer.from(String((await send("Page.captureScreenshot", { format: "png" })).data), "base64"),
    pdf: async () => Buffer.from(String((await send("Page.printToPDF", { printBackground: true })).data), "base64"),
  };
}
