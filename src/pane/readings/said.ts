import type { Asked } from "../../intake/place/placement";
import type { Encoding } from "../../intake/table/decode";
import { withMapping } from "../../intake/table/exportMappings";
import type { ExportOptions } from "../../intake/table/readExport";
import type { ExportMapping } from "../../sheets/exportMapping";

/** What the user has said about an export; whatever is not said is found by inspection. */
export interface Said
  extends Pick<ExportOptions, "decimal" | "dateOrder" | "shape" | "delimiter" | "titles"> {
  readonly encoding?: Encoding;
  /** Fields by title. */
  readonly columns: Readonly<Record<string, string>>;
  /** What texts of the export mean here, by field. */
  readonly means: Readonly<Partial<Record<Asked, Readonly<Record<string, string>>>>>;
  /** Whether readings come in the place of what the workbook holds, which then goes to the history. */
  readonly replace: boolean;
  /** The name under which this is kept for files of this shape; blank where it is not. */
  readonly keepAs: string;
}

export const NOTHING_SAID: Said = { columns: {}, means: {}, replace: false, keepAs: "" };

/** As an export's reader takes it. */
export const readingOptions = (
  { columns, decimal, dateOrder, shape, delimiter, titles }: Said,
  name: string,
): ExportOptions => ({ name, mapping: columns, decimal, dateOrder, shape, delimiter, titles });

/** The workbook's mappings with what was said added under its name, on top of the mapping it was read by. */
export const keptMappings = (
  mappings: readonly ExportMapping[],
  { keepAs, columns, means, decimal, dateOrder, shape }: Said,
  fingerprint: readonly string[],
  by: ExportMapping | undefined,
): readonly ExportMapping[] =>
  keepAs.trim() === ""
    ? mappings
    : withMapping(mappings, {
        name: keepAs.trim(),
        fingerprint: [...fingerprint],
        columns: { ...by?.columns, ...columns },
        decimal: decimal ?? by?.decimal,
        dateOrder: dateOrder ?? by?.dateOrder,
        shape: shape ?? by?.shape,
        means: { ...by?.means, ...means } as ExportMapping["means"],
      });
