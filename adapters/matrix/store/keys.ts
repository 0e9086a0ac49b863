/** IndexedDB keys as text: the same key always gives the same text, and comes back as it was. */

export type Key = string | number | Date | Uint8Array | ArrayBuffer | readonly Key[];
type Coded = string | readonly ["n", string] | readonly ["d", number] | readonly ["b", string] | readonly ["a", readonly Coded[]];

const code = (key: Key): Coded => {
  if (typeof key === "string") return key;
  if (typeof key === "number") return ["n", String(key)];
  if (key instanceof Date) return ["d", key.getTime()];
  if (key instanceof ArrayBuffer) return ["b", Buffer.from(key).toString("base64")];
  if (ArrayBuffer.isView(key)) {
    const view = key as Uint8Array;
    return ["b", Buffer.from(view.buffer, view.byteOffset, view.byteLength).toString("base64")];
  }
  if (Array.isArray(key)) return ["a", key.map(code)];
  throw new TypeError("not a key that IndexedDB knows");
};

function decode(coded: Coded): Key {
  if (typeof coded === "string") return coded;
  switch (coded[0]) {
    case "n":
      return Number(coded[1]);
    case "d":
      return new Date(coded[1]);
    case "b":
      return new Uint8Array(Buffer.from(coded[1], "base64")).buffer;
    case "a":
      return coded[1].map(decode);
  }
}

export const keyText = (key: Key): string => JSON.stringify(code(key));
export const keyOf = (text: string): Key => decode(JSON.parse(text) as Coded);
