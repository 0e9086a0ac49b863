import fc from "fast-check";

/** Text of any code points, lone surrogates included, the common ones oftener. */
export const anyText = (maxLength: number): fc.Arbitrary<string> =>
  fc.array(fc.oneof(fc.integer({ min: 0, max: 0x2ff }), fc.integer({ min: 0, max: 0x10ffff })), { maxLength }).map((points) =>
    String.fromCodePoint(...points));
