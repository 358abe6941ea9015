import { historyOf } from "../sheets/ours/historySheet";
import type { RecordBook } from "../sheets/recordBook";

/** Where a reading comes from, as intake writes it: the export's name, a line, and the time that it has. */
const ORIGIN = /^(.+) line (\d+)(?: at (\d{1,2}:\d{2}(?::\d{2})?))?$/;

/** Where in an export a reading was brought in from; the time is blank where the export has none. */
export interface ExportLine {
  readonly name: string;
  readonly line: number;
  readonly time: string;
}

/** The export and the line of it that an origin names; undefined for any other text. */
export function exportLine(origin: string): ExportLine | undefined {
  const [, name, line, time = ""] = ORIGIN.exec(origin) ?? [];
  return name === undefined ? undefined : { name, line: Number(line), time };
}

/** Plain file names alone: nothing that leads out of the workbook's folder, and nothing that a file system refuses. */
export const isPlain = (name: string): boolean =>
  !/[/\\:*?"<>|\p{Cc}]/u.test(name) && !name.startsWith(".") && !/[. ]$/.test(name);

/** Names of the exports that a workbook's readings were brought in from, each once. */
export const exportsOf = ({
  snapshot,
  tables,
  remembered,
}: Pick<RecordBook, "snapshot" | "tables" | "remembered">): readonly string[] => {
  const origins = [
    ...tables.flatMap(({ rows }) => rows.map(({ origin }) => origin)),
    // The reading that failed came out of an export as well as its retest.
    ...historyOf(snapshot).map(({ source }) => source),
  ].flatMap((origin) => exportLine(String(origin ?? ""))?.name ?? []);
  const brought = [remembered.last, remembered.before].flatMap((intake) => intake?.files ?? []);
  const names = [...origins, ...brought].map((name) => name.replace(/^.*[/\\]/, ""));
  return [...new Set(names)].filter(isPlain).sort();
};
