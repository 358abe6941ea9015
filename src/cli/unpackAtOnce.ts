import { gunzipSync, inflateRawSync, inflateSync } from "node:zlib";

const UNPACK = { "deflate-raw": inflateRawSync, deflate: inflateSync, gzip: gunzipSync } as const;

/** What is longer is refused here, and left to the file library, which unpacks it within bounds of its own. */
const BOUND = { maxOutputLength: 2 ** 30 } as const;

/**
 * Unpacks what was written to it when that is whole. Node's own sends every part of a workbook, and there
 * are a hundred small ones, through three layers of streams, to other threads and back: a fifth of all the
 * work of checking a small workbook (measured).
 */
class UnpackAtOnce extends TransformStream<Uint8Array, Uint8Array> {
  constructor(format: CompressionFormat) {
    const written: Uint8Array[] = [];
    super({
      transform: (bytes) => {
        written.push(bytes);
      },
      flush: (unpacked) => unpacked.enqueue(UNPACK[format](Buffer.concat(written), BOUND)),
    });
  }
}

globalThis.DecompressionStream = UnpackAtOnce as typeof DecompressionStream;
