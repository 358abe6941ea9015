import type { Told } from "../../messages/told";
import { answer, type Result, refuse } from "../../quantities/result";
import { asAnswered, type Evidence } from "../table/evidence";

export const ENCODINGS = ["utf-8", "utf-16le", "utf-16be", "windows-1252"] as const;
export type Encoding = (typeof ENCODINGS)[number];

/** A file's text, and how its bytes were read. */
export interface Decoded {
  readonly text: string;
  readonly encoding: Evidence<Encoding>;
}

/** So many bytes are looked at for the pattern of UTF-16. */
const LOOK = 4096;

/**
 * A file's bytes as text: by the mark at its start, by NULs in every second byte, as UTF-8 where it is
 * that throughout, else as Windows-1252.
 *
 * @param said the encoding, where the user has settled it
 * @returns `wrong` for a workbook or archive, and for a file that mixes UTF-8 with another encoding
 * @example decode(new Uint8Array([0x35, 0x20, 0xb5, 0x56])) // text "5 µV", encoding "windows-1252"
 */
export const decode = (bytes: Uint8Array, answered?: Encoding): Result<Decoded, Told> => {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3)
    return refuse("wrong", ({ intake }) => intake.file.archive);
  if (answered)
    return answer({
      text: textOf(bytes, answered),
      encoding: asAnswered(answered, ({ intake }) => intake.file.encodings[answered]),
    });
  const seen = marked(bytes) ?? striped(bytes);
  if (seen) return answer({ text: textOf(bytes, seen.value), encoding: seen });
  if (isPlain(bytes))
    return answer({
      text: textOf(bytes, "utf-8"),
      encoding: {
        value: "utf-8",
        evidence: ({ intake }) => intake.file.plain,
        confidence: "certain",
      },
    });
  try {
    return answer({
      text: new TextDecoder("utf-8", { fatal: true }).decode(bytes),
      encoding: {
        value: "utf-8",
        evidence: ({ intake }) => intake.file.soundUtf8,
        confidence: "certain",
      },
    });
  } catch {
    return fallback(bytes);
  }
};

/** Not UTF-8: Windows-1252, unless some characters are sound UTF-8 all the same. */
const fallback = (bytes: Uint8Array): Result<Decoded, Told> => {
  const loose = new TextDecoder("utf-8").decode(bytes);
  const sound = /[^\p{ASCII}\ufffd]/u.exec(loose);
  const broken = loose.indexOf("\ufffd");
  const line = (offset: number) => loose.slice(0, offset).split(/\r\n|\r|\n/).length;
  return sound
    ? refuse("wrong", ({ intake }) => intake.file.mixed(line(sound.index), line(broken)))
    : answer({
        text: textOf(bytes, "windows-1252"),
        encoding: {
          value: "windows-1252",
          evidence: ({ intake }) => intake.file.fallback(line(broken)),
          confidence: "likely",
        },
      });
};

const marked = ([first, second, third]: Uint8Array): Evidence<Encoding> | undefined => {
  const value: Encoding | undefined =
    first === 0xef && second === 0xbb && third === 0xbf
      ? "utf-8"
      : first === 0xff && second === 0xfe
        ? "utf-16le"
        : first === 0xfe && second === 0xff
          ? "utf-16be"
          : undefined;
  return (
    value && {
      value,
      evidence: ({ intake: { file } }) => file.byMark(file.encodings[value]),
      confidence: "certain",
    }
  );
};

/** UTF-16 without a mark: of what people write, nearly every second byte is NUL, on one side only. */
const striped = (bytes: Uint8Array): Evidence<Encoding> | undefined => {
  const look = bytes.subarray(0, LOOK);
  if (look.length < 4) return undefined;
  const nuls = [0, 0];
  for (let at = 0; at < look.length; at++)
    if (look[at] === 0) nuls[at % 2] = (nuls[at % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = nuls;
  const pairs = look.length / 2;
  const value: Encoding | undefined =
    odd > 0.6 * pairs && even < 0.05 * pairs
      ? "utf-16le"
      : even > 0.6 * pairs && odd < 0.05 * pairs
        ? "utf-16be"
        : undefined;
  return (
    value && {
      value,
      evidence: ({ intake: { file } }) => file.byNuls(file.encodings[value]),
      confidence: "likely",
    }
  );
};

const isPlain = (bytes: Uint8Array): boolean => {
  for (let at = 0; at < bytes.length; at++) if ((bytes[at] as number) > 0x7f) return false;
  return true;
};

const textOf = (bytes: Uint8Array, encoding: Encoding): string =>
  new TextDecoder(encoding).decode(bytes);
