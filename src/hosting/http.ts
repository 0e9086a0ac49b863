/**
 * For whoever watches over a running Gleed, on this machine only: `/health` (the process answers), `/ready` (records and knowledge answer as
 * well), `/metrics` (Prometheus). Nothing of a person is ever shown here.
 */
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from "prom-client";
import type { Outlet } from "../delivery/outlet.ts";
import type { Log } from "../delivery/log.ts";

export interface Watched {
  /** resolves when records and knowledge answer, rejects when they do not in time */
  ready(): Promise<unknown>;
}
export interface Metrics {
  readonly registry: Registry;
  /** one message in, answered after so long */
  received(network: string, seconds: number, outcome: "answered" | "emergency" | "failed"): void;
  /** the same outlet, counted */
  counted(outlet: Outlet): Outlet;
  /** a log that counts warnings and errors */
  logged(log: Log): Log;
}

export function metrics(): Metrics {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry, prefix: "gleed_" });
  const received = new Histogram({ name: "gleed_message_seconds", help: "Time from a message to its answer", labelNames: ["network", "outcome"], buckets: [0.005, 0.02, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 10], registers: [registry] });
  const sent = new Counter({ name: "gleed_sent_total", help: "Messages that fell due, by what became of sending them", labelNames: ["network", "kind", "outcome"], registers: [registry] });
  const late = new Histogram({ name: "gleed_sent_late_seconds", help: "How long after its time a message was handed to the network", labelNames: ["kind"], buckets: [1, 5, 30, 60, 300, 3600, 86400], registers: [registry] });
  const trouble = new Counter({ name: "gleed_log_total", help: "Warnings and errors in the log", labelNames: ["level"], registers: [registry] });
  new Gauge({ name: "gleed_started_seconds", help: "Epoch seconds at which this process started", registers: [registry] }).setToCurrentTime();
  return {
    registry,
    received: (network, seconds, outcome) => received.observe({ network, outcome }, seconds),
    counted: (outlet) => ({
      network: outlet.network,
      ...(outlet.lookUp ? { lookUp: (outgoing) => outlet.lookUp?.(outgoing) ?? Promise.resolve(null) } : {}),
      async send(outgoing, reader) {
        const { network, kind, due_at_ms } = outgoing;
        try {
          const one = await outlet.send(outgoing, reader);
          sent.inc({ network, kind, outcome: one.sent ? "sent" : one.retry ? "again" : "refused" });
          if (one.sent) late.observe({ kind }, Math.max(0, (Date.now() - due_at_ms) / 1000));
          return one;
        } catch (error) {
          sent.inc({ network, kind, outcome: "failed" });
          throw error;
        }
      },
    }),
    logged: (log) => ({
      info: log.info,
      warn: (data, words) => {
        trouble.inc({ level: "warn" });
        log.warn(data, words);
      },
      error: (data, words) => {
        trouble.inc({ level: "error" });
        log.error(data, words);
      },
    }),
  };
}

export interface HostPort {
  readonly port: number;
  close(): Promise<void>;
}

export async function listen(port: number, watched: Watched, { registry }: Pick<Metrics, "registry">): Promise<HostPort> {
  const server: Server = createServer(async (request, response) => {
    const end = (code: number, words: string, type = "text/plain; charset=utf-8"): void => void response.writeHead(code, { "content-type": type, "cache-control": "no-store" }).end(words);
    if (request.method !== "GET" && request.method !== "HEAD") return end(405, "only GET\n");
    const path = request.url?.split("?")[0];
    if (path === "/health") return end(200, "alive\n");
    if (path === "/metrics") return end(200, await registry.metrics(), registry.contentType);
    if (path !== "/ready") return end(404, "there are /health, /ready and /metrics\n");
    try {
      await watched.ready();
      return end(200, "ready\n");
    } catch {
      return end(503, "not ready\n");
    }
  });
  server.requestTimeout = 10_000;
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", resolve);
  });
  server.unref();
  return {
    port: (server.address() as AddressInfo).port,
    close: () => new Promise((resolve) => {
      server.close(() => resolve());
      server.closeAllConnections();
    }),
  };
}
