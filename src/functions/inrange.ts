import { isNamedIn, isWithin, type MeasuringRange, readRanges } from "../quantities/measuringRange";
import { readUnit } from "../quantities/reading/readUnit";
import { answer } from "../quantities/result";
import { isBlank, plain } from "./excel";
import { quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Whether readings lie within the ranges of their instruments: Yes, No, or Not known for a bound, for what cannot be read, and where none of the instruments has a range of that quantity.
 * @customfunction INRANGE
 * @param values Readings as written, such as "5.2 GΩ", or numbers in the unit
 * @param units Unit of each, such as "MΩ" or "V"; a blank passes its reading over
 * @param instrument Id of the instrument, or several with semicolons between them
 * @param ids Ids of the instruments that are listed, one a cell
 * @param ranges Their ranges, one cell for each Id, such as "0 to 200 GΩ; 250 to 5000 V"
 * @returns Yes, No or Not known
 * @example =GEAR.INRANGE("180 GΩ", "MΩ", "IR-1", "IR-1", "0 to 200 GΩ; 250 to 5000 V") // "Yes"
 * @example =GEAR.INRANGE(10000, "V", "IR-1; TH-2", "IR-1", "0 to 200 GΩ; 250 to 5000 V") // "No"
 * @example =GEAR.INRANGE(21, "°C", "IR-1", "IR-1", "0 to 200 GΩ; 250 to 5000 V") // "Not known"
 * @refuses =GEAR.INRANGE(21, "furlong", "IR-1", "IR-1", "0 to 200 GΩ")
 */
export function inrange(
  values: unknown[][],
  units: unknown[][],
  instrument: unknown[][],
  ids: unknown[][],
  ranges: unknown[][],
): unknown[][] {
  const [names, spans] = [ids, ranges].map((cells) => [cells].flat(2).map(plain));
  const listed = (names ?? []).flatMap((id, at): (readonly [string, MeasuringRange[]])[] =>
    isBlank(id) ? [] : [[String(id), readRanges(String(spans?.[at] ?? ""))]],
  );
  return spill(
    [
      { name: "Values", cells: values, read: answer },
      { name: "Units", cells: units, read: (cell) => readUnit(String(cell)) },
      { name: "Instrument", cells: instrument, read: (cell) => answer(String(cell)) },
    ],
    (cell, unit, named) => {
      const read = quantity("Values", values, unit).read(cell);
      const known = listed.flatMap(([id, own]) => (isNamedIn(named, id) ? own : []));
      const within = read.ok ? isWithin(read.value, unit, known) : undefined;
      return answer(within === undefined ? "Not known" : within ? "Yes" : "No");
    },
  );
}
