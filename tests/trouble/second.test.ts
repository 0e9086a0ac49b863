/** The second fresh cases (second/README.md). The floor is what the mending reached, no longer blind. */
import { replay } from "./written-replay.ts";

/** of 168 cases; of 299 needed cautions. First measured, blind: 144, 151, 1 and 37 */
await replay("second", { first: 163, among_two: 164, unsafe: 0, cautions_missing: 2 });
