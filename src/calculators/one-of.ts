import { BadInput } from "./calculator.ts";

/**
 * Which of several ways of saying the same thing was used. A way is a group of keys that belong together.
 * @returns the index of the group that is complete
 * @throws BadInput when none, more than one, or only part of one was given
 */
export function oneOf(calculator: string, inputs: Readonly<Record<string, unknown>>, groups: readonly (readonly string[])[]): number {
  const given = (key: string): boolean => inputs[key] !== undefined;
  const touched = groups.flatMap((group, index) => (group.some(given) ? [index] : []));
  const ways = groups.map((group) => group.join(" + "));
  const first = touched[0];
  if (first === undefined) return fail(`${calculator} needs ${listed(ways)}.`);
  const group = groups[first] ?? [];
  const missing = group.filter((key) => !given(key));
  if (missing.length > 0)
    return fail(`${group.filter(given).join(" and ")} alone is not enough; ${calculator} also needs ${missing.join(" and ")}.`);
  if (touched.length > 1) {
    const both = touched.map((index) =>
      (groups[index] ?? [])
        .filter(given)
        .map((key) => `${key} ${JSON.stringify(inputs[key])}`)
        .join(" + "),
    );
    return fail(`${both.join(" and ")} say the same thing twice; give only one of ${ways.join(", ")}.`);
  }
  return first;
}

/** Keys that are only good together. @throws BadInput naming the missing ones. @returns whether all are there. */
export function together(inputs: Readonly<Record<string, unknown>>, keys: readonly string[]): boolean {
  const missing = keys.filter((key) => inputs[key] === undefined);
  if (missing.length === keys.length) return false;
  if (missing.length > 0) fail(`${keys.filter((key) => inputs[key] !== undefined).join(" and ")} also needs ${missing.join(" and ")}.`);
  return true;
}

const listed = (ways: readonly string[]): string =>
  ways.length > 1 ? `one of ${ways.slice(0, -1).join(", ")} or ${ways.at(-1)}` : (ways[0] ?? "");

function fail(message: string): never {
  throw new BadInput(message);
}
