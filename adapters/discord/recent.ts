/** Events that came a second time, after a resumed session or by another way. */

/** @returns a check that is true the first time an id is seen among the last `most` */
export function recent(most: number): (id: string) => boolean {
  const ids = new Set<string>();
  return (id) => {
    if (ids.has(id)) return false;
    ids.add(id);
    if (ids.size > most) ids.delete(ids.values().next().value as string);
    return true;
  };
}
