/** The least a bot can do with discord.js: log in and say the same thing to every interaction. What the library itself costs. */
import { Client, GatewayIntentBits } from "discord.js";

const client = new Client({ intents: [GatewayIntentBits.Guilds], rest: { api: process.env.GLEED_DISCORD_API ?? "" }, waitGuildTimeout: 300 });
client.on("error", () => {});
client.on("interactionCreate", async (interaction) => {
  if (interaction.isRepliable()) await interaction.reply({ content: "echo", flags: 64 }).catch(() => {});
});
await client.login(process.env.GLEED_DISCORD_TOKEN);
