/** "Builder code K7QM-4TZP": looks up what the code stands for before deciding, since deciding itself sees only one's own records. */
import type { Message } from "../message.ts";
import type { Store } from "../records/ports.ts";
import { builderCodeIn } from "../builder/code.ts";

export async function withBuilderCode(store: Pick<Store, "builderInvitation">, message: Message, now_ms: number): Promise<Message> {
  const code = builderCodeIn(message.text);
  return code ? { ...message, builder_invitation: await store.builderInvitation(code, now_ms) } : message;
}
