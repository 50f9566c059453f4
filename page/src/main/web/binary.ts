// SPDX-License-Identifier: Apache-2.0
import type { components } from "@api";

/** A record with the arrays that came beside it. */
export interface Parcel<T> {
  document: T;
  floats(name: string): Float32Array;
  ints(name: string): Int32Array;
}

type Entry = components["schemas"]["Entry"];

const MAGIC = "TWB1";

/**
 * Opens a binary document: eight bytes of prelude (the letters TWB1, length of the head), the head in JSON, the arrays.
 * The arrays are laid over the bytes that came, not copied.
 */
export function open<T>(buffer: ArrayBuffer): Parcel<T> {
  if (buffer.byteLength < 8 || new TextDecoder().decode(new Uint8Array(buffer, 0, 4)) !== MAGIC) {
    throw new Error("what came is no document with arrays");
  }
  const length = new DataView(buffer).getUint32(4, true);
  const head = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 8, length))) as {
    document: T;
    arrays: Entry[];
  };
  const find = (name: string, type: Entry["type"]): Entry => {
    const entry = head.arrays.find((a) => a.name === name && a.type === type);
    if (!entry) throw new Error(`the document has no array ${name}`);
    return entry;
  };
  return {
    document: head.document,
    floats: (name) => {
      const entry = find(name, "FLOAT32");
      return new Float32Array(buffer, 8 + length + entry.offset, entry.count);
    },
    ints: (name) => {
      const entry = find(name, "INT32");
      return new Int32Array(buffer, 8 + length + entry.offset, entry.count);
    },
  };
}
