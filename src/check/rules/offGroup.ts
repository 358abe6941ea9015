import type { FindingsText } from "../../messages/messages";
import { type Column, verdictOf } from "../../records/kind";
import { measured, type Read, robust, similarReadings } from "../among/similar";
import { type JudgedTable, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";

/** Readings in a group, at least. */
const ENOUGH = 6;
/**
 * Times the group's robust spread. Of few readings the spread itself is known badly, so that more is
 * asked: twice as much of ten.
 */
const far = (count: number) => 6 * (1 + 10 / count);
/** The least distance in decades (a factor of five) that is worth a word. */
const WORTH = 0.7;
/** A path to earth that resists ten times as much as its like, half of which lie within a factor of two, is loose or painted, however generous its limit. */
const LOOSE = 1;
const WITHIN = Math.log10(2);
/** Above this many decades it is a unit, of which another rule tells. */
const UNIT = 2.4;
/** From here on another rule asks about the unit. */
const THOUSAND = 2;

/** A reading that stands far out from similar ones, though it does not fail. */
export const offGroup: Rule = {
  id: "off-group",
  reads: "table",
  find: (table, { text }) =>
    measured(table).flatMap((column) => {
      const groups = similarReadings(table, column).filter(({ group }) => group.length >= ENOUGH);
      const about = groups.map(({ group }) => ({ group, ...robust(group.map(({ log }) => log)) }));
      return about.flatMap((one) => strays(table, column, one, text));
    }),
};

interface About {
  readonly group: readonly Read[];
  readonly centre: number;
  readonly spread: number;
}

const doesNotFail = ({ judged }: JudgedTable, row: number): boolean =>
  verdictOf(judged[row] ?? {}) !== "Fail";

function strays(
  table: JudgedTable,
  column: Column,
  { group, centre, spread }: About,
  { rules }: FindingsText,
): Finding[] {
  const text = rules["off-group"];
  const middle = said(round(10 ** centre));
  return group
    .filter(({ row, log }) => {
      const away = Math.abs(log - centre);
      const isFar = away > WORTH && away > far(group.length) * spread && away <= THOUSAND;
      return (isFar || isLoose(table, log - centre, spread)) && doesNotFail(table, row);
    })
    .map(
      ({ row, value, log }): Finding => ({
        rule: "off-group",
        weight: isLoose(table, log - centre, spread) ? "query" : "note",
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
      }),
    );
}

const isLoose = ({ kind }: JudgedTable, above: number, spread: number): boolean =>
  kind.step === "earthing" && above > LOOSE && above <= UNIT && spread / 1.4826 <= WITHIN;

const round = (value: number) => Number(value.toPrecision(3));
