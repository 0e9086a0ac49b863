/** Who may bring us into a room. In a room we were let into, everybody may ask. */

/** @param list `*`, server names, people, rooms; empty: people of our own homeserver */
export function isInvited(list: readonly string[], me: string, room_id: string, inviter: string | null): boolean {
  const server = (id: string): string => id.slice(id.indexOf(":") + 1).toLowerCase();
  if (list.length === 0) return inviter !== null && server(inviter) === server(me);
  return list.some((entry) => {
    if (entry === "*") return true;
    if (entry.startsWith("!")) return entry === room_id;
    if (inviter === null) return false;
    return entry.startsWith("@") ? entry === inviter : entry.toLowerCase() === server(inviter);
  });
}
