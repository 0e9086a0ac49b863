/** How much is taken from one person in one room: enough for anybody who types, too little for two programs that answer each other. */

export interface Budget {
  /** @param at_ms when the message was sent */
  take(who: string, text: string, at_ms: number): boolean;
}

export interface BudgetOptions {
  readonly most: number;
  readonly in_ms: number;
  /** the same words over and over */
  readonly same: number;
  readonly same_in_ms: number;
}

export function budget({ most, in_ms, same, same_in_ms }: BudgetOptions): Budget {
  const taken = new Map<string, { at_ms: number; text: string }[]>();
  return {
    take(who, text, at_ms) {
      const longest_ms = Math.max(in_ms, same_in_ms);
      const before = (taken.get(who) ?? []).filter((one) => one.at_ms > at_ms - longest_ms);
      taken.delete(who);
      taken.set(who, before);
      const oldest = taken.keys().next();
      if (taken.size > 10_000 && !oldest.done) taken.delete(oldest.value);
      if (before.filter((one) => one.at_ms > at_ms - in_ms).length >= most) return false;
      if (text !== "" && before.filter((one) => one.text === text && one.at_ms > at_ms - same_in_ms).length >= same) return false;
      before.push({ at_ms, text: text.slice(0, 200) });
      return true;
    },
  };
}
