/** The little that must outlast a restart: which commands are registered, where live cards stand, the channels that groups agreed on. */
import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import { DatabaseSync } from "node:sqlite";

export interface Memory {
  get<T>(key: string): T | null;
  set(key: string, value: unknown): void;
  forget(key: string): void;
  close(): void;
}

const KEPT_MS = 60 * 86_400_000;

/**
 * @param file `:memory:` for one that does not outlast the process
 * @param kept_ms entries that start with `live:` and are older are dropped now
 */
export function openMemory(file: string, now_ms: number, kept_ms = KEPT_MS): Memory {
  if (file !== ":memory:") mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const db = new DatabaseSync(file, { timeout: 1_000 });
  db.exec("pragma journal_mode = wal; pragma synchronous = normal; create table if not exists kept (key text primary key, value text not null, at_ms integer not null) strict");
  db.prepare("delete from kept where key like 'live:%' and at_ms < ?").run(now_ms - kept_ms);
  const read = db.prepare("select value from kept where key = ?");
  const write = db.prepare("insert into kept values (?, ?, ?) on conflict do update set value = excluded.value, at_ms = excluded.at_ms");
  const drop = db.prepare("delete from kept where key = ?");
  return {
    get<T>(key: string): T | null {
      const row = read.get(key);
      return row ? (JSON.parse(String(row.value)) as T) : null;
    },
    set(key, value) {
      const words = JSON.stringify(value);
      if (read.get(key)?.value !== words) write.run(key, words, Date.now());
    },
    forget: (key) => void drop.run(key),
    close: () => db.close(),
  };
}
