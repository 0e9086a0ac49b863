/** The measures of the net. */

import { LEARNT_KINDS } from "./kinds.ts";

/** Numbers a row of the table has. */
export const WIDTH = 40;
/** How many filters lie over one word, over two, over three. */
export const FILTERS_OVER = [24, 32, 32] as const;
export const FILTERS_IN_ALL = FILTERS_OVER.reduce((sum, count) => sum + count, 0);
/** What one word adds to the filters: one share for each place it may have under each filter. */
export const SHARES = FILTERS_OVER.reduce((sum, count, at) => sum + count * (at + 1), 0);
/** The kinds of danger, and last none. */
export const OUTCOMES = LEARNT_KINDS.length + 1;
