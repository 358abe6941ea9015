import { translateFormulaToR1C1 } from "@borgar/fx/xlsx";
import type { Finding } from "../../check/finding";
import type { Block, SurveyColumn } from "../block";
import type { Cell } from "../cells";
import { findingAt, mostOf, type SurveyContext, type SurveyRule } from "./rule";

/** A formula as it reads from its own cell. */
const relative = ({ formula = "", address }: Cell): string => {
  try {
    return String(translateFormulaToR1C1(`=${formula.replace(/^=/, "")}`, address)).replace(
      /\s+/g,
      "",
    );
  } catch {
    return formula;
  }
};

/** Numbers that a formula has of its own, outside of references: "F6*600" has 600. */
const CONSTANT = /(?<![\w.[\]])\d+(?:\.\d+)?(?![\w.[\]])/g;

/** A formula as it reads from its own cell, with a number that stands in its line as well told as such. */
const ofLine = (block: Block, line: number, cell: Cell): string => {
  const beside = block.columns
    .filter(({ computed }) => !computed)
    .flatMap(({ at }) => block.at(line, at)?.number ?? []);
  return relative(cell).replace(CONSTANT, (number) =>
    beside.includes(Number(number)) ? "own" : number,
  );
};

/** The way that the lines of a column compute: as they are, or with what belongs to their line left open. */
const formsOf = (
  block: Block,
  cells: readonly { readonly line: number; readonly cell: Cell }[],
): string[] => {
  const plain = cells.map(({ cell }) => relative(cell));
  if (new Set(plain).size === 1) return plain;
  const open = cells.map(({ line, cell }) => ofLine(block, line, cell));
  // What is the same number in every line is a constant of all, even where one line happens to have it too.
  const forms = new Set(open).size < new Set(plain).size ? open : plain;
  if (mostOf(forms, 0.6)) return forms;
  // A factor that goes by what the line is about, such as a ratio, is left out.
  const bare = plain.map((form) => form.replace(CONSTANT, "#"));
  return mostOf(bare, 0.8) ? bare : forms;
};

/** Lines of formulas across the columns: sums and ratios under a table. */
const acrossLines = (block: Block, { text }: SurveyContext): Finding[] => {
  const [first, last] = block.span;
  const inLines = new Set(block.lines);
  return Array.from({ length: last - first + 1 }, (_, index) => first + index)
    .filter((line) => !inLines.has(line))
    .flatMap((line) => {
      const cells = block.columns.flatMap(({ at }) => {
        const cell = block.at(line, at);
        return cell?.formula === undefined ? [] : [cell];
      });
      const forms = cells.map(relative);
      const usual = forms.find(
        (form) => forms.filter((other) => other === form).length > forms.length / 2,
      );
      if (cells.length < 3 || usual === undefined) return [];
      return cells
        .filter((cell) => relative(cell) !== usual)
        .map((cell) =>
          findingAt(
            "survey-formula",
            "query",
            block,
            NOWHERE(block),
            cell.address,
            text.otherFormula(forms.filter((form) => form === usual).length, forms.length),
            { found: cell.formula },
          ),
        );
    });
};

const NOWHERE = (block: Block) => ({ kind: block.kinds[0] ?? "", panel: "", position: "" });

/** A formula without the shape of its references: what it does, wherever its cells stand. */
const inColumn = (block: Block, column: SurveyColumn, { text }: SurveyContext): Finding[] => {
  const cells = block.lines.flatMap((line) => {
    const cell = block.at(line, column.at);
    return cell &&
      (cell.formula !== undefined || cell.number !== undefined || column.concept === "result")
      ? [{ line, cell }]
      : [];
  });
  const computed = cells.filter(({ cell }) => cell.formula !== undefined);
  if (computed.length < 3 || computed.length < cells.length * 0.6) return [];
  const forms = formsOf(block, computed);
  const formOf = new Map(computed.map(({ cell }, index) => [cell, forms[index]]));
  const most =
    mostOf(forms, 0.6) ?? (forms.length === 3 ? { value: forms[0], times: 3 } : undefined);
  if (!most) return [];
  const others = cells.filter(
    ({ cell }) => cell.formula === undefined || formOf.get(cell) !== most.value,
  );
  if (others.length > Math.max(2, cells.length * 0.2)) return [];
  return others.map(({ line, cell }) => {
    const entry = block.entries.find((one) => one.line === line) ?? {
      kind: block.kinds[0] ?? "",
      panel: "",
      position: "",
    };
    const message =
      cell.formula === undefined
        ? text.typedOver(most.times, cells.length)
        : text.otherFormula(most.times, cells.length);
    return findingAt(
      cell.formula === undefined ? "survey-typed-over" : "survey-formula",
      "query",
      block,
      entry,
      cell.address,
      message,
      {
        column: column.title,
        found: cell.formula ?? cell.text,
      },
    );
  });
};

/** A cell of a computed column that does something else than the others: a formula of another line, another factor, a typed value. */
export const formulas: SurveyRule = {
  id: "survey-formula",
  find: (context) =>
    context.survey.blocks.flatMap((block) => [
      ...block.columns.flatMap((column) => inColumn(block, column, context)),
      ...acrossLines(block, context),
    ]),
};
