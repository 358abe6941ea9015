import type { RecordBook } from "../sheets/recordBook";

/** Where a reading comes from, as intake writes it: the export's name and a line. */
const ORIGIN = /^(.+) line \d+$/;

/** Plain file names alone: nothing that leads out of the workbook's folder. */
const isPlain = (name: string): boolean => !/[/\\:]/.test(name) && !name.startsWith(".");

/** Names of the exports that a workbook's readings were brought in from, each once. */
export const exportsOf = ({ tables, remembered }: RecordBook): readonly string[] => {
  const origins = tables.flatMap(({ rows }) =>
    rows.flatMap(({ origin }) => ORIGIN.exec(String(origin ?? ""))?.[1] ?? []),
  );
  const brought = [remembered.last, remembered.before].flatMap((intake) => intake?.files ?? []);
  const names = [...origins, ...brought].map((name) => name.replace(/^.*[/\\]/, ""));
  return [...new Set(names)].filter(isPlain).sort();
};
