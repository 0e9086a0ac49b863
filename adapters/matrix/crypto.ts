/**
 * Keys set up without anybody at hand, and the same calls again at every start change nothing: cross-signing, secret storage and the
 * backup of room keys. A new device finds its way back into old rooms with the recovery key alone.
 */
import { AuthType, type MatrixClient } from "matrix-js-sdk";
import type { CryptoApi, CryptoCallbacks } from "matrix-js-sdk/lib/crypto-api/index.js";
import { encodeRecoveryKey } from "matrix-js-sdk/lib/crypto-api/index.js";
import type { Log } from "../../src/delivery/log.ts";
import { CannotStart, type MatrixOptions } from "./options.ts";
import { readRecoveryKey, type RecoveryKey, writeRecoveryKey } from "./recovery-key.ts";

export interface KeyRing extends CryptoCallbacks {
  key: RecoveryKey | null;
}

/** Answers the SDK's questions for the key of the secret storage. */
export function keyRing(): KeyRing {
  const ring: KeyRing = {
    key: null,
    async getSecretStorageKey({ keys }) {
      const id = Object.keys(keys)[0];
      return ring.key && id !== undefined ? [id, ring.key] : null;
    },
  };
  return ring;
}

type Options = Pick<MatrixOptions, "recovery_key_file" | "password" | "log">;

/**
 * @throws CannotStart when the account has a secret storage that the recovery key does not open, and this device is not signed either
 */
export async function setUpKeys(client: MatrixClient, ring: KeyRing, options: Options): Promise<void> {
  const crypto = client.getCrypto();
  if (!crypto) throw new Error("encryption is not set up");
  const own = client.getSafeUserId();
  ring.key = readRecoveryKey(options.recovery_key_file);
  const stored = await client.secretStorage.getKey();
  if (stored && !(ring.key && (await client.secretStorage.checkKey(ring.key, stored[1])))) {
    if (await crypto.isCrossSigningReady()) {
      options.log.error({ file: options.recovery_key_file }, "the recovery key file is missing or does not fit; put it back, or old rooms are lost with this store");
      return crypto.checkKeyBackupAndEnable().then(() => {});
    }
    throw new CannotStart(
      `The account has keys from an earlier device, and ${options.recovery_key_file} does not open them. Put the recovery key back into that file. If it is lost for good, reset the encryption of the account in a client.`,
    );
  }
  // else a new device does not find the identity that is published already
  await crypto.userHasCrossSigningKeys(own, true);
  if (!ring.key) {
    const made = await crypto.createRecoveryKeyFromPassphrase();
    writeRecoveryKey(options.recovery_key_file, made.encodedPrivateKey ?? encodeRecoveryKey(made.privateKey) ?? "");
    ring.key = made.privateKey;
  }
  const key = ring.key;
  await crypto.bootstrapCrossSigning({ authUploadDeviceSigningKeys: uploadWith(own, options) });
  const hasBackup = (await crypto.getKeyBackupInfo()) !== null;
  await crypto.bootstrapSecretStorage({
    setupNewKeyBackup: !hasBackup,
    createSecretStorageKey: async () => ({ privateKey: key, encodedPrivateKey: encodeRecoveryKey(key) }),
  });
  if (hasBackup) await joinBackup(crypto, options.log);
}

/** The first upload of signing keys needs the password on some homeservers. */
const uploadWith =
  (user: string, { password }: Options) =>
  async (upload: (auth: { type: string; [more: string]: unknown } | null) => Promise<void>): Promise<void> => {
    try {
      await upload(null);
    } catch (error) {
      const session = (error as { data?: { session?: string } }).data?.session;
      if (session === undefined || !password) throw error;
      await upload({ type: AuthType.Password, identifier: { type: "m.id.user", user }, password: password.reveal(), session });
    }
  };

async function joinBackup(crypto: CryptoApi, log: Log): Promise<void> {
  if ((await crypto.getSessionBackupPrivateKey()) === null) await crypto.loadSessionBackupPrivateKeyFromSecretStorage();
  await crypto.checkKeyBackupAndEnable();
  log.info({}, "key backup is on");
}

/** Fetch from the backup what this device has not; for a new device that is everything. */
export async function restoreKeys(client: MatrixClient): Promise<{ readonly found: number; readonly restored: number }> {
  const { imported, total } = (await client.getCrypto()?.restoreKeyBackup()) ?? { imported: 0, total: 0 };
  return { found: total, restored: imported };
}
