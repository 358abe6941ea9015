import { insulationCorrect } from "../../engineering/insulationCorrect";
import { convert } from "../../quantities/convert";
import { bounded, readBounded } from "../../quantities/reading/bounded";
import { readReading } from "../../quantities/reading/readReading";
import type { Unit } from "../../quantities/units";
import { blank, gear, NOT_CORRECTED, quoted } from "../../records/columns/common";
import type { CellValue } from "../../records/kind";
import { sourceText } from "../../standards/criterion";
import { insulationMinimum } from "../../standards/insulationMinimum";
import type { Entry, SurveyColumn } from "../find/block";
import type { Cell } from "../read/cells";
import { type Bound, compareBy, isAtBase, temperatureOf } from "../rules/judge";
import type { SurveyContext } from "../rules/rule";
import type { BoundEntry, Slot } from "./groups";
import { type Guard, type Said, stillSays, worst } from "./said";

/** A line of a group, and where its cells stand. */
export interface LinePlaces {
  readonly entries: readonly BoundEntry[];
  readonly slots: readonly Slot[];
  /** Whether the workbook has a column of corrected values for these readings. */
  readonly hasOwn: boolean;
  readonly corrected: (column: SurveyColumn) => string;
  readonly limit: (slot: Slot) => string;
  /** What the sheet holds at an address. */
  readonly raw: (address: string) => CellValue;
  readonly context: SurveyContext;
}

/** Whether a reading is brought to 20 °C in a column of ours. */
export const correctsHere = (
  { entry, bounds }: BoundEntry,
  { hasOwn }: Pick<LinePlaces, "hasOwn">,
): boolean =>
  [...bounds.values()].some(
    (bound) =>
      bound.source !== undefined &&
      (entry.cell === undefined
        ? !hasOwn && temperatureOf(entry) !== undefined && !isAtBase(entry.column)
        : compareBy(entry, bound)?.temperature !== undefined),
  );

/** How many of one unit another is. */
const scale = (from: Unit, to: Unit): number => {
  const found = convert(1, from, to);
  return found.ok ? found.value : Number.NaN;
};

const times = (address: string, factor: number): string =>
  factor === 1 ? address : `${address}*${Number(factor.toPrecision(12))}`;

/** The temperature of a reading in °C, as a formula has it. */
const celsius = ({ address, unit, value }: Cell): string =>
  unit === "°F" && typeof value === "number" ? `(${address}-32)*5/9` : address;

/** The reading at 20 °C in MΩ, by the correction of the criterion. */
export function correctedCell({ cell, unit = "MΩ", address }: Entry, at: number, of: Cell): Said {
  const factor = scale(unit, "MΩ");
  const isBare = typeof cell?.value === "string" && cell.unit === undefined;
  const scaled =
    factor === 1 ? address : `IF(ISNUMBER(${address}),${times(address, factor)},${address})`;
  const reading = isBare ? `${address}&${quoted(` ${unit}`)}` : scaled;
  const formula = `IF(OR(${blank(address)},${blank(of.address)}),"",IFERROR(${gear("IRCORRECT", reading, celsius(of))},"${NOT_CORRECTED}"))`;
  if (cell?.number === undefined) return { value: "", formula };
  const megohms = convert(cell.number, unit, "MΩ");
  const found = megohms.ok ? insulationCorrect(megohms.value, at) : megohms;
  return {
    value: found.ok ? bounded({ value: found.value, bound: cell.bound ?? "exact" }) : NOT_CORRECTED,
    formula,
  };
}

/** The unit in which the limit of a slot is written in this line. */
export function unitOf(places: LinePlaces, slot: Slot): Unit | undefined {
  const bound = boundOf(places, slot);
  if (bound === undefined) return undefined;
  if (places.entries.some((one) => correctsHere(one, places))) return "MΩ";
  const judged = places.entries.flatMap(({ entry }) => compareBy(entry, bound) ?? []);
  const plain = judged.find(({ cell }) => typeof cell.value === "number");
  return plain
    ? plain.unit
    : (bound.limit.unit ?? judged[0]?.unit ?? places.entries[0]?.entry.unit);
}

const boundOf = ({ entries }: LinePlaces, { key }: Slot): Bound | undefined =>
  entries.flatMap(({ bounds }) => bounds.get(key) ?? [])[0];

/** The limit of a slot, in the unit of the line: from its cell, from the criterion, or as a heading has it. */
export function limitCell(places: LinePlaces, slot: Slot): Said {
  const bound = boundOf(places, slot);
  if (bound === undefined) return { value: null };
  const unit = unitOf(places, slot);
  const { limit, source } = bound;
  const from = limit.unit ?? unit;
  const factor = from && unit ? scale(from, unit) : 1;
  const value = Number((limit.number * factor).toPrecision(14));
  if (source !== undefined) {
    const { ratedkV = 0, basis = "NETA" } = places.context;
    const call = gear("IRMINIMUM", ratedkV, quoted(basis));
    return { value, formula: times(call, factor) };
  }
  const stated = places.raw(limit.address);
  return typeof stated === "number" && stated !== 0
    ? {
        value,
        formula: `IF(${blank(limit.address)},"",${times(limit.address, value / stated)})`,
      }
    : { value };
}

/** Where the limits of a line come from. */
export function sourceCell(places: LinePlaces): Said {
  const bounds = places.slots.flatMap((slot) => boundOf(places, slot) ?? []);
  const said = bounds.flatMap(({ limit, source }): Required<Said>[] => {
    if (source === undefined)
      return limit.address === ""
        ? []
        : [
            {
              value: places.context.text.results.statedAt(limit.address),
              formula: `${quoted(places.context.text.results.statedAt(""))}&ADDRESS(ROW(${limit.address}),COLUMN(${limit.address}),4)`,
            },
          ];
    const { ratedkV = 0, basis = "NETA" } = places.context;
    const found = insulationMinimum(ratedkV, { basis });
    return [
      {
        value: `${basis}: ${found.ok ? sourceText(found.value.source) : ""}`,
        formula: gear("SOURCE", quoted("IRMINIMUM"), quoted(basis)),
      },
    ];
  });
  const once = said.filter(
    (one, at) => said.findIndex(({ formula }) => formula === one.formula) === at,
  );
  if (once.length === 0) return { value: places.context.text.results.noLimit };
  return {
    value: once.map(({ value }) => value).join("; "),
    formula: once.map(({ formula }) => formula).join(`&${quoted("; ")}&`),
  };
}

const inconclusiveOnError = (formula: string): string => `IFERROR(${formula},"Inconclusive")`;

/** The cell of a reading that is held against a bound, and its verdict now. */
function judgedCell(one: BoundEntry, slot: Slot, places: LinePlaces): Said {
  const { entry, bounds } = one;
  const bound = bounds.get(slot.key);
  const missing = `IF(${blank(entry.address)},"Missing",`;
  if (bound === undefined)
    return {
      value: entry.cell === undefined ? "Missing" : "Inconclusive",
      formula: inconclusiveOnError(`${missing}"Inconclusive")`),
    };
  const unit = unitOf(places, slot);
  const comparison = compareBy(entry, bound);
  const target = correctsHere(one, places)
    ? places.corrected(entry.column)
    : (comparison?.cell.address ?? entry.address);
  const isPlain =
    typeof comparison?.cell.value === "number" && comparison.temperature === undefined;
  const own = comparison?.unit;
  const shown = isPlain && own && unit ? times(target, scale(own, unit)) : target;
  const limit = places.limit(slot);
  const sense = unit === "%" && slot.side === "most" ? "within" : slot.side;
  const more = unit === undefined ? [] : [0, quoted(unit)];
  const judge = gear("JUDGE", shown, limit, quoted(sense), ...more);
  const lacking = target === entry.address ? blank(limit) : `OR(${blank(target)},${blank(limit)})`;
  return {
    value: entry.cell === undefined ? "Missing" : (comparison?.verdict ?? "Inconclusive"),
    formula: inconclusiveOnError(`${missing}IF(${lacking},"Inconclusive",${judge}))`),
  };
}

/** The readings of a line that a formula reads otherwise than the check does, or not at all. */
export const unreadable = (places: LinePlaces): Guard[] =>
  places.entries.flatMap((one) =>
    places.slots.flatMap((slot) => unreadableAt(one, slot, places) ?? []),
  );

function unreadableAt(
  { entry, bounds }: BoundEntry,
  slot: Slot,
  places: LinePlaces,
): Guard | undefined {
  const bound = bounds.get(slot.key);
  const comparison = bound && compareBy(entry, bound);
  if (comparison === undefined) return undefined;
  const isOurs = comparison.temperature !== undefined;
  const cell = isOurs ? entry.cell : comparison.cell;
  if (cell === undefined) return undefined;
  const value = places.raw(cell.address);
  const own = isOurs ? entry.unit : comparison.unit;
  if (isReadAlike(cell, own, value, unitOf(places, slot))) return undefined;
  const reason = places.context.text.results.unreadable(String(value ?? ""));
  return { address: cell.address, value, verdict: "Inconclusive", reason };
}

/** Whether a formula reads from a cell what the check reads. */
function isReadAlike(
  { number, bound = "exact" }: Cell,
  own: Unit | undefined,
  value: CellValue,
  unit: Unit | undefined,
): boolean {
  if (typeof value === "number") return value === number;
  const text = String(value ?? "");
  const read = unit === undefined ? readBounded(text) : readReading(text, { unit });
  const wanted = own && unit ? convert(number ?? Number.NaN, own, unit) : undefined;
  const expected = wanted?.ok ? wanted.value : (number ?? Number.NaN);
  return (
    read.ok &&
    read.value.bound === bound &&
    Math.abs(read.value.value - expected) <= Math.abs(expected) * 1e-9
  );
}

/** The result of a line: the worst of its readings, and of what stands in it besides. */
export const resultCell = (places: LinePlaces, guards: readonly Guard[]): Said =>
  worst([
    ...places.entries.flatMap((one) =>
      (places.slots.filter(({ key }) => one.bounds.has(key)).length > 0
        ? places.slots.filter(({ key }) => one.bounds.has(key))
        : places.slots.slice(0, 1)
      ).map((slot) => judgedCell(one, slot, places)),
    ),
    ...guards.map((guard) => ({
      value: guard.verdict,
      formula: inconclusiveOnError(`IF(${stillSays(guard)},${quoted(guard.verdict)},"Pass")`),
    })),
  ]);
