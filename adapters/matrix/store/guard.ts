/** What the adapter writes itself must not fail unseen either. */
import type { Rows } from "./rows.ts";

/** @param onBroken called when the file could not be read or written, before the error goes on */
export const guarded = (rows: Rows, onBroken: (error: unknown) => void): Rows =>
  Object.fromEntries(
    Object.entries(rows).map(([name, work]) => [
      name,
      (...args: unknown[]) => {
        try {
          return (work as (...args: unknown[]) => unknown)(...args);
        } catch (error) {
          if (isDiskTrouble(error)) onBroken(error);
          throw error;
        }
      },
    ]),
  ) as unknown as Rows;

const isDiskTrouble = (error: unknown): boolean => typeof error === "object" && error !== null && "code" in error && String(error.code).startsWith("SQLITE_");
