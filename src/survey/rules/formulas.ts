import { translateFormulaToR1C1 } from "@borgar/fx/xlsx";
import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, SurveyColumn } from "../find/block";
import type { Cell } from "../read/cells";
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

/** Two numbers of one cell, such as a ratio: "1200/5". */
const PAIR = /^\D{0,8}(\d+(?:[.,]\d+)?)\s*[/:]\s*(\d+(?:[.,]\d+)?)/u;

/** The numbers that a cell holds: its own, and of a ratio both and what they come to. */
const numbersIn = ({ number, text }: Cell): number[] => {
  const [, high, low] = PAIR.exec(text.slice(0, 40)) ?? [];
  if (high === undefined || low === undefined) return number === undefined ? [] : [number];
  const pair = [high, low].map((digits) => Number(digits.replace(",", ".")));
  return [...pair, (pair[0] ?? 0) / (pair[1] ?? 1)];
};

/** The numbers that stand in a line, and in the columns that are written once for several lines the last above it. */
const numbersOf = (block: Block, line: number): ReadonlySet<number> =>
  new Set(
    block.columns
      .filter(({ computed }) => !computed)
      .flatMap(({ at, concept }) => {
        const above =
          concept === "ratio"
            ? block.lines.findLast((other) => other <= line && block.at(other, at) !== undefined)
            : line;
        const cell = above === undefined ? undefined : block.at(above, at);
        return cell ? numbersIn(cell) : [];
      }),
  );

/** A formula as it reads from its own cell, with a number that stands in its line as well told as such. */
const ofLine = (block: Block, line: number, form: string, isShared: IsShared): string => {
  const own = numbersOf(block, line);
  let place = -1;
  return form.replace(CONSTANT, (number) => {
    place += 1;
    return own.has(Number(number)) && !isShared(form, place) ? "own" : number;
  });
};

/** Whether all formulas of one shape have the same number at a place: a constant of all of them. */
type IsShared = (form: string, place: number) => boolean;

const bareForm = (form: string) => form.replace(CONSTANT, "#");

const sharedAmong = (forms: readonly string[]): IsShared => {
  const shapes = new Map(
    groupBy(forms, bareForm).map((alike) => [
      bareForm(alike[0] ?? ""),
      alike.map((form) => form.match(CONSTANT) ?? []),
    ]),
  );
  return (form, place) =>
    new Set(shapes.get(bareForm(form))?.map((numbers) => numbers[place])).size < 2;
};

/** The way that the lines of a column compute: as they are, or with what belongs to their line left open. */
const formsOf = (
  block: Block,
  cells: readonly { readonly line: number; readonly cell: Cell }[],
): string[] => {
  const plain = cells.map(({ cell }) => relative(cell));
  if (new Set(plain).size === 1) return plain;
  const isShared = sharedAmong(plain);
  const open = cells.map(({ line }, index) => ofLine(block, line, plain[index] ?? "", isShared));
  // What is the same number in every line is a constant of all, even where one line happens to have it too.
  const forms = new Set(open).size < new Set(plain).size ? open : plain;
  if (mostOf(forms, 0.6)) return forms;
  // A factor that goes by what the line is about, such as a ratio, is left out.
  const bare = plain.map(bareForm);
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
