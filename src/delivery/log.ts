/** What delivery asks of a log (pino fits). Data never holds words of a message. */
export interface Log {
  info(data: Readonly<Record<string, unknown>>, words: string): void;
  warn(data: Readonly<Record<string, unknown>>, words: string): void;
  error(data: Readonly<Record<string, unknown>>, words: string): void;
}
export const silent: Log = { info: () => {}, warn: () => {}, error: () => {} };
