import type * as z from "zod/mini";
import { fields as labels, lists as listNames } from "../messages/en/fields";
import { type Lineup, lineupSchema } from "./lineup";

type Word = string | number | boolean;

/** Kept for the builder, and no fact that people read. */
const OURS = "knownAs";

/** Where facts stand in a whole, places in lists left out: `breaker.gas.fillingMPa`. */
type FactPath<T> = {
  [K in Exclude<keyof T & string, typeof OURS>]-?: NonNullable<T[K]> extends Word
    ? K
    : NonNullable<T[K]> extends readonly (infer I)[]
      ? I extends Word
        ? K
        : `${K}.${FactPath<I>}`
      : string extends keyof NonNullable<T[K]>
        ? K
        : `${K}.${FactPath<NonNullable<T[K]>>}`;
}[Exclude<keyof T & string, typeof OURS>];

/** Path of a fact of a lineup: `panels.breaker.gas.fillingMPa`. */
export type FieldPath = FactPath<Lineup>;

/** One fact that a lineup can hold: where it stands, and what it is. */
export interface Field {
  readonly path: string;
  readonly holds: "text" | "number" | "day" | "words" | "numbers" | "weights" | readonly Word[];
}

/** A list of a lineup, such as the cables of a panel. */
export interface ListField {
  readonly path: string;
}

// A further fact of the schema is a type error until it has its label; so is a label of none.
const LABELS: Readonly<Record<FieldPath, string>> = labels satisfies Record<
  Exclude<keyof typeof labels, FieldPath>,
  never
> &
  Record<FieldPath, string>;

/** What a fact is called on sheets. */
export const labelOf = (path: string): string | undefined =>
  (LABELS as Readonly<Record<string, string>>)[path];

/** What a list is called, and one entry of it. */
export const listNameOf = (path: string): readonly [many: string, one: string] | undefined =>
  (listNames as Readonly<Record<string, readonly [string, string]>>)[path];

/** As much of a schema's definition as says what it holds. */
interface Definition {
  readonly type: string;
  readonly format?: string;
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>;
  readonly innerType?: z.core.$ZodType;
  readonly element?: z.core.$ZodType;
  readonly entries?: Readonly<Record<string, Word>>;
  readonly values?: readonly Word[];
  readonly options?: readonly z.core.$ZodType[];
  readonly in?: z.core.$ZodType;
  readonly out?: z.core.$ZodType;
}

/** What stands within what may be left out, has a default, or is read in another form. */
function definitionOf(schema: z.core.$ZodType): Definition {
  const definition = schema._zod.def as unknown as Definition;
  const within =
    definition.innerType ??
    (definition.out?._zod.def.type === "transform" ? definition.in : definition.out);
  return within ? definitionOf(within) : definition;
}

const HOLDS: Readonly<Record<string, Field["holds"]>> = {
  string: "text",
  number: "number",
  tuple: "words",
  record: "weights",
  boolean: [true, false],
};

function holdsOf({ type, format, entries, values, options, element }: Definition): Field["holds"] {
  if (entries) return Object.values(entries);
  if (values) return values;
  if (options) return options.flatMap((option) => definitionOf(option).values ?? []);
  if (element) return definitionOf(element).type === "number" ? "numbers" : "words";
  return format === "date" ? "day" : (HOLDS[type] ?? "text");
}

function walk(schema: z.core.$ZodType, path: string): (Field | ListField)[] {
  const definition = definitionOf(schema);
  const { shape } = definition;
  const below = (name: string) => (path === "" ? name : `${path}.${name}`);
  if (shape)
    return Object.entries(shape).flatMap(([name, part]) =>
      name === OURS ? [] : walk(part, below(name)),
    );
  const item = definition.element && definitionOf(definition.element);
  return item?.shape && definition.element
    ? [{ path }, ...walk(definition.element, path)]
    : [{ path, holds: holdsOf(definition) }];
}

const ALL = walk(lineupSchema, "");

/** Every fact that a lineup can hold, in the order of its schema. */
export const FIELDS: readonly Field[] = ALL.filter((one) => "holds" in one);

/** Every list of a lineup whose entries are described by facts of their own. */
export const LISTS: readonly string[] = ALL.flatMap((one) => ("holds" in one ? [] : one.path));
