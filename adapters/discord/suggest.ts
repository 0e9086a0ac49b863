/** Names offered while somebody types: from memory, within moments, and none rather than late. */
import type { Core } from "../adapter.ts";
import type { Message } from "../../src/message.ts";
import { shorten } from "../plain.ts";

const CAP_MS = 250;
const FRESH_MS = 60_000;
const MOST_PEOPLE = 1_000;
const MOST = 25;
const LONGEST = 100;

type Lists = Readonly<Record<string, readonly string[]>>;
type Who = Pick<Message, "identity" | "place">;

export interface Suggestions {
  for(who: Who, list: string, typed: string): Promise<{ name: string; value: string }[]>;
  /** what this person named may have changed */
  forget(user: string): void;
}

export function suggestions(core: Pick<Core, "names">, monotonic: () => number): Suggestions {
  const known = new Map<string, { readonly lists: Promise<Lists>; readonly at: number }>();

  function lists(who: Who): Promise<Lists> {
    const { id } = who.identity;
    const found = known.get(id);
    if (found && monotonic() - found.at < FRESH_MS) return found.lists;
    const asked = core.names?.(who) ?? Promise.resolve({});
    asked.catch(() => known.delete(id));
    known.delete(id);
    known.set(id, { lists: asked, at: monotonic() });
    const oldest = known.keys().next().value;
    if (known.size > MOST_PEOPLE && oldest !== undefined) known.delete(oldest);
    return asked;
  }

  return {
    async for(who, list, typed) {
      const late = new Promise<Lists>((resolve) => setTimeout(resolve, CAP_MS, {}));
      const names = (await Promise.race([lists(who).catch(() => ({}) as Lists), late]))[list] ?? [];
      return best(names, typed).map((name) => ({ name: shorten(name, LONGEST), value: name.slice(0, LONGEST) }));
    },
    forget: (user) => void known.delete(user),
  };
}

/** Those that begin with what was typed first, then those that hold it. */
function best(names: readonly string[], typed: string): string[] {
  const wanted = typed.trim().toLowerCase();
  const at = (name: string): number => name.toLowerCase().indexOf(wanted);
  const found = names.filter((name) => name.trim() !== "" && at(name) >= 0);
  return [...new Set([...found.filter((name) => at(name) === 0), ...found])].slice(0, MOST);
}
