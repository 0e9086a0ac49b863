/** One line in: a message of somebody somewhere, or time moving on. */
import type { Message } from "../../src/message.ts";

export const NETWORK = "lines";

export type Line =
  | { readonly kind: "message"; readonly message: Message }
  | { readonly kind: "advance"; readonly ms: number }
  | { readonly kind: "error"; readonly sentence: string };

const error = (sentence: string): Line => ({ kind: "error", sentence });
const isObject = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null && !Array.isArray(value);

/** @param native_id names the line; no two lines share one */
export function parseLine(line: string, native_id: string, received_at_ms: number): Line {
  let read: unknown;
  try {
    read = JSON.parse(line);
  } catch {
    return error('This line is not JSON; write one object a line, such as {"person":"ana","room":"private","text":"how much wood tonight?"}.');
  }
  if (!isObject(read)) return error("A line is one JSON object in curly braces.");
  if ("advance" in read) return advance(read);
  const { person, room, text, choose, form, records, ...rest } = read;
  const unknown = Object.keys(rest)[0];
  if (unknown !== undefined) return error(`"${unknown}" is not a key of a line; it takes person, room and one of text, choose, form, records.`);
  if (typeof person !== "string" || person === "") return error('A line needs "person", a name.');
  if (typeof room !== "string" || room === "") return error('A line needs "room": "private" or the name of a group.');
  const said = [text, choose, form, records].filter((value) => value !== undefined);
  if (said.length !== 1) return error('A line needs exactly one of "text", "choose", "form" and "records".');
  if (text !== undefined && typeof text !== "string") return error('"text" takes words in quotes.');
  if (choose !== undefined && typeof choose !== "string") return error('"choose" takes the id of a choice in quotes.');
  if (form !== undefined && !isObject(form)) return error('"form" takes an object of its fields.');
  if (records !== undefined && !isObject(records)) return error('"records" takes an object.');
  return {
    kind: "message",
    message: {
      adapter: NETWORK,
      native_id,
      received_at_ms,
      identity: { network: NETWORK, id: person, name: person },
      place: room === "private"
        ? { network: NETWORK, id: `private:${person}`, kind: "private", encrypted: null }
        : { network: NETWORK, id: `group:${room}`, kind: "group", name: room, encrypted: null, whispers: true },
      ...(text !== undefined ? { text } : {}),
      ...(choose !== undefined ? { choice: choose } : {}),
      ...(form !== undefined ? { form: { id: typeof form.id === "string" ? form.id : "records", values: isObject(form.values) ? form.values : form } } : {}),
      ...(records !== undefined ? { records } : {}),
    },
  };
}

function advance({ advance: duration, ...rest }: Record<string, unknown>): Line {
  if (Object.keys(rest).length > 0) return error('A line with "advance" takes nothing else.');
  try {
    const span = Temporal.Duration.from(String(duration));
    const ms = span.total({ unit: "milliseconds", relativeTo: "2026-01-01" });
    return ms < 0 ? error("Time moves on only; a duration is not negative.") : { kind: "advance", ms };
  } catch {
    return error(`"${String(duration).slice(0, 40)}" is not an ISO 8601 duration; write for example PT20M or P1D.`);
  }
}
