import "../../src/cli/unpackAtOnce";
import { deflateRawSync, deflateSync, gzipSync } from "node:zlib";
import fc from "fast-check";
import { expect, test } from "vitest";

const unpacked = async (format: CompressionFormat, parts: readonly Uint8Array[]) => {
  const stream = new DecompressionStream(format);
  const writer = stream.writable.getWriter();
  const written = Promise.all([
    ...parts.map((part) => writer.write(Uint8Array.from(part))),
    writer.close(),
  ]);
  const [bytes] = await Promise.all([new Response(stream.readable).bytes(), written]);
  return bytes;
};

// Packed by zlib (RFC 1950 to 1952), in any number of pieces.
test.each([
  ["deflate-raw", deflateRawSync],
  ["deflate", deflateSync],
  ["gzip", gzipSync],
] as const)("%s comes out as it went in", async (format, pack) => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 5000 }), fc.nat(3), async (bytes, cuts) => {
      const packed = pack(bytes);
      const length = Math.ceil(packed.length / (cuts + 1));
      const parts = Array.from({ length: cuts + 1 }, (_, at) =>
        packed.subarray(at * length, (at + 1) * length),
      );
      expect(Buffer.from(await unpacked(format, parts)).equals(bytes)).toBe(true);
    }),
    { numRuns: 50 },
  );
});

test("what is cut short or no packed data at all is an error", async () => {
  const packed = deflateRawSync(Buffer.from("L1-E 5200 MΩ at 5 kV ".repeat(50)));
  await expect(unpacked("deflate-raw", [packed.subarray(0, 20)])).rejects.toThrow(/unexpected end/);
  await expect(unpacked("gzip", [packed])).rejects.toThrow(/incorrect header/);
});
