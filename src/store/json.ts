/** Documents in text columns. Escaped by JSON, so that no character of a person's words can offend a database. */
export const pack = (value: unknown): string => JSON.stringify(value);
export const unpack = <T>(text: string): T => JSON.parse(text) as T;

/** Ids of networks stand in columns of their own; PostgreSQL takes every character there but NUL. */
export const column = (words: string): string => words.replaceAll("\u0000", "\uFFFD");
