/**
 * The gateway of the stand-in: hello, identify, heartbeat, dispatch with sequence numbers, resume with replay, invalid sessions.
 * Written from the public documentation of the gateway, version 10.
 */
import { randomBytes } from "node:crypto";
import type { Server } from "node:http";
import { type WebSocket, WebSocketServer } from "ws";

export interface Session {
  readonly id: string;
  readonly shard: readonly [number, number];
  seq: number;
  readonly sent: { readonly s: number; readonly t: string; readonly d: unknown }[];
  socket: WebSocket | null;
  /** false: a resume is refused */
  alive: boolean;
  resumes: number;
}

export interface Gateway {
  readonly sessions: Session[];
  readonly identifies: { readonly intents: number; readonly shard: readonly [number, number] }[];
  /** to the session of the guild's shard; kept for replay while the socket is down. Null when no session lives. */
  dispatch(t: string, d: Record<string, unknown>): Session | null;
  /** the same event once more, as after a replay, out of its order */
  again(session: Session, t: string, d: unknown): void;
  /** cut every socket without a word */
  drop(): void;
  send(session: Session, payload: unknown): void;
  close(): void;
}

export interface GatewayOptions {
  readonly server: Server;
  readonly token: string;
  readonly heartbeat_ms?: number;
  readonly url: () => string;
  /** refuses an identify with this close code */
  readonly refuse?: () => number | null;
  readonly ready: (session: Session) => Record<string, unknown>;
  readonly guilds: (session: Session) => readonly Record<string, unknown>[];
}

export function gateway({ server, token, heartbeat_ms = 41_250, url, refuse, ready, guilds }: GatewayOptions): Gateway {
  const sessions: Session[] = [];
  const identifies: Gateway["identifies"] = [];
  const sockets = new WebSocketServer({ server });

  const put = (socket: WebSocket | null, payload: unknown): void => {
    if (socket?.readyState === 1) socket.send(JSON.stringify(payload));
  };
  function emit(session: Session, t: string, d: unknown): void {
    session.seq += 1;
    const event = { s: session.seq, t, d };
    session.sent.push(event);
    if (session.sent.length > 3_000) session.sent.shift();
    put(session.socket, { op: 0, ...event });
  }

  function identify(socket: WebSocket, d: { token: string; intents: number; shard?: [number, number] }): void {
    const code = refuse?.() ?? (d.token === token ? null : 4004);
    if (code) return socket.close(code);
    const session: Session = { id: randomBytes(8).toString("hex"), shard: d.shard ?? [0, 1], seq: 0, sent: [], socket, alive: true, resumes: 0 };
    sessions.push(session);
    identifies.push({ intents: d.intents, shard: session.shard });
    emit(session, "READY", { v: 10, session_id: session.id, resume_gateway_url: `${url()}/resume`, shard: session.shard, ...ready(session) });
    for (const guild of guilds(session)) emit(session, "GUILD_CREATE", guild);
  }

  function resume(socket: WebSocket, d: { session_id: string; seq: number }): void {
    const session = sessions.find((one) => one.id === d.session_id);
    if (!session?.alive) return put(socket, { op: 9, d: false });
    session.socket = socket;
    session.resumes += 1;
    for (const event of session.sent.filter(({ s }) => s > d.seq)) put(socket, { op: 0, ...event });
    emit(session, "RESUMED", {});
  }

  sockets.on("connection", (socket) => {
    socket.on("error", () => {});
    socket.on("close", () => {
      for (const session of sessions) if (session.socket === socket) session.socket = null;
    });
    socket.on("message", (raw) => {
      const { op, d } = JSON.parse(String(raw));
      if (op === 1) put(socket, { op: 11 });
      else if (op === 2) identify(socket, d);
      else if (op === 6) resume(socket, d);
    });
    put(socket, { op: 10, d: { heartbeat_interval: heartbeat_ms } });
  });

  return {
    sessions,
    identifies,
    dispatch(t, d) {
      const guild = typeof d.guild_id === "string" ? BigInt(d.guild_id) : 0n;
      const session = sessions.findLast((one) => one.alive && BigInt(one.shard[0]) === (guild >> 22n) % BigInt(one.shard[1]));
      if (session) emit(session, t, d);
      return session ?? null;
    },
    again: emit,
    drop() {
      for (const session of sessions) {
        const { socket } = session;
        session.socket = null;
        socket?.terminate();
      }
    },
    send: (session, payload) => put(session.socket, payload),
    close() {
      for (const socket of sockets.clients) socket.terminate();
      sockets.close();
    },
  };
}
