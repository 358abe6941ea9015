import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { fieldName } from "../words/fieldNames";
import { LEFT_OUT } from "../words/mappedTo";
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
export const doubled = (columns: readonly ExportColumn[]): Said<Told> | undefined => {
  const [earlier, later] = alike(columns) ?? [];
  if (!earlier || !later) return undefined;
  const name = numbered(columns.map(({ title }) => title))[columns.indexOf(later)] ?? "";
  return (told) =>
    told.intake.titles.alike(
      quoted(earlier.title),
      quoted(later.title),
      fieldName(earlier.field, told),
      name === later.title
        ? undefined
        : told.intake.titles.second(quoted(name), quoted(`${name}=${LEFT_OUT}`, 60)),
    );
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
