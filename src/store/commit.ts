/** All that a message or a due row causes, in one transaction. */
import type { Cause, Commit, Committing } from "../records/ports.ts";
import type { Snapshot, Write } from "../records/types.ts";
import { deletePicture, keepPicture, notePictureWidth } from "./album.ts";
import { endBuilder, writeBuilder, writeInvitation } from "./builders.ts";
import { cancel, takeDue, writeDue } from "./due.ts";
import type { Engine, Tx } from "./engine.ts";
import { Gone, isBrokenReference, isConflict, Stale } from "./errors.ts";
import { deleteFire, writeFire } from "./fires.ts";
import { forget } from "./forget.ts";
import { endGuide, sameGuides, writeGuide } from "./guides.ts";
import { writeGroup } from "./group-writes.ts";
import { joinHeater, writeHeater, writeHome } from "./heaters.ts";
import { keepAnswer } from "./inbox.ts";
import { answerOf, type Made, sendLater, tellOther } from "./outbox.ts";
import { writePerson } from "./people.ts";
import { writePlaceRule } from "./place-rules.ts";
import { writeReminders } from "./reminders.ts";
import { versionsOf } from "./snapshot.ts";
import { type Move, moveOn } from "./talks.ts";

/** how long a message to somebody else that a decision caused is worth sending */
const TELL_USEFUL_MS = 12 * 3_600_000;

/** All that these cause, or nothing of it. */
export async function commit(engine: Engine, given: readonly Committing[], now_ms: number): Promise<Commit> {
  try {
    await engine.write((tx) => apply(tx, engine.kind, given, now_ms));
  } catch (error) {
    if (error instanceof Gone) return { outcome: "gone" };
    if (error instanceof Stale) return { outcome: "stale", why: error.message };
    const driver = error instanceof Error ? error.cause : undefined;
    if (isConflict(driver)) return { outcome: "stale", why: "another transaction was in the way" };
    if (isBrokenReference(driver)) return { outcome: "stale", why: `a record it points to is not there: ${(error as Error).message}` };
    throw error;
  }
  if (given.some(({ decided }) => decided.writes.some(({ write }) => write === "forget-person" || write === "withdraw-card"))) await engine.scrub();
  return { outcome: "committed" };
}

/**
 * One transaction for all where that goes; where one of them is in the way, each by itself. So does whoever shares a heater: what the first one
 * changes about its fire, the second must not have overlooked.
 */
export async function commitMany(engine: Engine, given: readonly Committing[], now_ms: number): Promise<Commit[]> {
  const heaters = given.flatMap(({ snapshot }) => snapshot.heaters[0]?.id ?? []);
  const apart = given.length > 1 && new Set(heaters).size === heaters.length;
  if (apart && (await commit(engine, given, now_ms)).outcome === "committed") return given.map(() => ({ outcome: "committed" }));
  const each: Commit[] = [];
  for (const one of given) each.push(await commit(engine, [one], now_ms));
  return each;
}

async function apply(tx: Tx, kind: Engine["kind"], given: readonly Committing[], now_ms: number): Promise<void> {
  await takeDue(
    tx,
    given.flatMap(({ cause }) => (cause.cause === "due" ? cause.row : [])),
  );
  await moveOn(tx, given.map(moveOf), now_ms);
  await sameGuides(
    tx,
    given.flatMap(({ snapshot: { heaters, guide } }) => (heaters[0] ? { heater_id: heaters[0].id, guide } : [])),
    kind === "postgres",
  );

  for (const { snapshot, decided } of given) for (const write of decided.writes) await one(tx, write, snapshot, now_ms);
  await writeReminders(
    tx,
    given.flatMap(({ decided }) => decided.writes.flatMap((write) => (write.write === "reminder" ? write.reminder : []))),
  );
  for (const { decided } of given) await cancel(tx, decided.cancel);
  await writeDue(
    tx,
    given.flatMap(({ decided }) => decided.due),
  );
  const made: Made[] = [];
  for (const { cause, snapshot, decided } of given) made.push(...(await answered(tx, cause, snapshot, decided, now_ms)));
  await sendLater(tx, made, now_ms);
  for (const person_id of given.flatMap(({ decided }) => forgottenBy(decided))) await forget(tx, person_id, now_ms);
}

function moveOf({ snapshot, decided }: Committing): Move {
  const talk = decided.writes.findLast((one) => one.write === "talk");
  return { seen: snapshot.talk, state: talk?.state ?? snapshot.talk.state };
}

const forgottenBy = ({ writes }: Committing["decided"]): string[] => writes.flatMap((one) => (one.write === "forget-person" ? one.person_id : []));

/** The answer to a message is kept, that to a due row goes on its way, and so does what others are told. */
async function answered(tx: Tx, cause: Cause, { person }: Snapshot, decided: Committing["decided"], now_ms: number): Promise<Made[]> {
  const { answer, also_tell = [] } = decided;
  const told = also_tell.flatMap(({ answer: words, ...to }) => (words ? tellOther({ ...to, answer: words }, TELL_USEFUL_MS, now_ms) : []));
  if (cause.cause === "due") return answer ? [answerOf(cause.row, answer, now_ms), ...told] : told;
  if (!answer) throw new RangeError(`message ${cause.message_key} was decided without an answer`);
  await keepAnswer(tx, cause.message_key, forgottenBy(decided).includes(person.id) ? null : person.id, answer, now_ms);
  return told;
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
    case "group-rule":
      return writePlaceRule(tx, write.place_id, write.rule);
    case "builder-invitation":
      return writeInvitation(tx, snapshot.person.id, write);
    case "builder":
      return writeBuilder(tx, write.link);
    case "end-builder":
      return endBuilder(tx, write.heater_id, write.person_id);
    case "picture":
      return keepPicture(tx, write.picture, write.bytes);
    case "picture-width":
      return notePictureWidth(tx, write.picture_id, snapshot.person.id, write.width_mm);
    case "delete-picture":
      return deletePicture(tx, write.picture_id, snapshot.person.id);
    // these are kept together with the others' or by the commit itself
    case "reminder":
    case "talk":
    case "forget-person":
      return;
    default:
      return writeGroup(tx, write, now_ms);
  }
}
