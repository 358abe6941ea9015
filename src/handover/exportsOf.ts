import { historyOf } from "../sheets/ours/historySheet";
import type { RecordBook } from "../sheets/recordBook";

/** One export in a text of the origin column: its name, its lines, and the time that the last of them has. */
const ORIGIN = /^(.+) line (\d+(?:, \d+)*)(?: …)?(?: at (\d{1,2}:\d{2}(?::\d{2})?))?$/;

/** Between two exports that both gave readings of a record. */
const BETWEEN = /(?<=[\d…]); /;

/** Lines of an export that a record was brought in from; the time is blank where the export has none. */
export interface ExportLines {
  readonly name: string;
  readonly lines: readonly number[];
  readonly time: string;
}

/** The exports that an origin names, with their lines; undefined where any of its text says something else. */
export function exportLines(origin: string): readonly ExportLines[] | undefined {
  const found = origin.split(BETWEEN).map((one) => {
    const [, name, lines = "", time = ""] = ORIGIN.exec(one) ?? [];
    return name === undefined ? undefined : { name, lines: lines.split(", ").map(Number), time };
  });
  return found.every((one) => one !== undefined) ? found : undefined;
}

/** Names that some file system keeps for devices, with any ending. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

/** Plain file names alone: nothing that leads out of the workbook's folder, and nothing that a file system refuses. */
export const isPlain = (name: string): boolean =>
  !/[/\\:*?"<>|\p{Cc}]/u.test(name) &&
  !name.startsWith(".") &&
  !/[. ]$/.test(name) &&
  !DEVICE.test(name);

/** Names of the exports that a workbook's readings were brought in from, each once; also those that no file can have. */
export const exportsOf = ({
  snapshot,
  tables,
  remembered,
}: Pick<RecordBook, "snapshot" | "tables" | "remembered">): readonly string[] => {
  const origins = [
    ...tables.flatMap(({ rows }) => rows.map(({ origin }) => origin)),
    // The reading that failed came out of an export as well as its retest.
    ...historyOf(snapshot).map(({ source }) => source),
  ].flatMap((origin) => (exportLines(String(origin ?? "")) ?? []).map(({ name }) => name));
  const brought = [remembered.last, remembered.before].flatMap((intake) => intake?.files ?? []);
  const names = [...origins, ...brought].map((name) => name.replace(/^.*[/\\]/, ""));
  return [...new Set(names)].sort();
};
