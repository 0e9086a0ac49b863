/** Interactions by HTTP: what is not signed by the platform is refused; what is, is answered as over the gateway. */
import { generateKeyPairSync, sign } from "node:crypto";
import { expect, test } from "vitest";
import { publicKey } from "../../../adapters/discord/http.ts";
import { ids, type Json, slash } from "../../servers/discord/events.ts";
import { until } from "../../servers/discord/index.ts";
import { startBot, words } from "./bot.ts";

const pair = generateKeyPairSync("ed25519");
const hex = Buffer.from(pair.publicKey.export({ format: "jwk" }).x ?? "", "base64url").toString("hex");

async function post(port: number | null, body: Json, change: { timestamp?: number; forge?: boolean } = {}): Promise<Response> {
  const timestamp = String(change.timestamp ?? Math.floor(Date.now() / 1000));
  const words = JSON.stringify(body);
  const signature = sign(null, Buffer.from(timestamp + words), pair.privateKey).toString("hex");
  return fetch(`http://127.0.0.1:${port}/`, { method: "POST", headers: { "x-signature-ed25519": signature, "x-signature-timestamp": timestamp }, body: change.forge ? words.replace("help", "fire") : words });
}

test("signed interactions are taken, forged, old and unsigned ones refused", async () => {
  const bot = await startBot({ discord: { http: { public_key: hex, port: 0 } } });
  const { port } = bot.adapter;
  const ping = await post(port, { type: 1 });
  expect([ping.status, await ping.json()]).toEqual([200, { type: 1 }]);
  const interaction = slash("help", {}, { user: "700000000000000001", guild: ids.guild });
  interaction.token = `token-${interaction.id}`;
  const one = bot.server.track(interaction);
  expect((await post(port, interaction)).status).toBe(202);
  await until("the answer", () => one.answered_ms !== null);
  expect(words(one.message)).toMatch(/wood/i);
  expect((await post(port, interaction, { forge: true })).status).toBe(401);
  expect((await post(port, interaction, { timestamp: Math.floor(Date.now() / 1000) - 3600 })).status).toBe(401);
  expect((await fetch(`http://127.0.0.1:${port}/`, { method: "POST", body: "{}" })).status).toBe(401);
  expect((await fetch(`http://127.0.0.1:${port}/`)).status).toBe(405);
  // an interaction over the gateway as well is not taken: the two ways exclude each other
  bot.server.gateway.dispatch("INTERACTION_CREATE", slash("help", {}, { user: "700000000000000001", guild: ids.guild }));
  await bot.close();
  expect(bot.adapter.counts.interactions).toBe(1);
  expect(bot.server.problems).toEqual([]);
});

test("RFC 8032, section 7.1, test 2 verifies with a key in hexadecimal", async () => {
  const { verify } = await import("node:crypto");
  const key = publicKey("3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c");
  const signature = "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00";
  expect(verify(null, Buffer.from("72", "hex"), key, Buffer.from(signature, "hex"))).toBe(true);
  expect(() => publicKey("3d40")).toThrow(/64 hexadecimal/);
});
