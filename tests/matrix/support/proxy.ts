/** Between Gleed and the homeserver: passes on, is down, answers 5xx or says that it is too much. */
import { createServer, request, type Server } from "node:http";
import type { AddressInfo, Socket } from "node:net";

export type Mood = "pass" | "down" | "broken" | "limited";
export interface Proxy {
  readonly url: string;
  mood: Mood;
  /** requests answered in the present mood */
  count: number;
  close(): void;
}

export async function proxy(to: string): Promise<Proxy> {
  const target = new URL(to);
  const sockets = new Set<Socket>();
  let mood: Mood = "pass";
  let turn = 0;
  const server: Server = createServer((from, answer) => {
    state.count += 1;
    const plain = (status: number, body: object): void => {
      from.resume();
      answer.writeHead(status, { "content-type": "application/json" }).end(JSON.stringify(body));
    };
    if (mood === "down") return void from.socket.destroy();
    // half of what is asked for fails, so that everything is met in every state
    if (mood === "broken" && turn++ % 2 === 0) return plain([500, 502, 503, 504][turn % 4] ?? 500, { errcode: "M_UNKNOWN", error: "out of order" });
    if (mood === "limited" && from.method !== "GET" && turn++ % 2 === 0) return plain(429, { errcode: "M_LIMIT_EXCEEDED", error: "too much", retry_after_ms: 300 });
    const onward = request({ host: target.hostname, port: target.port, path: from.url, method: from.method, headers: { ...from.headers, host: target.host } }, (back) => {
      answer.writeHead(back.statusCode ?? 502, back.headers);
      back.pipe(answer);
    });
    onward.on("error", () => from.socket.destroy());
    answer.on("close", () => onward.destroy());
    from.pipe(onward);
  });
  server.on("connection", (socket) => {
    sockets.add(socket);
    socket.on("close", () => sockets.delete(socket));
    if (mood === "down") socket.destroy();
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const state: Proxy = {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    count: 0,
    get mood() {
      return mood;
    },
    set mood(next: Mood) {
      mood = next;
      state.count = 0;
      if (next === "down") for (const socket of sockets) socket.destroy();
    },
    close() {
      server.close();
      for (const socket of sockets) socket.destroy();
    },
  };
  return state;
}
