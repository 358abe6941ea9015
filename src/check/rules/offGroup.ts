import { verdictOf } from "../../records/kind";
import { type Rule, rowName, said, where } from "../context";
import type { Finding } from "../finding";
import { measured, robust, similarReadings } from "../similar";

/** Readings in a group, at least. */
const ENOUGH = 6;
/**
 * Times the group's robust spread. Of few readings the spread itself is known badly, so that more is
 * asked: twice as much of ten.
 */
const far = (count: number) => 6 * (1 + 10 / count);
/** The least distance in decades (a factor of five) that is worth a word. */
const WORTH = 0.7;
/** From here on another rule asks about the unit. */
const THOUSAND = 2;

/** A reading that stands far out from similar ones, though it passes. */
export const offGroup: Rule = {
  id: "off-group",
  title: "A reading far from its group",
  finds:
    "a reading that passes and stands out from similar ones on a logarithmic scale: more than six times their robust spread (median deviation; twelve times among ten readings), and at least a factor of five",
  why: "What is made alike measures alike. The odd one may be the first sign of a defect, a wrong connection or a reading of another row.",
  satisfies: "a second reading; nothing, where it is so",
  quiet: "below six readings in a group, within a factor of five, and for rows that do not pass",
  reads: "table",
  find: (table) =>
    measured(table).flatMap((column) =>
      similarReadings(table, column).flatMap(({ group }): Finding[] => {
        if (group.length < ENOUGH) return [];
        const { centre, spread } = robust(group.map(({ log }) => log));
        return group
          .filter(({ row, log }) => {
            const away = Math.abs(log - centre);
            return (
              away > WORTH &&
              away > far(group.length) * spread &&
              away <= THOUSAND &&
              verdictOf(table.judged[row] ?? {}) === "Pass"
            );
          })
          .map(({ row, value, log }): Finding => {
            const unit = column.unit ?? "";
            return {
              rule: "off-group",
              weight: "note",
              ...where(table, row, column.id),
              message: `${rowName(table, row)}: ${said(value)} ${unit} stands out from ${group.length - 1} similar readings: their middle is ${said(round(10 ** centre))} ${unit}, and it is ${said(round(10 ** Math.abs(log - centre)))} times ${log > centre ? "above" : "below"} it, where half of them lie within a factor of ${said(round(10 ** (spread / 1.4826)))}.`,
              found: value,
              expected: `about ${said(round(10 ** centre))}`,
            };
          });
      }),
    ),
};

const round = (value: number) => Number(value.toPrecision(3));
