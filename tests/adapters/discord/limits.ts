/**
 * Discord's limits on what is sent, written from the public API documentation as summed up in the project's protocol notes
 * (message components, attachments, modals), and independent of the code that is checked. Lengths in UTF-16 units.
 */
import type { DiscordMessage, Modal } from "../../../adapters/discord/api.ts";

type Json = Record<string, any>;
const V2 = 1 << 15;
const ALLOWED_IN_CONTAINER = [1, 9, 10, 12, 13, 14];
const ALLOWED_ON_TOP = [...ALLOWED_IN_CONTAINER, 17];

export function overLimits({ payload, files }: DiscordMessage): string[] {
  const wrong: string[] = [];
  const say = (ok: boolean, what: string): void => {
    if (!ok) wrong.push(what);
  };
  const body = payload as unknown as Json;
  say((body.flags & V2) !== 0, "flag 1<<15 is not set");
  for (const key of ["content", "embeds", "poll", "sticker_ids"]) say(!(key in body), `${key} together with Components V2`);
  say(JSON.stringify(body.allowed_mentions) === '{"parse":[]}', "mentions are not closed");
  say(JSON.stringify(body).isWellFormed(), "not well-formed Unicode");

  const nested = (list: Json[]): Json[] =>
    list.flatMap((one) => [one, ...nested(one.components ?? []), ...(one.accessory ? [one.accessory] : [])]);
  const all = nested(body.components);
  say(body.components.length >= 1, "no component");
  say(all.length <= 40, `${all.length} components`);
  say(
    body.components.every((one: Json) => ALLOWED_ON_TOP.includes(one.type)),
    "a component that cannot stand on top",
  );
  say(
    all
      .filter((one) => one.type === 17)
      .every((one) => one.components.length >= 1 && one.components.every((inner: Json) => ALLOWED_IN_CONTAINER.includes(inner.type))),
    "a bad container",
  );

  const texts = all.filter((one) => one.type === 10);
  say(
    texts.every((one) => one.content.length >= 1 && one.content.length <= 4000),
    "a text of no or more than 4000 characters",
  );
  const sum = texts.reduce((total, one) => total + one.content.length, 0);
  say(sum <= 4000, `${sum} characters of text`);
  say(
    texts.every((one) => (one.content.match(/```/g) ?? []).length % 2 === 0),
    "a fixed-width block is cut",
  );

  const ids = all.flatMap((one) => one.custom_id ?? []);
  say(new Set(ids).size === ids.length, "a custom_id twice");
  say(
    ids.every((id: string) => id.length >= 1 && id.length <= 100 && /^v1:[a-z]+:\S(?:.*\S)?$/.test(id)),
    `a bad custom_id in ${ids}`,
  );
  for (const row of all.filter((one) => one.type === 1)) {
    const kinds = row.components.map((one: Json) => one.type);
    say(
      (kinds.length >= 1 && kinds.length <= 5 && kinds.every((kind: number) => kind === 2)) || (kinds.length === 1 && kinds[0] === 3),
      `a row of ${kinds}`,
    );
  }
  for (const button of all.filter((one) => one.type === 2)) {
    say(button.label.length >= 1 && button.label.length <= 80, `a button of ${button.label.length} characters`);
    say([1, 2, 3, 4].includes(button.style) && !("url" in button), "a bad button");
  }
  for (const select of all.filter((one) => one.type === 3)) overSelect(select, say);

  const media = all.filter((one) => one.type === 12);
  say(
    media.every((one) => one.items.length >= 1 && one.items.length <= 10),
    "a gallery of no or more than 10",
  );
  say(
    media.flatMap((one) => one.items).every((one) => (one.description ?? "x").length >= 1 && (one.description ?? "").length <= 1024),
    "an alt text of none or more than 1024",
  );
  const names = files.map((file) => file.name);
  say(
    names.length <= 10 && new Set(names).size === names.length && names.every((name) => /^[\w.-]+$/.test(name)),
    `bad file names ${names}`,
  );
  const shown = all.flatMap((one) => (one.type === 12 ? one.items.map((item: Json) => item.media.url) : one.type === 13 ? [one.file.url] : []));
  say(JSON.stringify(shown) === JSON.stringify(names.map((name) => `attachment://${name}`)), "files shown and files sent differ");
  say(
    JSON.stringify((body.attachments ?? []).map((one: Json) => [one.id, one.filename])) ===
      JSON.stringify(names.map((name, id) => [String(id), name])),
    "attachments and files differ",
  );
  return wrong;
}

function overSelect(select: Json, say: (ok: boolean, what: string) => void): void {
  say(select.options.length >= 1 && select.options.length <= 25, `a select of ${select.options.length}`);
  say((select.placeholder ?? "").length <= 150, "a long placeholder");
  const values = select.options.map((one: Json) => one.value);
  say(
    new Set(values).size === values.length && values.every((value: string) => value.length >= 1 && value.length <= 100),
    "bad option values",
  );
  say(
    select.options.every((one: Json) => one.label.length >= 1 && one.label.length <= 100),
    "an option's label of no or more than 100",
  );
  say(select.options.filter((one: Json) => one.default).length <= 1, "two defaults");
}

export function modalOverLimits(modal: Modal): string[] {
  const wrong: string[] = [];
  const say = (ok: boolean, what: string): void => {
    if (!ok) wrong.push(what);
  };
  const all = modal.components as unknown as Json[];
  say(modal.title.length >= 1 && modal.title.length <= 45, `a title of ${modal.title.length}`);
  say(modal.custom_id.length >= 1 && modal.custom_id.length <= 100, "a bad custom_id");
  say(all.length >= 1 && all.length <= 5, `${all.length} fields`);
  say(new Set(all.map((one) => one.component.custom_id)).size === all.length, "a custom_id twice");
  for (const one of all) {
    say(one.type === 18 && one.label.length >= 1 && one.label.length <= 45, `a label of ${one.label.length}`);
    say(!("description" in one) || (one.description.length >= 1 && one.description.length <= 100), "a bad description");
    const inner = one.component;
    if (inner.type === 3) {
      overSelect(inner, say);
    } else {
      say(
        inner.type === 4 && (inner.value ?? "").length <= inner.max_length && inner.max_length >= 1 && inner.max_length <= 4000,
        "a bad text input",
      );
      say((inner.placeholder ?? "").length <= 100, "a long placeholder");
    }
  }
  return wrong;
}

const COMMAND_NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;

/** A whole set of commands as it is given to the platform. */
export function commandsOverLimits(commands: readonly Json[]): string[] {
  const wrong: string[] = [];
  const say = (ok: boolean, what: string): void => {
    if (!ok) wrong.push(what);
  };
  const count = (type: number): number => commands.filter((one) => one.type === type).length;
  say(count(1) <= 100 && count(2) <= 15 && count(3) <= 15, "too many commands");
  say(new Set(commands.map((one) => `${one.type} ${one.name}`)).size === commands.length, "a command twice");
  for (const one of commands) {
    const names = [one.name, ...Object.values(one.name_localizations ?? {})] as string[];
    const slash = one.type === 1;
    say(names.every((name) => (slash ? COMMAND_NAME.test(name) && name === name.toLowerCase() : name.length >= 1 && name.length <= 32)), `a bad name in ${names}`);
    say(slash ? isDescription(one) : one.description === undefined, `${one.name}: a bad description`);
    const options = (one.options ?? []) as Json[];
    say(options.length <= 25 && new Set(options.map((option) => option.name)).size === options.length, `${one.name}: bad options`);
    say(options.every((option, at) => !option.required || options.slice(0, at).every((before) => before.required)), `${one.name}: a required option after others`);
    say(options.every((option) => COMMAND_NAME.test(option.name) && isDescription(option) && !(option.autocomplete && option.choices)), `${one.name}: a bad option`);
    say(typeof one.default_member_permissions === "string" || one.default_member_permissions === null, `${one.name}: bad permissions`);
    const longest = (given: Json, key: string): number => Math.max(given[key]?.length ?? 0, ...Object.values((given[`${key}_localizations`] ?? {}) as Record<string, string>).map((words) => words.length));
    const size = [one, ...options].reduce((sum, given) => sum + longest(given, "name") + longest(given, "description"), 0);
    say(size <= 8000, `${one.name}: ${size} characters in all`);
  }
  return wrong;
}

const isDescription = (given: Json): boolean => [given.description, ...Object.values(given.description_localizations ?? {})].every((words) => typeof words === "string" && words.length >= 1 && words.length <= 100);
