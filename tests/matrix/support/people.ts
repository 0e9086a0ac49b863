/** Accounts on the test homeserver, and people who use them from processes of their own. */
import { type ChildProcess, spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

export const HOMESERVER = process.env.GLEED_TEST_MATRIX ?? "";

export interface Account {
  readonly user_id: string;
  readonly device_id: string;
  readonly token: string;
  readonly password: string;
  readonly local: string;
}

export async function register(name: string, homeserver = HOMESERVER): Promise<Account> {
  const local = `${name}-${randomBytes(4).toString("hex")}`;
  const password = randomBytes(12).toString("hex");
  const response = await fetch(`${homeserver}/_matrix/client/v3/register`, {
    method: "POST",
    body: JSON.stringify({ username: local, password, auth: { type: "m.login.dummy" } }),
  });
  const made = (await response.json()) as { user_id: string; device_id: string; access_token: string };
  if (!response.ok) throw new Error(JSON.stringify(made));
  return { user_id: made.user_id, device_id: made.device_id, token: made.access_token, password, local };
}

export async function loginAgain({ local, password }: Account, homeserver = HOMESERVER): Promise<Account> {
  const response = await fetch(`${homeserver}/_matrix/client/v3/login`, {
    method: "POST",
    body: JSON.stringify({ type: "m.login.password", identifier: { type: "m.id.user", user: local }, password }),
  });
  const made = (await response.json()) as { user_id: string; device_id: string; access_token: string };
  return { user_id: made.user_id, device_id: made.device_id, token: made.access_token, password, local };
}

export interface Heard {
  readonly event: string;
  readonly room: string;
  readonly sender: string;
  readonly type: string;
  readonly encrypted: boolean;
  readonly failure: string | null;
  readonly content: Record<string, unknown> & { body?: string; msgtype?: string; formatted_body?: string };
  readonly relates: { rel_type?: string; event_id?: string; key?: string; "m.in_reply_to"?: { event_id: string } } | null;
  readonly at_ms: number;
}

export interface Person {
  readonly account: Account;
  readonly heard: readonly Heard[];
  do<T>(command: string, args?: object): Promise<T>;
  say(room: string, body: string, more?: object): Promise<string>;
  /** waits for something heard, from place `from` on */
  hears(what: (heard: Heard) => boolean, options?: { from?: number; within_ms?: number }): Promise<Heard>;
  leave(): void;
}

export async function person(account: Account, homeserver = HOMESERVER): Promise<Person> {
  const child: ChildProcess = spawn(process.execPath, [fileURLToPath(new URL("./user.ts", import.meta.url)), homeserver, account.user_id, account.device_id, account.token], {
    stdio: ["pipe", "pipe", process.env.GLEED_TEST_LOUD ? "inherit" : "ignore"],
  });
  const heard: Heard[] = [];
  const waiting = new Map<number, PromiseWithResolvers<unknown>>();
  const listeners = new Set<() => void>();
  const ready = Promise.withResolvers<void>();
  let last = 0;
  createInterface({ input: child.stdout! }).on("line", (line) => {
    if (!line.startsWith("{")) return;
    const said = JSON.parse(line) as Record<string, unknown>;
    if (said.ready) ready.resolve();
    else if (typeof said.answer === "number") {
      const open = waiting.get(said.answer);
      if (said.error) open?.reject(new Error(String(said.error)));
      else open?.resolve(said.value);
    } else if (said.event) {
      const again = heard.findIndex((one) => one.event === said.event);
      if (again >= 0) heard[again] = said as never;
      else heard.push(said as never);
      for (const one of listeners) one();
    }
  });
  child.once("exit", () => ready.reject(new Error("the user's process ended")));
  await ready.promise;
  const run = <T>(command: string, args: object = {}): Promise<T> => {
    const open = Promise.withResolvers<unknown>();
    const id = ++last;
    waiting.set(id, open);
    child.stdin?.write(`${JSON.stringify({ ...args, id, do: command })}\n`);
    return open.promise as Promise<T>;
  };
  return {
    account,
    heard,
    do: run,
    say: (room, body, more = {}) => run("send", { room, content: { msgtype: "m.text", body, ...more } }),
    hears: (what, { from = 0, within_ms = 15_000 } = {}) =>
      new Promise((resolve, reject) => {
        const look = (): void => {
          const found = heard.slice(from).find(what);
          if (!found) return;
          clearTimeout(timer);
          listeners.delete(look);
          resolve(found);
        };
        const timer = setTimeout(() => {
          listeners.delete(look);
          const last_ones = heard.slice(from).slice(-5).map((one) => `${one.type} ${one.failure ?? ""} ${String(one.content.body ?? JSON.stringify(one.relates)).slice(0, 200)}`);
          reject(new Error(`nothing like that was heard within ${within_ms / 1000} s; the last were:\n${last_ones.join("\n")}`));
        }, within_ms);
        listeners.add(look);
        look();
      }),
    leave: () => child.stdin?.end(),
  };
}

export const isNotice = ({ type, content }: Heard): boolean => type === "m.room.message" && (content.msgtype === "m.notice" || content.msgtype === "m.text");
export const isEdit = ({ relates }: Heard): boolean => relates?.rel_type === "m.replace";
