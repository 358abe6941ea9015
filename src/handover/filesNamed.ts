import type { Content } from "./content";

/** Endings of photos, certificates and other papers that a record may name (common practice, no source). */
const ENDINGS =
  "jpe?g|png|gif|webp|heic|tiff?|bmp|mp4|mov|pdf|docx?|odt|xlsx?|ods|csv|txt|zip|cfg|dat";
const FILE = new RegExp(`[^.]\\.(?:${ENDINGS})$`, "i");

/** What may stand around a name in a sentence and does not belong to it. */
const AROUND = /^["'([]+|["')\].,:!?]+$/g;

/**
 * Names of files among the words of a text; one with a space in it cannot be told there.
 *
 * @example filesIn("Film on the contact (see bolt-3.jpg).") // ["bolt-3.jpg"]
 */
export const filesIn = (text: string): string[] =>
  text
    .split(/[\s;,]+/)
    .map((word) => word.replace(AROUND, ""))
    .filter((word) => FILE.test(word));

/**
 * Names of files in a cell that holds nothing else, with semicolons between them.
 *
 * @example filesListed("pole L1.png; report 12.pdf") // ["pole L1.png", "report 12.pdf"]
 */
export const filesListed = (text: string): string[] =>
  text
    .split(/[;\r\n]+/)
    .map((name) => name.trim())
    .filter((name) => name !== "");

/** The column that names exports, which are kept by themselves. */
const ORIGIN = "Origin";

/** Photos, certificates and other files that records, instruments, repairs and the punch list name, each once; also those that no file can have. */
export const filesNamed = ({ rows, instruments, punch, repairs }: Content): readonly string[] => {
  const texts = [
    ...rows.flatMap(({ cells }) =>
      cells
        .filter(({ role, column }) => (role === "entry" || role === "note") && column !== ORIGIN)
        .map(({ value }) => value),
    ),
    ...instruments.flatMap((instrument) => Object.values(instrument)),
    ...repairs.flatMap(({ cause, done }) => [cause, done]),
    ...punch.map(({ note }) => note),
  ];
  const names = [
    ...texts.flatMap((text) => (typeof text === "string" ? filesIn(text) : [])),
    ...punch.flatMap(({ files }) => filesListed(files)),
  ];
  return [...new Set(names.map((name) => name.replace(/^.*[/\\]/, "")))].sort();
};
