import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { KINDS } from "../../records/kinds";
import { FIELDS } from "./fields";
import { OWN_LANGUAGE } from "./languages/languages";
import { isStated } from "./statedColumns";

/** What a field is called in messages. */
export const fieldName = (field: string | undefined, { intake }: Told): string => {
  if (field === undefined) return intake.leftOut;
  if (isStated(field)) return intake.stated[field];
  const names: Readonly<Record<string, string>> = intake.fields;
  return Object.hasOwn(names, field) ? String(names[field]) : quoted(field);
};

/** Whether a field of an export is measured, so that its numbers show the decimal mark. */
export const isMeasured = (field: string) =>
  field === "reading" ||
  ENTERED.has(field) ||
  (Object.hasOwn(FIELDS, field) && FIELDS[field]?.quantity !== undefined);

/** Columns of the records that take a number. */
const ENTERED: ReadonlySet<string> = new Set(
  KINDS.flatMap(({ columns }) =>
    columns.flatMap(({ id, role, accepts }) =>
      role === "entry" && (accepts?.type === "number" || accepts?.type === "reading") ? id : [],
    ),
  ),
);

/** Titles that are understood, each with its field. */
export const knownTitles = (): string =>
  Object.keys(FIELDS)
    .map((field) => `${OWN_LANGUAGE.titles[field]?.[0]} (${field})`)
    .join(", ");
