import type { CellValue, Column, Row } from "../../records/kind";
import type { CellWrite } from "../cells/cell";
import { tableReference } from "../cells/formula";
import type { PlannedSheet } from "../plan/plannedSheet";

/** A worksheet function with its examples, as its documentation has it. */
export interface ShownFunction {
  readonly name: string;
  readonly text: string;
  readonly gives: string;
  readonly parameters: readonly { readonly name: string; readonly optional: boolean }[];
  readonly examples: readonly {
    readonly formula: string;
    readonly arguments: readonly Argument[];
    readonly result: CellValue;
  }[];
}

type Argument = CellValue | readonly (readonly CellValue[])[];

/** Texts of the sheet. */
export interface ExampleText {
  readonly title: string;
  readonly purpose: string;
  readonly caution: string;
}

export const EXAMPLE_SHEET = "Function examples";
const EXAMPLE_TABLE = "GearExamples";

/** An example takes at most so many cells; a longer array stays in its formula. */
const CELLS = 7;
const cellIds = Array.from({ length: CELLS }, (_, at) => `argument${at + 1}`);

const column = (id: string, header: string, width: number, role: Column["role"]): Column => ({
  id,
  header,
  role,
  width,
});

const COLUMNS: readonly Column[] = [
  column("name", "Function", 22, "key"),
  column("formula", "As it is typed", 40, "note"),
  ...cellIds.map((id, at) => column(id, `Argument ${at + 1}`, 12, "entry")),
  column("result", "Gives", 14, "computed"),
  column("gives", "Unit or kind", 24, "note"),
  column("usage", "Arguments in their order", 44, "note"),
  column("text", "What it is for", 60, "note"),
  column("source", "Source", 60, "computed"),
];
const ref = tableReference(EXAMPLE_TABLE, COLUMNS);
const at = (id: string) => COLUMNS.findIndex((one) => one.id === id);

/**
 * Every worksheet function with its examples, live: the arguments stand in cells of their own, and what they
 * come to follows from these.
 *
 * @param functions with their examples
 * @param sourceOf what `GEAR.SOURCE` says of a function, until a spreadsheet computes it
 */
export function exampleSheet(
  functions: readonly ShownFunction[],
  sourceOf: (name: string) => string,
  text: ExampleText,
): { readonly planned: PlannedSheet; readonly writes: readonly CellWrite[] } {
  const examples = functions.flatMap((one) =>
    one.examples.map((example) => ({ one, ...placed(example, one.name) })),
  );
  const rows = examples.map(
    ({ one, cells, typed }): Row => ({
      name: `GEAR.${one.name}`,
      text: firstSentence(one.text),
      usage: one.parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", "),
      ...Object.fromEntries(cells.map((cell, index) => [cellIds[index], cell])),
      gives: one.gives,
      formula: typed,
    }),
  );
  const writes = examples.flatMap(({ one, formula, result }, row) => [
    ...COLUMNS.flatMap(({ id, role }, column): CellWrite[] =>
      role === "computed" || rows[row]?.[id] === undefined
        ? []
        : [{ row, column, value: rows[row]?.[id] ?? null }],
    ),
    { row, column: at("result"), value: result, formula },
    {
      row,
      column: at("source"),
      value: sourceOf(one.name),
      formula: `_xldudf_GEAR_SOURCE(${ref("name")})`,
    },
  ]);
  const planned: PlannedSheet = {
    sheet: EXAMPLE_SHEET,
    table: EXAMPLE_TABLE,
    title: text.title,
    purpose: text.purpose,
    cautions: [text.caution],
    columns: COLUMNS,
    rows,
  };
  return { planned, writes };
}

const firstSentence = (text: string): string => /^.*?\.(?=\s|$)/.exec(text)?.[0] ?? text;

/** An example with its arguments in cells, and its formula that takes them from there. */
function placed(
  { formula: typed, arguments: given, result }: ShownFunction["examples"][number],
  name: string,
) {
  const cells: CellValue[] = [];
  const written = given.map((argument) => {
    const values = Array.isArray(argument) ? argument.flat() : [argument as CellValue];
    if (cells.length + values.length > CELLS) return literal(argument);
    const [from, to] = [cells.length, cells.length + values.length - 1];
    cells.push(...values);
    return from === to
      ? ref(cellIds[from] as string)
      : ref.span(cellIds[from] as string, cellIds[to] as string);
  });
  return { typed, cells, result, formula: `_xldudf_GEAR_${name}(${written.join(",")})` };
}

/** A value, or an array of them, as a formula writes it. */
const literal = (argument: Argument): string => {
  if (Array.isArray(argument))
    return `{${argument.map((row: readonly CellValue[]) => row.map(literal).join(",")).join(";")}}`;
  return typeof argument === "string" ? `"${argument.replaceAll('"', '""')}"` : String(argument);
};
