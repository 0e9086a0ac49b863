/** The second fresh cases (second/README.md). The floor is the first, blind measurement: nobody had mended anything to please them. */
import { replay } from "./written-replay.ts";

/** of 168 cases; of 299 needed cautions */
await replay("second", { first: 144, among_two: 151, unsafe: 1, cautions_missing: 37 });
