const ENCODING = /^<\?xml[^>]*?\bencoding\s*=\s*["']([^"']+)["']/;

/**
 * The bytes of an XML part in UTF-8; of one in another encoding (UTF-16, or what its declaration names)
 * a copy that says so.
 */
export function inUtf8(bytes: Uint8Array): Uint8Array {
  const [first = 0, second = 0] = bytes;
  const wide =
    (first === 0xff && second === 0xfe) || (first !== 0 && second === 0)
      ? "utf-16le"
      : (first === 0xfe && second === 0xff) || (first === 0 && second !== 0)
        ? "utf-16be"
        : undefined;
  const said =
    wide ?? ENCODING.exec(new TextDecoder("latin1").decode(bytes.subarray(0, 200)))?.[1] ?? "utf-8";
  if (/^(utf-?8|us-ascii|ascii)$/i.test(said)) return bytes;
  const text = new TextDecoder(said).decode(bytes);
  return new TextEncoder().encode(
    text.replace(ENCODING, (head, name: string) => head.replace(name, "UTF-8")),
  );
}

const decoder = new TextDecoder("utf-8", { ignoreBOM: true });

/** Text of UTF-8, its mark with it, so that it comes out again as it went in. */
export const textOf = (bytes: Uint8Array): string => decoder.decode(bytes);

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
