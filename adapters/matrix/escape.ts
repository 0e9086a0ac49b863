/** Words as they are, in a plain body and in HTML: no tags, no links, nobody called. */

/**
 * Clients make links of bare addresses, rooms and people by themselves, in HTML and in plain bodies. A hair space (U+200A) after the
 * mark that gives them away ends the link and is hardly seen; the joiners of no width count as letters in some clients' patterns.
 */
const GIVE_AWAY = /(?<=\p{L}):(?=[\p{L}\p{N}/])|(?<=[\p{L}\p{N}])\.(?=\p{L}{2})|[@#!](?=[\p{L}\p{N}._=+/-])|\/(?=\/)/gu;

export const unlinked = (words: string): string => words.replace(GIVE_AWAY, "$&\u200A");

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

export const escapeHtml = (words: string): string => unlinked(words).replace(/[&<>"']/g, (mark) => ENTITIES[mark] ?? mark);
