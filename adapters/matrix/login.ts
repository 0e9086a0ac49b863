/** Which account and which device we are. Once logged in, the device stays: its keys lie in the store. */
import { createClient, MatrixError } from "matrix-js-sdk";
import type { Logger } from "matrix-js-sdk/lib/logger.js";
import { CannotStart, type MatrixOptions } from "./options.ts";
import type { Rows } from "./store/rows.ts";

export interface Credentials {
  readonly user_id: string;
  readonly device_id: string;
  readonly token: string;
}

const DEVICE = "Gleed";

/** @throws CannotStart when the account refuses us, MatrixError or ConnectionError when the homeserver does not answer as it should */
export async function login(options: Pick<MatrixOptions, "homeserver" | "user" | "token" | "password">, kept: Rows, logger: Logger): Promise<Credentials> {
  const stored = storedIn(kept);
  if (options.token) {
    const token = options.token.reveal();
    const { user_id, device_id } = await whoAmI(options.homeserver, token, logger);
    if (!device_id) throw new CannotStart("GLEED_MATRIX_TOKEN belongs to no device; take the token of a login, which has one.");
    if (stored?.device_id !== device_id) await refuseUsedDevice(options.homeserver, token, user_id, device_id, logger);
    return keep(kept, { user_id, device_id, token });
  }
  const state = stored ? await stateOf(options.homeserver, stored, logger) : "ended";
  if (stored && state === "good") return stored;
  if (!options.password || !options.user) {
    throw new CannotStart("The Matrix account needs GLEED_MATRIX_TOKEN, or GLEED_MATRIX_USER with GLEED_MATRIX_PASSWORD.");
  }
  const client = createClient({ baseUrl: options.homeserver, logger });
  const answer = await client
    .loginRequest({
      type: "m.login.password",
      identifier: { type: "m.id.user", user: options.user },
      password: options.password.reveal(),
      initial_device_display_name: DEVICE,
      // a session that was ended took its device along: the next is a new one, which the recovery key leads back into old rooms
      ...(stored && state === "paused" ? { device_id: stored.device_id } : {}),
    })
    .catch((error: unknown) => {
      if (error instanceof MatrixError && error.httpStatus === 403) throw new CannotStart("The homeserver refuses GLEED_MATRIX_USER with this password.");
      throw error;
    });
  return keep(kept, { user_id: answer.user_id, device_id: answer.device_id, token: answer.access_token });
}

function storedIn(kept: Rows): Credentials | null {
  const text = kept.account("credentials");
  return text ? (JSON.parse(text) as Credentials) : null;
}

function keep(kept: Rows, credentials: Credentials): Credentials {
  const before = storedIn(kept);
  if (before && before.user_id !== credentials.user_id) {
    throw new CannotStart(`The Matrix store belongs to ${before.user_id}, not to ${credentials.user_id}; give the other account a store of its own.`);
  }
  kept.setAccount("credentials", JSON.stringify(credentials));
  return credentials;
}

async function whoAmI(homeserver: string, token: string, logger: Logger) {
  try {
    return await createClient({ baseUrl: homeserver, accessToken: token, logger }).whoami();
  } catch (error) {
    if (error instanceof MatrixError && error.httpStatus === 401) throw new CannotStart("The homeserver does not know GLEED_MATRIX_TOKEN (any longer).");
    throw error;
  }
}

/** A device that has keys already, of which this store knows nothing, can never be used again. */
async function refuseUsedDevice(homeserver: string, token: string, user_id: string, device_id: string, logger: Logger): Promise<void> {
  const { device_keys } = await createClient({ baseUrl: homeserver, accessToken: token, logger }).downloadKeysForUsers([user_id]);
  if (device_keys[user_id]?.[device_id]) {
    throw new CannotStart(
      `The keys of the device ${device_id} are not in this store, so GLEED_MATRIX_TOKEN is of no more use. Log in anew and set the new token; the recovery key does the rest.`,
    );
  }
}

/** "paused": the homeserver wants the password again for the same device (`soft_logout`). */
async function stateOf(homeserver: string, { token }: Credentials, logger: Logger): Promise<"good" | "paused" | "ended"> {
  try {
    await createClient({ baseUrl: homeserver, accessToken: token, logger }).whoami();
    return "good";
  } catch (error) {
    if (!(error instanceof MatrixError && error.httpStatus === 401)) throw error;
    return (error.data as { soft_logout?: boolean }).soft_logout ? "paused" : "ended";
  }
}
