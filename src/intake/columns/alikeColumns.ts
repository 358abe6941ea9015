import { quoted } from "../../quantities/quoted";
import { fieldName } from "../words/fieldNames";
import { numbered } from "../words/titleKeys";
import type { ExportColumn } from "../words/titles";

/** The first two columns that read alike. */
const alike = (columns: readonly ExportColumn[]): [ExportColumn, ExportColumn] | undefined => {
  const first = new Map<string, ExportColumn>();
  for (const column of columns) {
    if (column.field === undefined || column.field === "unit" || column.byTurns) continue;
    const key = JSON.stringify([column.field, column.says]);
    const earlier = first.get(key);
    if (earlier) return [earlier, column];
    first.set(key, column);
  }
  return undefined;
};

/** Why a table cannot be read whose columns read alike. */
export const doubled = (columns: readonly ExportColumn[]): string | undefined => {
  const [earlier, later] = alike(columns) ?? [];
  if (!earlier || !later) return undefined;
  const name = numbered(columns.map(({ title }) => title))[columns.indexOf(later)] ?? "";
  const how =
    name === later.title
      ? ""
      : `; the second is called ${quoted(name)}, such as ${quoted(`${name}=left out`, 60)}`;
  return `the columns ${quoted(earlier.title)} and ${quoted(later.title)} both read as ${fieldName(earlier.field)}; say by a mapping which of them it is${how}.`;
};

/** The columns, of those that read alike the first; the others are left out, each with the title of the first. */
export const firstAlike = (columns: readonly ExportColumn[]): readonly ExportColumn[] => {
  const [earlier, later] = alike(columns) ?? [];
  return earlier && later
    ? firstAlike(
        columns.map((column) =>
          column === later
            ? { index: column.index, title: column.title, alike: earlier.title }
            : column,
        ),
      )
    : columns;
};
