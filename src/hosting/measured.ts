/** The core with its times counted: how long an answer took, and how it ended. */
import type { Core } from "../../adapters/adapter.ts";
import type { Metrics } from "./http.ts";

export function measured(core: Core, metrics: Pick<Metrics, "received">, seconds: () => number = () => performance.now() / 1000): Core {
  return {
    ...core,
    emergency(message) {
      const start = seconds();
      const reply = core.emergency(message);
      if (reply) metrics.received(message.place.network, seconds() - start, "emergency");
      return reply;
    },
    async receive(message) {
      const start = seconds();
      try {
        const reply = await core.receive(message);
        metrics.received(message.place.network, seconds() - start, "answered");
        return reply;
      } catch (error) {
        metrics.received(message.place.network, seconds() - start, "failed");
        throw error;
      }
    },
  };
}
