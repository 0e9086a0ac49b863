/** The third fresh cases (third/README.md). The floor is what was reached after mending; the blind measurement stands in the README. */
import { replay } from "./written-replay.ts";

/** of 168 cases; of 441 needed cautions */
await replay("third", { first: 123, among_two: 131, unsafe: 3, cautions_missing: 23 });
