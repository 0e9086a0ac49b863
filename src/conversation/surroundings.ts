/** What surrounds the fire, asked for in plain words: alarms, first fires, pages to print, a brief to send on. */
import type { Context, Outcome } from "./context.ts";

export function surroundings(_context: Context): Outcome | null {
  return null;
}
