import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import type { RecordKind } from "../../records/kind";
import { tellsOutcome } from "../rows/tellsOutcome";
import type { Fact } from "../table/facts";
import type { Written } from "../table/written";
import { columnFor } from "../words/columnFor";
import { readStage, WITHSTAND } from "../words/readStage";
import { splitTitle } from "../words/readTitle";
import { sensesOf } from "../words/senses";
import type { ExportColumn } from "../words/titles";
import type { Contested } from "./assignColumns";
import { withChosen } from "./chosenColumns";
import type { SeenColumn } from "./columnScore";
import { SAID_BY_FILE } from "./columnSenses";
import { type Interpretation, interpret, type SeenBlock } from "./interpret";
import { hasOperations } from "./kindShape";
import { kindNamed } from "./kindWords";
import type { Knowledge } from "./knowledge";
import { type PartedNames, partedNames } from "./partedNames";
import { plainRole, type Role } from "./plainRoles";
import { type SeenTable, seenColumns, underHeading, unitIn } from "./seenColumns";
import { isPosition } from "./titleSense";

/** A block of an export to be understood. */
export interface OpenBlock extends SeenTable {
  readonly headings: readonly string[];
  /** Texts below it that speak of all its readings. */
  readonly notes: readonly string[];
  /** Headings of the whole file. */
  readonly above: readonly string[];
  readonly facts: readonly Fact[];
  readonly file: string;
  /** Its columns as their titles alone are read, with what the user has said of them. */
  readonly columns: readonly ExportColumn[];
  /** What is said for all its lines. */
  readonly constants: readonly Written[];
  /** Columns that the user has said something of. */
  readonly given: ReadonlySet<number>;
}

/** A block as the records of one kind: what it is, its columns, and the facts that hold for all its lines. */
export interface Understood {
  readonly kind: RecordKind;
  readonly columns: readonly ExportColumn[];
  readonly facts: readonly Written[];
}

/** Of two kinds of record for which no more than this speaks apart, neither is taken. */
const APART = 0.75;

/** Why a block is not understood, where that is known. */
export interface NotUnderstood {
  readonly why: Said<Told>;
}

/**
 * What a block of an export holds: the record kind for which its columns, its names, and the words around
 * it speak together most, and what each column is there. Undefined where each line names its own test, or
 * where no line names anything that the records know.
 */
export const understand = (
  table: OpenBlock,
  knows: Knowledge,
): Understood | NotUnderstood | undefined => {
  const names = partedNames(table.rows, knows);
  const open = withLoneUnit(names ? withParted(table, names) : table);
  const seen = underHeading(seenColumns(open, knows.objectOf), open.headings.at(-1));
  const columns = seen.filter(({ index }) => !open.given.has(index));
  const said = seen.flatMap((one) => {
    const field = open.given.has(one.index) ? open.columns[one.index]?.field : undefined;
    return field === undefined ? [] : [{ seen: one, field }];
  });
  const plain: SeenBlock["plain"] = open.columns.map((_, index) => {
    const seen = columns.find((one) => one.index === index);
    if (index === names?.index) return { spare: "parted" };
    return seen ? plainRole(seen, knows) : {};
  });
  const block: SeenBlock = { ...open, columns, plain, said };
  // What names operations is of a kind that has rows by them: "52-F3 open A" is no insulation of a pole.
  const kinds = names?.operation
    ? knows.kinds.filter(({ kind }) => hasOperations(kind))
    : knows.kinds;
  const all = kinds.flatMap((known) => interpret(block, known, knows) ?? []);
  const found = all
    .filter(({ placed }) => placed !== 0)
    .sort((one, other) => other.score - one.score);
  const [best, next] = found;
  if (isMixed(block, knows)) return undefined;
  if (best === undefined)
    return all.length > 0 || tellsByTitles(open, knows)
      ? undefined
      : { why: ({ intake }) => intake.titles.noReading };
  if (next && best.score - next.score < APART && !namesMore(best, next))
    return {
      why: ({ intake }) => intake.titles.eitherKind(best.known.kind.sheet, next.known.kind.sheet),
    };
  const contested = best.contested.find((one) => isAsked(one, open));
  if (contested) return { why: whyContested(contested, best, open) };
  const understood = understoodAs(best, block, open);
  // Titles of the records themselves say more than what their columns look like.
  const isOpen = ({ index }: ExportColumn) =>
    plain[index]?.spare === undefined &&
    seen.some((one) => one.index === index && one.cells.texts.length > 0);
  const byTitles = toldIn(open.columns.filter(isOpen));
  const isByTitles = open.given.size === 0 && byTitles > toldIn(understood.columns);
  return isByTitles ? undefined : understood;
};

/** Whether one reading of a block knows the names of a column, nearly all, of which another makes no use. */
const namesMore = (one: Interpretation, other: Interpretation): boolean =>
  one.naming.some(
    ({ index, known }) =>
      known > NEARLY_ALL && !other.naming.some((naming) => naming.index === index),
  );
const NEARLY_ALL = 0.9;

/** A table over which a unit stands behind the last title, with nothing under it: it is that of all readings. */
const withLoneUnit = (table: OpenBlock): OpenBlock => {
  const lone = (table.titles.at(-1) ?? []).flatMap((title, at) => {
    const unit = unitIn(title);
    const isBlank = table.rows.every((cells) => (cells[at] ?? "").trim() === "");
    return at > 0 && title.length > 1 && unit !== undefined && isBlank ? [unit] : [];
  });
  return lone.length === 1 ? { ...table, notes: [...table.notes, `[${lone[0]}]`] } : table;
};

/** A table with a column of places, one of phases and any of operations in place of the one that names them together. */
const withParted = (
  { titles, units, rows, columns, ...rest }: OpenBlock,
  { index, place, phase, operation }: PartedNames,
): OpenBlock => {
  const width = columns.length;
  const parts = [place, phase, ...(operation ? [operation] : [])];
  const more = (cells: readonly string[], added: readonly string[]) => [
    ...Array.from({ length: width }, (_, at) => cells[at] ?? ""),
    ...added,
  ];
  const title = columns[index]?.title ?? "";
  const blank = parts.map(() => "");
  return {
    ...rest,
    titles: titles.map((line) => more(line, [line[index] ?? "", ...blank.slice(1)])),
    units: more(units, blank),
    rows: rows.map((cells) => {
      const text = cells[index]?.trim() ?? "";
      return more(
        cells,
        parts.map((part) => part(text)),
      );
    }),
    columns: [
      ...columns,
      ...parts.map((part, at) => ({ index: width + at, title, from: { column: index, part } })),
    ],
  };
};

/** Of how many fields columns are known to be, of several phases each. */
const toldIn = (columns: readonly ExportColumn[]): number =>
  new Set(
    columns.flatMap(({ field, says }) =>
      field === undefined ? [] : JSON.stringify([field, says]),
    ),
  ).size;

/** Whether titles alone name something that records take. */
const tellsByTitles = ({ columns }: OpenBlock, { kinds }: Knowledge): boolean =>
  columns.some(
    ({ field }) =>
      field !== undefined &&
      kinds.some(({ kind }) => {
        const column = columnFor(kind, field);
        return column !== undefined && tellsOutcome(column);
      }),
  );

/** Whether two columns that could be the same reading are not told apart by their titles either. */
const isAsked = ({ seen, other, column }: Contested, { columns }: OpenBlock): boolean => {
  const [one, two] = [seen, other].map(({ index }) => columns[index]?.field);
  return tellsOutcome(column) && (one === undefined || two === undefined || one === two);
};

/** What is asked where two columns could be the same reading. */
const whyContested = (
  { seen, other, column }: Contested,
  { known }: Interpretation,
  { columns }: OpenBlock,
): Said<Told> => {
  const [one = "", two = ""] = [seen, other].map(({ index }) =>
    quoted(columns[index]?.title ?? ""),
  );
  const answer = JSON.stringify(`${columns[seen.index]?.title}=${column.id}`);
  return ({ intake }) => intake.titles.contested(one, two, column.header, known.kind.sheet, answer);
};

/** Whether a column names the test of each line, and not of all lines the same. */
const isMixed = ({ columns }: SeenBlock, { kinds }: Knowledge): boolean => {
  const ids = new Set(kinds.map(({ kind }) => kind.id));
  return columns.some(({ title, cells }) => {
    if (!title.senses.has("test")) return false;
    // "A to gnd" is a phase, and no test of earthing.
    const named = cells.texts.flatMap((text) => (isPosition(text) ? [] : [kindNamed(text, ids)]));
    return (
      new Set(named).size > 1 &&
      named.filter((one) => one !== undefined).length >= 0.7 * named.length
    );
  });
};

const understoodAs = (
  found: Interpretation,
  { columns: seen, plain, headings, facts, file }: SeenBlock,
  { columns }: OpenBlock,
): Understood => {
  const poles = polesBeside(found);
  const naming = new Map(
    found.naming.filter(({ index }) => index !== poles).map((one) => [one.index, one.field]),
  );
  const assigned = new Map(found.assigned.map((one) => [one.seen.index, one]));
  const seenAt = new Map(seen.map((one) => [one.index, one]));
  const { kind, byStage } = found.known;
  const says = byStage && !found.facts.some(({ field }) => field === "stage");
  const stage = says ? stageAround([...facts.flatMap(ofWithstand), ...headings], file) : undefined;
  return {
    kind,
    facts: [...found.facts, ...(stage ? [stage] : [])],
    columns: withChosen(
      columns.map((column): ExportColumn => {
        const { index, title, from } = column;
        const own = { index, title, ...(from && { from }) };
        const role = plain[index];
        const field = naming.get(index) ?? role?.field;
        const as = assigned.get(index);
        if (as)
          return {
            ...{ ...own, field: as.column.id },
            ...(as.byTurns && { byTurns: true as const }),
            ...(as.seen.told && { unit: as.seen.told }),
            ...(Object.keys(as.says).length > 0 && { says: as.says }),
          };
        if (field !== undefined) {
          const stage = stageOfReadings(found, seenAt.get(index));
          return { ...own, field, ...(stage && { says: { stage } }) };
        }
        if (role !== undefined && Object.keys(role).length === 0) return column;
        const seen = seenAt.get(index);
        const isUsed =
          index === found.elapsed ||
          index === poles ||
          isSpare(role, seen) ||
          isWorkedOut(seen, kind);
        return { ...own, ...(isUsed && { spare: true as const }) };
      }),
      found.chosen,
    ),
  };
};

/** The stage that a column goes with, as the titles of its readings name it: a day of its own for each stage. */
const stageOfReadings = (
  { assigned }: Interpretation,
  seen: SeenColumn | undefined,
): string | undefined => {
  const own = seen?.title.stage && readStage(seen.title.stage);
  if (!own) return undefined;
  return assigned.map(({ says }) => says.stage).find((stage) => stage && readStage(stage) === own);
};

/** The column of poles that tells which of a record's columns each line is for, where its rows are by none. */
const polesBeside = ({ known, naming, chosen }: Interpretation): number | undefined =>
  hasOperations(known.kind) && chosen.length > 0
    ? naming.find(({ field }) => field === "position")?.index
    : undefined;

/** Whether a column holds nothing that the workbook has a place for, by its own words. */
const isSpare = (role: Role | undefined, seen: SeenColumn | undefined): boolean =>
  role?.spare !== undefined ||
  seen?.cells.texts.length === 0 ||
  [...(seen?.title.senses ?? [])].some((sense) => SAID_BY_FILE.has(sense));

/** A fact that speaks of the withstand test. */
const ofWithstand = ({ key, value }: Fact): string[] => {
  const text = `${key} ${value}`;
  return text.search(WITHSTAND) >= 0 ? [text] : [];
};

/** Whether a column holds what the records work out or are given themselves, by the words of its title. */
const isWorkedOut = (seen: SeenColumn | undefined, { columns }: RecordKind): boolean => {
  const said = [...(seen?.title.senses ?? [])];
  return columns.some(({ role, header }) => {
    const { senses, unknown } = sensesOf(withoutUnit(header));
    return (
      ["computed", "limit", "given"].includes(role) &&
      unknown === 0 &&
      said.length > 0 &&
      senses.size === said.length &&
      said.every((sense) => senses.has(sense))
    );
  });
};
const withoutUnit = (header: string): string => splitTitle(header).name;

/** The stage that the headings over a table tell, the nearest first, or the name of the file. */
const stageAround = (headings: readonly string[], file: string): Written | undefined => {
  for (const title of [...headings].reverse()) {
    const stage = readStage(title);
    if (stage) return { field: "stage", title, text: stage };
  }
  const stage = readStage(file.replace(/[_.]/g, " "));
  return stage && { field: "stage", title: file, text: stage };
};
