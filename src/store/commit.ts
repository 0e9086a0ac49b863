/** All that a message or a due row causes, in one transaction. */
import type { Answer } from "../answer.ts";
import type { Cause, Commit } from "../records/ports.ts";
import type { Decided, Snapshot, Write } from "../records/types.ts";
import { deletePicture, keepPicture } from "./album.ts";
import { cancel, takeDue, writeDue } from "./due.ts";
import type { Engine, Tx } from "./engine.ts";
import { Gone, isBrokenReference, isConflict, Stale } from "./errors.ts";
import { deleteFire, writeFire } from "./fires.ts";
import { forget } from "./forget.ts";
import { endGuide, sameGuide, writeGuide } from "./guides.ts";
import { joinHeater, writeHeater, writeHome } from "./heaters.ts";
import { keepAnswer } from "./inbox.ts";
import { sendLater, tellOther } from "./outbox.ts";
import { writePerson } from "./people.ts";
import { writePlaceRule } from "./place-rules.ts";
import { writeReminder } from "./reminders.ts";
import { versionsOf } from "./snapshot.ts";
import { moveOn } from "./talks.ts";

/** how long a message to somebody else that a decision caused is worth sending */
const TELL_USEFUL_MS = 12 * 3_600_000;

export async function commit(
  engine: Engine,
  cause: Cause,
  snapshot: Snapshot,
  decided: Decided<Answer | null>,
  now_ms: number,
): Promise<Commit> {
  try {
    await engine.write((tx) => apply(tx, engine.kind, cause, snapshot, decided, now_ms));
  } catch (error) {
    if (error instanceof Gone) return { outcome: "gone" };
    if (error instanceof Stale) return { outcome: "stale", why: error.message };
    const driver = error instanceof Error ? error.cause : undefined;
    if (isConflict(driver)) return { outcome: "stale", why: "another transaction was in the way" };
    if (isBrokenReference(driver)) return { outcome: "stale", why: `a record it points to is not there: ${(error as Error).message}` };
    throw error;
  }
  if (decided.writes.some(({ write }) => write === "forget-person")) await engine.scrub();
  return { outcome: "committed" };
}

async function apply(
  tx: Tx,
  kind: Engine["kind"],
  cause: Cause,
  snapshot: Snapshot,
  decided: Decided<Answer | null>,
  now_ms: number,
): Promise<void> {
  const forgotten = decided.writes.flatMap((one) => (one.write === "forget-person" ? [one.person_id] : []));
  const talk = decided.writes.findLast((one) => one.write === "talk");
  if (cause.cause === "due") await takeDue(tx, cause.row);
  await moveOn(tx, snapshot.talk, talk?.state ?? snapshot.talk.state, now_ms);
  const meant = snapshot.heaters[0];
  if (meant) await sameGuide(tx, meant.id, snapshot.guide, kind === "postgres");

  for (const write of decided.writes) await one(tx, write, snapshot, now_ms);
  await cancel(tx, decided.cancel);
  await writeDue(tx, decided.due);

  const { person } = snapshot;
  const { answer, also_tell = [] } = decided;
  if (cause.cause === "due") {
    if (answer) await sendLater(tx, cause.row, answer, now_ms);
  } else {
    if (!answer) throw new RangeError(`message ${cause.message_key} was decided without an answer`);
    await keepAnswer(tx, cause.message_key, forgotten.includes(person.id) ? null : person.id, answer, now_ms);
  }
  for (const { answer: told, ...to } of also_tell) if (told) await tellOther(tx, { ...to, answer: told }, TELL_USEFUL_MS, now_ms);
  for (const person_id of forgotten) await forget(tx, person_id);
}

async function one(tx: Tx, write: Write, snapshot: Snapshot, now_ms: number): Promise<void> {
  const versions = versionsOf(snapshot);
  const guide = (heater_id: string) => (snapshot.guide?.heater_id === heater_id ? snapshot.guide : null);
  switch (write.write) {
    case "person":
      return writePerson(tx, write.person, versions.get(`person/${write.person.id}`));
    case "heater":
      return writeHeater(tx, write.heater, versions.get(`heater/${write.heater.id}`), now_ms);
    case "join-heater":
      return joinHeater(tx, write.heater_id, write.person_id, now_ms);
    case "home":
      return writeHome(tx, write.home, versions.get(`home/${write.home.owner_id}`));
    case "fire":
      return writeFire(tx, write.fire);
    case "delete-fire":
      return deleteFire(tx, write.fire_id);
    case "guide":
      return writeGuide(tx, write.guide, guide(write.guide.heater_id));
    case "end-guide":
      return endGuide(tx, write.heater_id, guide(write.heater_id));
    case "reminder":
      return writeReminder(tx, write.reminder);
    case "group-rule":
      return writePlaceRule(tx, write.place_id, write.rule);
    case "picture":
      return keepPicture(tx, write.picture, write.bytes);
    case "delete-picture":
      return deletePicture(tx, write.picture_id, snapshot.person.id);
    case "talk":
    case "forget-person":
      return;
  }
}
