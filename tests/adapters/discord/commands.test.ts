import { expect, test } from "vitest";
import { type Command, givenBy, readCommands, register, registration, toldBy } from "../../../adapters/discord/commands.ts";
import { openMemory } from "../../../adapters/discord/memory.ts";
import { commandsOverLimits } from "./limits.ts";

const commands = readCommands();
const told = (name: string, given: Record<string, string>) => toldBy(commands.slash.find((one) => one.name.en === name) as Command, given);

test("all commands are within Discord's limits, in every language, and every one is described in English and German", () => {
  const all = registration(commands) as Record<string, any>[];
  expect(commandsOverLimits(all)).toEqual([]);
  for (const one of all) expect(one.name_localizations?.de, one.name).toBeTypeOf("string");
  for (const one of all.filter((each) => each.type === 1)) for (const each of [one, ...(one.options ?? [])]) expect(each.description_localizations?.de, `${one.name} ${each.name}`).toBeTypeOf("string");
  // in one language no two commands share a name
  for (const name of ["en", "de"] as const) expect(new Set(commands.slash.map((one) => one.name[name])).size).toBe(commands.slash.length);
});

test("the check on commands can fail", () => {
  const good = { type: 1, name: "ask", description: "d", default_member_permissions: null };
  const option = { name: "o", description: "d", required: false };
  for (const bad of [{ name: "Ask" }, { name: "a b" }, { description: "" }, { description: "x".repeat(101) }, { default_member_permissions: 32 }, { options: [option, { ...option, name: "p", required: true }] }, { options: [option, option] }, { name_localizations: { de: "Ü" } }])
    expect(commandsOverLimits([{ ...good, ...bad }]), JSON.stringify(bad)).not.toEqual([]);
  expect(commandsOverLimits([good, good])).not.toEqual([]);
});

test("a command is a choice, a message or a form, by what was given", () => {
  expect(told("fire", {})).toEqual({ choice: "topic:light-fire" });
  expect(told("fire", { load: "10" })).toEqual({ text: "help me light a fire of 10 kg" });
  expect(told("fire", { load: "26 lb" })).toEqual({ text: "help me light a fire of 26 lb" });
  expect(told("load", { low: "-7", moisture: "17,5" })).toEqual({ text: "how much wood tonight with a low of -7 17,5 % moisture wet basis ?" });
  expect(told("log", { load: "11", species: "birch" })).toEqual({ form: { id: "log-fire", values: { load_kg: "11 kg", species: "birch" } } });
  expect(told("ban", {})).toEqual({ text: "burn ban" });
  expect(told("ban", { until: "Friday" })).toEqual({ text: "burn ban until Friday" });
  expect(told("ban", { lift: "" })).toEqual({ text: "lift the ban" });
  expect(told("heater", { name: "Old one", facts: "1800 kg" })).toEqual({ text: "my heater Old one: 1800 kg" });
  expect(told("ask", { question: "{load} $& {question}" })).toEqual({ text: "{load} $& {question}" });
});

test("options as sent: a no counts as not given, a picture is apart", () => {
  expect(givenBy([{ name: "lift", type: 5, value: false }, { name: "until", type: 3, value: "Friday" }, { name: "photo", type: 11, value: "9" }])).toEqual({ given: { until: "Friday" }, picture: "9" });
  expect(givenBy([{ name: "lift", type: 5, value: true }])).toEqual({ given: { lift: "" }, picture: null });
  expect(givenBy(undefined)).toEqual({ given: {}, picture: null });
});

test("given to Discord once, again only when they change, and again when that failed", async () => {
  const memory = openMemory(":memory:", 0);
  let puts = 0;
  const put = async (): Promise<void> => void puts++;
  const give = (set: readonly unknown[], how = put) => register(set, memory, "app", "global", how);
  expect([await give([{ a: 1, b: 2 }]), await give([{ b: 2, a: 1 }]), await give([{ a: 2, b: 2 }])]).toEqual([true, false, true]);
  await expect(give([{ a: 3 }], () => Promise.reject(new Error("down")))).rejects.toThrow("down");
  expect([await give([{ a: 3 }]), puts]).toEqual([true, 3]);
});
