import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import { unitSize } from "../../quantities/units";
import type { Block, Entry } from "../find/block";
import { inBaseUnit } from "../read/cells";
import { findingAt, middleOf, type SurveyContext, type SurveyRule, written } from "./rule";

const base = ({ cell, unit }: Entry): number | undefined =>
  cell?.number === undefined || cell.number <= 0
    ? undefined
    : unit
      ? inBaseUnit(cell.number, unit)
      : cell.number;

/** Powers of ten by which a reading must be off the middle, and those that a slip can have. */
const OFF = 1.9;
const SLIPS = [3, 6, 9];

/** Kinds whose columns measure a thing of its own each: a height is not like a gap. */
const APART: readonly string[] = ["dimensions", "installation", "gas", "mechanism"];

const findIn = (block: Block, { text }: SurveyContext): Finding[] =>
  groupBy(
    block.entries,
    ({ kind, column, operation, unit }) =>
      `${kind} ${column.unit} ${operation} ${unit && unitSize(unit).quantity} ${APART.includes(kind) ? column.title : ""}`,
  ).flatMap((group) => {
    const read = group.flatMap((entry) => {
      const value = base(entry);
      return value === undefined || entry.cell?.bound === "above" ? [] : [{ entry, value }];
    });
    if (read.length < 5) return [];
    const middle = middleOf(read.map(({ value }) => value));
    const slipOf = (value: number) => {
      const powers = Math.log10(value / middle);
      return Math.abs(powers) < OFF
        ? undefined
        : SLIPS.find((power) => Math.abs(Math.abs(powers) - power) < 1.1);
    };
    // A column that is off throughout measures something else: a sheath beside the cores.
    const others = groupBy(read, ({ entry }) => String(entry.column.at)).flatMap((column) =>
      column.length >= 3 && column.every(({ value }) => slipOf(value) !== undefined)
        ? [column[0]?.entry.column.at]
        : [],
    );
    return read.flatMap(({ entry, value }) => {
      const slip = others.includes(entry.column.at) ? undefined : slipOf(value);
      if (slip === undefined) return [];
      const { cell, unit, address, column } = entry;
      const middleEntry = read.find((one) => one.value === middle)?.entry;
      return [
        findingAt(
          "survey-unit-slip",
          "query",
          block,
          entry,
          address,
          text.unitSlip(
            written(cell?.number ?? 0, unit),
            written(middleEntry?.cell?.number ?? middle, middleEntry?.unit),
            10 ** slip,
          ),
          {
            column: column.title,
            found: cell?.text,
          },
        ),
      ];
    });
  });

/** A reading that is a thousand times off its like: kilo, mega or giga mixed up, or a decimal mark lost. */
export const unitSlip: SurveyRule = {
  id: "survey-unit-slip",
  find: (context) => context.survey.blocks.flatMap((block) => findIn(block, context)),
};
