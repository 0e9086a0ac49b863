/** The forecast port on loopback: what is asked, how often, and what happens when the service fails. */
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, expect, it } from "vitest";
import { forecasting } from "../../src/forecast/forecasting.ts";
import { daysOf, locationforecast } from "../../src/forecast/locationforecast.ts";
import { silent } from "../../src/delivery/log.ts";
import { openStore } from "../../src/store/open.ts";

const NOW = Date.parse("2026-11-25T16:00:00Z");
const HOUR_MS = 3_600_000;
const SPOT = { latitude: 60.19876, longitude: 24.94, timezone: "Europe/Helsinki" };

/** In the shape of the service: hourly for two days, every six hours after. */
const forecast = (base_C: number) => ({
  type: "Feature",
  geometry: { type: "Point", coordinates: [24.94, 60.2, 20] },
  properties: {
    meta: { updated_at: "2026-11-25T15:30:00Z", units: { air_temperature: "celsius" } },
    timeseries: [...Array.from({ length: 48 }, (_, h) => h), ...Array.from({ length: 28 }, (_, n) => 48 + 6 * n)].map((h) => ({
      time: new Date(NOW + h * HOUR_MS).toISOString().replace(".000", ""),
      data: { instant: { details: { air_temperature: base_C + 4 * Math.sin(((h + 4) * Math.PI) / 12), relative_humidity: 80 } }, next_1_hours: { details: {} } },
    })),
  },
});

type Handler = (request: IncomingMessage, response: ServerResponse, count: number) => void;
let close: (() => Promise<void>) | undefined;
afterEach(() => close?.());

async function service(handler: Handler) {
  const asked: IncomingMessage[] = [];
  const server = createServer((request, response) => {
    asked.push(request);
    handler(request, response, asked.length);
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  close = () => new Promise((done) => {
    server.closeAllConnections();
    server.close(() => done());
  });
  const waits: number[] = [];
  const source = locationforecast({
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/compact`, contact: "host@example.org", limit_ms: 300, random: () => 0.5,
    wait: async (ms) => void waits.push(ms),
  });
  return { source, asked, waits };
}
const give = (response: ServerResponse, base_C = -5): void =>
  void response.writeHead(200, { "Content-Type": "application/json", Expires: new Date(NOW + HOUR_MS).toUTCString(), "Last-Modified": new Date(NOW).toUTCString() }).end(JSON.stringify(forecast(base_C)));

it("asks as the service's terms want it and gives seven days of lows and highs", async () => {
  const { source, asked } = await service((_, response) => give(response));
  const days = await source.days(SPOT, NOW);
  expect(asked[0]?.url).toBe("/compact?lat=60.20&lon=24.94");
  expect(asked[0]?.headers["user-agent"]).toBe("gleed/0.1 host@example.org");
  expect(days.map((day) => day.date)).toEqual(["2026-11-25", "2026-11-26", "2026-11-27", "2026-11-28", "2026-11-29", "2026-11-30", "2026-12-01"]);
  expect(days[1]?.low_C).toBeCloseTo(-9, 1);
  expect(days[1]?.high_C).toBeCloseTo(-1, 1);
});

it("asks nothing twice before it expires, and then only whether it changed", async () => {
  const { source, asked } = await service((request, response, count) => (count === 1 ? give(response) : response.writeHead(request.headers["if-modified-since"] ? 304 : 200, { Expires: new Date(NOW + 3 * HOUR_MS).toUTCString() }).end()));
  const [first] = await Promise.all([source.days(SPOT, NOW), source.days({ ...SPOT, latitude: 60.2012 }, NOW)]);
  await source.days(SPOT, NOW + HOUR_MS / 2);
  expect(asked).toHaveLength(1);
  const later = await source.days(SPOT, NOW + 1.5 * HOUR_MS);
  expect(asked).toHaveLength(2);
  expect(later.slice(1)).toEqual(first.slice(1));
});

it("tries again with growing waits when the service stumbles", async () => {
  const { source, asked, waits } = await service((_, response, count) => (count < 3 ? void response.writeHead(503).end() : give(response)));
  expect(await source.days(SPOT, NOW)).toHaveLength(7);
  expect(asked).toHaveLength(3);
  expect(waits).toEqual([375, 750]);
});

it.each<[string, Handler, number, RegExp]>([
  ["refuses", (_, response) => void response.writeHead(403).end(), 1, /it answered 403/],
  ["is overrun", (_, response) => void response.writeHead(429).end(), 1, /it answered 429/],
  ["sends something else", (_, response) => void response.writeHead(200).end("<html>"), 1, /no forecast/],
  ["sends another shape", (_, response) => void response.writeHead(200).end("{}"), 1, /no forecast/],
  ["hangs", () => {}, 3, /no answer within 0.3 s/],
  ["breaks off", (request) => void request.socket.destroy(), 3, /cannot be reached/],
])("says so plainly when the service %s, and then leaves it alone", async (_, handler, tries, why) => {
  const { source, asked } = await service(handler);
  await expect(source.days(SPOT, NOW)).rejects.toThrow(why);
  expect(asked).toHaveLength(tries);
  await expect(source.days(SPOT, NOW + 30_000)).rejects.toThrow(/left alone/);
  expect(asked).toHaveLength(tries);
});

it("keeps an old forecast for a day when the service is gone", async () => {
  const { source } = await service((_, response, count) => (count === 1 ? give(response) : void response.writeHead(500).end()));
  await source.days(SPOT, NOW);
  expect((await source.days(SPOT, NOW + 5 * HOUR_MS)).length).toBeGreaterThan(4);
  await expect(source.days(SPOT, NOW + 30 * HOUR_MS)).rejects.toThrow(/500|left alone/);
});

it("takes days by the clock of the place, and none that is cut short", () => {
  const points = Array.from({ length: 30 }, (_, h) => [NOW + h * HOUR_MS, h] as const);
  expect(daysOf(points, { timezone: "Europe/Helsinki" }, NOW)).toEqual([{ date: "2026-11-25", low_C: 0, high_C: 5 }, { date: "2026-11-26", low_C: 6, high_C: 29 }]);
  expect(daysOf(points, { timezone: "Pacific/Auckland" }, NOW).map((day) => day.date)).toEqual(["2026-11-26"]);
});

it("fills in only days that nobody spoke of, and writes none of them down", async () => {
  const { source } = await service((_, response) => give(response));
  const plain = await openStore(":memory:");
  const store = forecasting(plain, source, "UTC", silent);
  const { person_id, place_id } = await store.enter({ network: "test", id: "ana" }, { network: "test", id: "p", kind: "private", encrypted: null }, NOW);
  const message = (n: number) => ({ cause: "message" as const, message_key: `k${n}`, message: { adapter: "test", native_id: `k${n}`, identity: { network: "test", id: "ana" }, place: { network: "test", id: "p", kind: "private" as const, encrypted: null }, received_at_ms: NOW } });
  const answer = { topic: "help" } as never;
  const empty = await store.load(person_id, place_id, NOW);
  expect(empty.home.weather).toEqual([]);
  await store.commit(message(1), empty, { answer, due: [], cancel: [], writes: [{ write: "person", person: { ...empty.person, facts: { latitude: 60.2, longitude: 24.94, timezone: "Europe/Helsinki" } } }, { write: "home", home: { ...empty.home, weather: [{ date: "2026-11-26", low_C: -20, high_C: -15 }] } }] }, NOW);
  const filled = await store.load(person_id, place_id, NOW);
  expect(filled.home.weather).toHaveLength(7);
  expect(filled.home.weather[1]).toEqual({ date: "2026-11-26", low_C: -20, high_C: -15 });
  await store.commit(message(2), filled, { answer, due: [], cancel: [], writes: [{ write: "home", home: { ...filled.home, house: { wanted_C: 21 } } }] }, NOW);
  const written = await plain.load(person_id, place_id, NOW);
  expect(written.home.house.wanted_C).toBe(21);
  expect(written.home.weather).toEqual([{ date: "2026-11-26", low_C: -20, high_C: -15 }]);
  await plain.close();
});
