import { quoted } from "../../quantities/quoted";
import { fieldName } from "../words/fieldNames";
import { numbered } from "../words/titleKeys";
import type { ExportColumn } from "../words/titles";

/** The first two columns that read alike. */
const alike = (columns: readonly ExportColumn[]): [ExportColumn, ExportColumn] | undefined => {
  const first = new Map<string, ExportColumn>();
  for (const column of columns) {
    if (column.field === undefined || column.field === "unit") continue;
    const key = JSON.stringify([column.field, column.says]);
    const before = first.get(key);
    if (before) return [before, column];
    first.set(key, column);
  }
  return undefined;
};

/** Why a table cannot be read whose columns read alike. */
export const doubled = (columns: readonly ExportColumn[]): string | undefined => {
  const [one, other] = alike(columns) ?? [];
  if (!one || !other) return undefined;
  const name = numbered(columns.map(({ title }) => title))[columns.indexOf(other)] ?? "";
  const how =
    name === other.title
      ? ""
      : `; the second is called ${quoted(name)}, such as "${name}=left out"`;
  return `the columns ${quoted(one.title)} and ${quoted(other.title)} both read as ${fieldName(one.field)}; say by a mapping which of them it is${how}.`;
};

/** The columns, of those that read alike the first; the others are left out, each with the title of the first. */
export const firstAlike = (columns: readonly ExportColumn[]): readonly ExportColumn[] => {
  const [one, other] = alike(columns) ?? [];
  return one && other
    ? firstAlike(
        columns.map((column) =>
          column === other
            ? { index: column.index, title: column.title, alike: one.title }
            : column,
        ),
      )
    : columns;
};
