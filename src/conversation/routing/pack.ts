import { gunzipSync, gzipSync } from "node:zlib";

/** A file of the model: a JSON header and the numbers it describes, one after the other, compressed. */
export interface Packed<Header> { readonly header: Header; readonly bytes: Uint8Array }

export function pack(header: unknown, bytes: Uint8Array): Uint8Array {
  const text = new TextEncoder().encode(JSON.stringify(header));
  const all = new Uint8Array(4 + text.length + bytes.length);
  new DataView(all.buffer).setUint32(0, text.length, true);
  all.set(text, 4);
  all.set(bytes, 4 + text.length);
  return gzipSync(all, { level: 9 });
}

export function unpack<Header>(file: Uint8Array): Packed<Header> {
  const all = new Uint8Array(gunzipSync(file));
  const length = new DataView(all.buffer).getUint32(0, true);
  return { header: JSON.parse(new TextDecoder().decode(all.subarray(4, 4 + length))) as Header, bytes: all.subarray(4 + length) };
}
