import fc from "fast-check";

/** One change of a file's bytes. */
export interface Change {
  readonly how: number;
  /** Where, as a share of the length. */
  readonly at: number;
  readonly length: number;
  readonly put: string;
}

/** What a file is made of, and what happens to it. */
export interface Mutation {
  readonly base: number;
  /** Which of several parts, where it has any. */
  readonly part: number;
  readonly changes: readonly Change[];
}

/** Texts that are put in: what marks something in XML, JSON and delimited text, and values at the edge. */
const PUT = [
  ..."<>/\"'&=;,.|\t\n\r\\{}[]()#@%:-+~*",
  "&#0;",
  "&#xD800;",
  "&amp;",
  "<!--",
  "-->",
  "]]>",
  "<![CDATA[",
  "<!DOCTYPE a>",
  "<?a?>",
  "</c>",
  "<row>",
  "</row>",
  "</sheetData>",
  'r="A1"',
  'r="XFE1048577"',
  "xmlns:",
  'xml:space="preserve"',
  "\0",
  "\u0007",
  "\u200b",
  "\u202e",
  "\ufeff",
  "é",
  "К",
  "😀",
  "null",
  "true",
  "NaN",
  "1e999",
  "-0",
  "0",
  "9".repeat(40),
  "1048577",
  "4294967296",
  "__proto__",
  "constructor",
  "µΩ",
  "L1",
  "2026-02-30",
  "x".repeat(400),
] as const;

const change: fc.Arbitrary<Change> = fc.record({
  how: fc.nat(9),
  // Not fc.double: nearly all of the numbers that there are lie close to 0.
  at: fc.nat(999_999).map((millionths) => millionths / 1_000_000),
  length: fc.oneof(fc.nat(30), fc.nat(400)),
  put: fc.constantFrom(...PUT),
});

export const mutation = (bases: number): fc.Arbitrary<Mutation> =>
  fc.noBias(
    fc.record({
      base: fc.nat(bases - 1),
      part: fc.nat(9999),
      changes: fc.array(change, { minLength: 1, maxLength: 3, size: "max" }),
    }),
  );

const joined = (...pieces: readonly Uint8Array[]) => Uint8Array.from(Buffer.concat(pieces));

type Mutate = (bytes: Uint8Array, at: number, change: Change) => Uint8Array;

const CHANGES: readonly Mutate[] = [
  // Taken out, written twice, written over, put in, cut off.
  (bytes, at, { length }) => joined(bytes.subarray(0, at), bytes.subarray(at + length)),
  (bytes, at, { length }) =>
    joined(
      bytes.subarray(0, at + length),
      bytes.subarray(at, at + length),
      bytes.subarray(at + length),
    ),
  (bytes, at, { length, put }) =>
    joined(bytes.subarray(0, at), Buffer.from(put), bytes.subarray(at + length)),
  (bytes, at, { put }) => joined(bytes.subarray(0, at), Buffer.from(put), bytes.subarray(at)),
  (bytes, at) => bytes.subarray(0, at),
  // One bit, and one letter of a name or a number.
  (bytes, at, { length }) =>
    bytes.map((byte, index) => (index === at ? byte ^ (1 << (length % 8)) : byte)),
  (bytes, at, { length }) => bytes.map((byte, index) => (index === at ? 97 + (length % 26) : byte)),
  // A line twice, and two pieces that change places.
  (bytes, at) => {
    const [from, to] = [bytes.lastIndexOf(10, at) + 1, bytes.indexOf(10, at) + 1 || bytes.length];
    return joined(bytes.subarray(0, to), bytes.subarray(from, to), bytes.subarray(to));
  },
  (bytes, at, { length }) =>
    joined(
      bytes.subarray(0, at),
      bytes.subarray(at + length, at + 2 * length),
      bytes.subarray(at, at + length),
      bytes.subarray(at + 2 * length),
    ),
  // A name or a word called otherwise throughout, its last letter alone.
  (bytes, at) => {
    const text = Buffer.from(bytes).toString("latin1");
    const word = /\w+/.exec(text.slice(Math.max(0, at - 3)))?.[0] ?? "";
    return word === ""
      ? bytes
      : Uint8Array.from(Buffer.from(text.replaceAll(word, `${word.slice(0, -1)}q`), "latin1"));
  },
];

/** A file's bytes with changes in them. */
export const changed = (bytes: Uint8Array, changes: readonly Change[]): Uint8Array =>
  changes.reduce((sofar, one) => {
    const at = Math.min(Math.floor(one.at * sofar.length), Math.max(0, sofar.length - 1));
    return CHANGES[one.how]?.(sofar, at, one) ?? sofar;
  }, bytes);
