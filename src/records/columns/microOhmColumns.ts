import { contactCorrect } from "../../engineering/contactCorrect";
import { zeroResistance } from "../../engineering/zeroResistance";
import { bounded } from "../../quantities/reading/bounded";
import { leastContact } from "../../standards/practice";
import { figure } from "../figure";
import { type CellValue, type Column, type Comparison, isBlank, type Own } from "../kind";
import { exactly, quantity } from "../quantity";
import { blank, gear, NOT_CORRECTED } from "./common";

const corrects = (cell: CellValue | undefined) => !isBlank(cell) && cell !== NOT_CORRECTED;

/** The direct current of a four-wire measurement. */
export const testCurrent: Column = {
  id: "testCurrent",
  header: "Test A DC",
  role: "entry",
  width: 9,
  unit: "A",
  wave: "DC",
  accepts: { type: "number", least: 0, most: 10000 },
  need: "condition",
};

/** The least current of the measurement, A: the lineup's own, else as `standard` has it. */
export const leastTestCurrent = (own: Own, standard: NonNullable<Column["value"]>): Column => ({
  id: "testCurrentLeast",
  header: "Minimum test A",
  role: "limit",
  width: 9,
  unit: "A",
  own,
  value: standard,
});

/** Measured with enough current to prove anything. */
export const enoughCurrent: Comparison = {
  value: "testCurrent",
  limit: "testCurrentLeast",
  unit: "A",
  sense: "least",
};

/** The resistance at 20 °C within its maximum, where one is given. */
export const withinMaximum: Comparison = {
  value: "corrected",
  limit: "maximum",
  unit: "µΩ",
  sense: "most",
  when: "maximum",
};

/** A resistance of contacts in µΩ, the temperature of its conductor, and what it comes to at 20 °C. */
export const microOhmColumns: readonly Column[] = [
  {
    id: "reading",
    header: "R µΩ",
    role: "entry",
    width: 10,
    unit: "µΩ",
    accepts: { type: "reading" },
    need: "reading",
    help: 'Number in µΩ, or as written with its unit: "0.042 mΩ".',
  },
  {
    id: "temperature",
    header: "Conductor °C",
    role: "entry",
    takesFirst: "temperature",
    width: 11,
    unit: "°C",
    accepts: { type: "number", least: -40, most: 120 },
    need: "condition",
  },
  {
    id: "corrected",
    header: "R at 20 °C µΩ",
    role: "computed",
    width: 12,
    unit: "µΩ",
    format: "0.0",
    above: { value: leastContact.value },
    formula: (ref) =>
      `IF(OR(${blank(ref("reading"))},${blank(ref("temperature"))}),"",IFERROR(${gear("CONTACTCORRECT", ref("reading"), ref("temperature"))},"${NOT_CORRECTED}"))`,
    value: (row) => {
      if (isBlank(row.reading) || isBlank(row.temperature)) return null;
      const reading = quantity(row.reading, "µΩ");
      const temperature = exactly(row.temperature, "°C");
      if (!reading || temperature === undefined) return NOT_CORRECTED;
      const corrected = contactCorrect(reading.value, temperature);
      return corrected.ok
        ? bounded({ value: corrected.value, bound: reading.bound })
        : NOT_CORRECTED;
    },
    working: (row) => {
      const reading = quantity(row.reading, "µΩ");
      const temperature = exactly(row.temperature, "°C");
      return !reading || temperature === undefined || !corrects(row.corrected)
        ? ""
        : `${figure(bounded(reading))} µΩ × (${zeroResistance.copper} + 20) ÷ (${zeroResistance.copper} + ${figure(temperature)}) = ${figure(row.corrected)} µΩ`;
    },
  },
];
