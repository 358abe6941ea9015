import * as z from "zod";
import type { ArrivalOptions } from "../../intake/place/arrival";
import { joinedWords, readSynonyms, type Synonyms } from "../../intake/words/synonyms";
import { KINDS } from "../../records/kinds";
import { readText, UsageError } from "../files/files";

const columnsSaid = z.record(z.string(), z.string());
const MEANT: ReadonlySet<string> = new Set([
  ...["object", "part", "position", "stage", "test"],
  ...new Set(
    KINDS.flatMap(({ columns }) =>
      columns.flatMap(({ id, accepts }) => (accepts?.type === "list" ? id : [])),
    ),
  ),
]);
const meansSaid = z.record(
  z.string().refine((field) => MEANT.has(field)),
  z.record(z.string(), z.string()),
);

/** What columns mean: `Title=field, …` as it was typed, or the name of a JSON file that says so. */
export const readColumns = (said: string): Readonly<Record<string, string>> =>
  valid(
    columnsSaid,
    said.includes("=") ? pairs(said, "last") : readObject(said, "columns"),
    said,
    "columns",
  );

/** What names mean: `field: text=name, …; field: …` as it was typed, or the name of a JSON file that says so. */
export const readMeans = (said: string): NonNullable<ArrivalOptions["means"]> =>
  valid(
    meansSaid,
    said.includes("=")
      ? Object.fromEntries(
          said.split(";").flatMap((one) => {
            const at = one.indexOf(":");
            return one.trim() === ""
              ? []
              : [[one.slice(0, Math.max(0, at)).trim(), pairs(one.slice(at + 1), "first")]];
          }),
        )
      : readObject(said, "means"),
    said,
    "means",
  );

/** The words for titles that a synonym file has. */
export const readWords = (file: string): Synonyms => {
  const read = readSynonyms(readText(file));
  if (!read.ok) throw new UsageError(({ told }) => `${file}: ${read.say(told)}`);
  return read.value;
};

/** The words for titles that a workbook knows, with those of a synonym file before them. */
export const withWords = (
  known: Synonyms | undefined,
  file: string | undefined,
): Synonyms | undefined => (file === undefined ? known : joinedWords(readWords(file), known));

/** Pairs with an equals sign between: the last of a title and its field, the first of a text and its name, since names such as =H01 begin with one. */
const pairs = (said: string, sign: "first" | "last"): Record<string, string> | undefined => {
  const read = said.split(",").map((pair): [string, string] => {
    const at = sign === "first" ? pair.indexOf("=") : pair.lastIndexOf("=");
    return at < 0 ? ["", ""] : [pair.slice(0, at).trim(), pair.slice(at + 1).trim()];
  });
  return read.every(([key, value]) => key !== "" && value !== "")
    ? Object.fromEntries(read)
    : undefined;
};

/** What an option holds, by which the texts say how it is written. */
type Form = "columns" | "means";

const readObject = (file: string, form: Form): unknown => {
  const text = readText(file);
  try {
    return JSON.parse(text);
  } catch {
    throw new UsageError(({ forms }) => forms.noJson(file, forms[form]));
  }
};

const valid = <T>(shape: z.ZodType<T>, value: unknown, said: string, form: Form): T => {
  const read = shape.safeParse(value);
  if (read.success) return read.data;
  throw new UsageError(({ forms }) => forms.notUnderstood(said, forms[form]));
};
