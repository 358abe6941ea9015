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

/** Characters of a long text that are put into bytes at once. */
const AT_ONCE = 2 ** 18;

/**
 * The bytes of a long text that is made piece by piece, and never held as a whole.
 *
 * @param first what becomes of the first piece
 */
export function bytesOfPieces(
  pieces: Iterable<string>,
  first: (piece: string) => string,
): Uint8Array {
  let made = new Uint8Array(AT_ONCE);
  let [length, waiting, isFirst] = [0, "", true];
  const encode = () => {
    // A character takes at most three bytes for each of its units.
    const room = length + waiting.length * 3;
    if (room > made.length) {
      const longer = new Uint8Array(Math.max(room, made.length * 2));
      longer.set(made.subarray(0, length));
      made = longer;
    }
    length += new TextEncoder().encodeInto(waiting, made.subarray(length)).written;
    waiting = "";
  };
  for (const piece of pieces) {
    waiting += isFirst ? first(piece) : piece;
    isFirst = false;
    if (waiting.length >= AT_ONCE) encode();
  }
  encode();
  return made.subarray(0, length);
}
