import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, SurveyColumn } from "../find/block";
import { type Cell, inBaseUnit } from "../read/cells";
import type { Concept } from "../words/words";
import { findingAt, middleOf, type SurveyContext, type SurveyRule, written } from "./rule";

/** Where a switchroom or its equipment can be on a day of tests, °C (common practice, no source). */
const [COLDEST, WARMEST] = [-30, 60] as const;
/** By how many kelvins one line may differ from the middle of its table (common practice, no source). */
const FAR = 20;

/** A dew point is no temperature of a room. */
const DEW = /dew|taupunkt|ros[ée]e|roc[ií]o|orvalho|ندى/iu;

const TEMPERATURES: readonly (Concept | undefined)[] = ["temperature", "air"];

const celsius = (cell: Cell, { unit }: SurveyColumn): number | undefined =>
  cell.number === undefined ? undefined : inBaseUnit(cell.number, cell.unit ?? unit ?? "°C");

const temperatures = (block: Block, column: SurveyColumn, { text }: SurveyContext): Finding[] => {
  const lines = groupBy(block.entries, ({ line }) => String(line)).flatMap(([entry]) => {
    const cell = entry && block.at(entry.line, column.at);
    const value = cell && cell.day === undefined ? celsius(cell, column) : undefined;
    return entry && cell && value !== undefined ? [{ entry, cell, value }] : [];
  });
  const cells = groupBy(lines, ({ cell }) => cell.address).flatMap(([first]) => first ?? []);
  const middle = middleOf(cells.map(({ value }) => value));
  const odd = cells.filter(
    ({ value }) =>
      value < COLDEST || value > WARMEST || (cells.length >= 4 && Math.abs(value - middle) > FAR),
  );
  // A table in another unit is warm in all its lines.
  if (middle < COLDEST || middle > WARMEST) return [];
  // Where many lines are such, the column is no temperature, or the day was long.
  if (odd.length > Math.max(1, cells.length * 0.2)) return [];
  return odd.map(({ entry, cell, value }) =>
    findingAt(
      "survey-temperature",
      "query",
      block,
      entry,
      cell.address,
      text.oddTemperature(written(value, "°C"), written(middle, "°C")),
      { column: column.title, found: cell.text },
    ),
  );
};

/** A humidity is a share. */
const humidities = (block: Block, column: SurveyColumn, { text }: SurveyContext): Finding[] =>
  groupBy(block.entries, ({ line }) => String(line)).flatMap(([entry]) => {
    const cell = entry && block.at(entry.line, column.at);
    return entry && cell?.number !== undefined && (cell.number <= 0 || cell.number > 100)
      ? [
          findingAt(
            "survey-temperature",
            "query",
            block,
            entry,
            cell.address,
            text.oddHumidity(cell.text),
            { column: column.title, found: cell.text },
          ),
        ]
      : [];
  });

/** A temperature or a humidity that cannot be, or that lies far off those of the other lines. */
export const conditions: SurveyRule = {
  id: "survey-temperature",
  find: (context) =>
    context.survey.blocks.flatMap((block) =>
      block.columns.flatMap((column) =>
        TEMPERATURES.includes(column.concept) && !DEW.test(column.title)
          ? temperatures(block, column, context)
          : column.concept === "humidity"
            ? humidities(block, column, context)
            : [],
      ),
    ),
};
