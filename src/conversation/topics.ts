export * from "../topics.ts";
