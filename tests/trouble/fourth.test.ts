/** The fourth fresh cases (fourth/README.md). The floor is the first, blind measurement. */
import { replay } from "./written-replay.ts";

/** of 168 cases; of 399 needed cautions */
await replay("fourth", { first: 116, among_two: 131, unsafe: 5, cautions_missing: 59 });
