/** One worker of the load bench: a core on the given database, fed by the parent process. */
import { silent } from "../../src/delivery/log.ts";
import { openCore } from "../../src/core/core.ts";
import type { Message } from "../../src/message.ts";

const core = await openCore({
  database: process.env.GLEED_DATABASE ?? ":memory:", settings: { timezone: "UTC", locale: "en-GB" }, windows_ms: {}, log: silent, ticking: true,
  outlets: [{ network: "lines", send: async () => ({ sent: true, native_id: null }) }],
});
process.on("message", ({ n, message }: { n: number; message: Message }) => {
  core.receive(message).then(
    ({ answer }) => process.send?.({ n, headline: answer.headline.id }),
    (error: unknown) => process.send?.({ n, error: String(error) }),
  );
});
process.on("disconnect", () => void core.close().then(() => process.exit(0)));
process.send?.({ ready: true });
