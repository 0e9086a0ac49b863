/** What of a knowledge file is read by people: every sentence under an id made of its place. */

/** Keys whose strings are ids, sources or words to find a topic by, not sentences to be read. */
export const NOT_READ: ReadonlySet<string> = new Set(["id", "kind", "record", "source", "sources", "hazard", "cautions", "call", "near", "words", "about", "when", "unknown", "stop", "weighs", "level", "said"]);

/** Keys under which the file's own names stand: a sign may be called "when" and still be read. */
export const NAMES_BELOW: ReadonlySet<string> = new Set(["signs", "causes", "stages", "remarks", "because"]);

export function gather(into: Map<string, string>, path: string, value: unknown, names = false): void {
  if (typeof value === "string") into.set(path, value);
  else if (Array.isArray(value)) value.forEach((entry, i) => gather(into, `${path}.${hasId(entry) ? entry.id : i}`, entry));
  else if (typeof value === "object" && value !== null) {
    for (const [key, entry] of Object.entries(value)) if (names || !NOT_READ.has(key)) gather(into, `${path}.${key}`, entry, NAMES_BELOW.has(key) && !names);
  }
}

export const hasId = (entry: unknown): entry is { id: string } => typeof entry === "object" && entry !== null && "id" in entry;
