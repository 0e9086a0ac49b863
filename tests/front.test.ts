import { expect, test } from "vitest";
import { front } from "../src/front.ts";
import { answer, verbatim } from "../src/answer.ts";
import type { Message } from "../src/message.ts";

const message = (id: string, text: string, locale?: string): Message => ({
  adapter: "x", native_id: `${id}-${text}`, identity: { network: "x", id }, place: { network: "x", id, kind: "private", encrypted: null }, received_at_ms: 0, text, ...(locale ? { locale } : {}),
});
const countries: Record<string, string> = { ana: "US", bea: "FI" };
const core = front({
  reader: { locale: "en-GB", system: "metric", timezone: "UTC" }, limit_ms: 1_000,
  remote: {
    receive: async ({ identity }) => ({ answer: answer({ topic: "help", headline: verbatim("h") }, new Map()), facts: countries[identity.id] ? { country: countries[identity.id] ?? "" } : {}, again: false }),
    shown: async () => null,
    names: async () => ({}),
  },
});
const said = (id: string): string => JSON.stringify(core.emergency(message(id, "the CO alarm is going off"))?.answer);

test("each person's emergency number is their own, whoever spoke last", async () => {
  for (const id of ["ana", "bea"]) await core.receive(message(id, "hello"));
  expect(said("ana")).toContain("911");
  expect(said("bea")).toContain("112");
  expect(said("ana")).not.toBe(said("bea"));
});

test("what a network says of somebody's language counts until they said it themselves", async () => {
  expect((await core.receive(message("cia", "hello", "de"))).reader.locale).toBe("de");
  expect((await core.receive(message("cia", "hello"))).reader.locale).toBe("en-GB");
  expect(core.emergency(message("cia", "how much wood tonight?"))).toBeNull();
});
