/** A stand-in for a chat network: it drops a second message under the same key, but only for a while; some can tell what arrived. */
export interface Shown {
  readonly key: string;
  readonly at_ms: number;
  readonly words: string;
  readonly maybe_repeat: boolean;
  readonly id: string;
}

export const WINDOW_MS = 60_000;
/** `forgetful` cannot say what became of a message; `knowing` can */
export const NETWORKS = ["forgetful", "knowing"] as const;
export const WINDOWS_MS = { forgetful: WINDOW_MS, knowing: WINDOW_MS };

export class Network {
  readonly shown: Shown[] = [];
  readonly #latest = new Map<string, Shown>();

  send(key: string, words: string, maybe_repeat: boolean, at_ms: number): string {
    const before = this.#latest.get(key);
    if (before && at_ms - before.at_ms < WINDOW_MS) return before.id;
    const now = { key, at_ms, words, maybe_repeat, id: `event ${this.shown.length}` };
    this.shown.push(now);
    this.#latest.set(key, now);
    return now.id;
  }

  lookUp(key: string): string | null {
    return this.#latest.get(key)?.id ?? null;
  }
}
