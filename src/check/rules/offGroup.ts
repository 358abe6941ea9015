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
  reads: "table",
  find: (table, { text: { rules } }) =>
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
            const text = rules["off-group"];
            const middle = said(round(10 ** centre));
            return {
              rule: "off-group",
              weight: "note",
              ...where(table, row, column.id),
              message: text.message(rowName(table, row), {
                value: said(value),
                unit: column.unit ?? "",
                others: group.length - 1,
                middle,
                times: said(round(10 ** Math.abs(log - centre))),
                isAbove: log > centre,
                factor: said(round(10 ** (spread / 1.4826))),
              }),
              found: value,
              expected: text.expected(middle),
            };
          });
      }),
    ),
};

const round = (value: number) => Number(value.toPrecision(3));
