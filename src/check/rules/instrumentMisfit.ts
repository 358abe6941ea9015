import type { Lineup } from "../../lineup/lineup";
import { groupBy } from "../../quantities/groupedBy";
import type { Unit } from "../../quantities/units";
import { alikeIn, cellsOf, forAlike } from "../../records/cellsOf";
import { namedInstruments } from "../../records/instruments";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  type Row,
} from "../../records/kind";
import { exactly } from "../../records/quantity";
import { applies } from "../../records/verdict";
import type { InstrumentRow } from "../../sheets/ours/instrumentSheet";
import { inRowOrder } from "../among/amongRows";
import {
  type Context,
  headerOf,
  inUnit,
  type JudgedTable,
  overRows,
  type Rule,
  rowName,
  where,
} from "../context";
import type { Finding } from "../findings/finding";
import { together } from "../findings/gatherFindings";
import { type Scope, scopeOf, type Wave } from "../instrumentScope";

type Measured = Column & { readonly unit: Unit };
type Known = InstrumentRow & { readonly scope: Scope | undefined };

/** A reading that the instrument named for it cannot have taken: of another sort, beyond what it reaches, or less accurate than what it is to prove. */
export const instrumentMisfit: Rule = {
  id: "instrument-misfit",
  reads: "table",
  find: (table, context) => {
    if (!table.at.has("instrument")) return [];
    const known = knownOf(context.instruments);
    const columns = table.kind.columns.filter(
      (column): column is Measured => column.role === "entry" && column.unit !== undefined,
    );
    const listedIn = forAlike(table.rows, ["instrument"], ({ instrument }): Listed => {
      const named = namedInstruments(instrument).map((id) => known(id));
      // One that is not listed, or whose description says nothing, may have measured anything.
      const listed = named.filter((one): one is Known => one !== undefined);
      return { listed, all: listed.length === named.length ? listed : [] };
    });
    const found = overRows(
      table,
      (row, stored, judged): Finding[] => {
        const { listed, all } = listedIn(row);
        if (listed.length === 0) return [];
        return [
          ...wrongSort(table, context, row, stored, columns, all),
          ...wrongWave(table, context, row, stored, columns, all),
          ...beyondReach(table, context, row, stored, columns, all),
          ...tooCoarse(table, context, row, judged, listed),
        ].slice(0, 1);
      },
      amongMisfits(table, columns, listedIn),
    );
    // What an instrument does not do is told once for each column.
    return groupBy(
      found,
      ({ row, finding }) => `${finding.column}\u0000${table.rows[row]?.instrument}`,
    ).flatMap((some) =>
      together(
        some.map(({ finding }) => finding),
        context.text,
      ),
    );
  },
};

/** The instruments of the list that a row names, and the same where the list has all that it names. */
interface Listed {
  readonly listed: readonly Known[];
  readonly all: readonly Known[];
}

/** The rows whose instruments may not fit, by what they are or by how far they reach. */
function amongMisfits(
  table: JudgedTable,
  columns: readonly Measured[],
  listedIn: (row: number) => Listed,
): readonly number[] {
  const { group, first } = alikeIn(table.rows, ["instrument"]);
  const isAccurate = table.kind.accepted.some(isError);
  const isOdd = first.map((row) => {
    const { listed, all } = listedIn(row);
    return (
      (isAccurate && listed.some(({ accuracyPercent = 0 }) => accuracyPercent > 0)) ||
      (all.length > 0 &&
        columns.some(
          ({ need, unit, wave }) =>
            need === "reading" && takersOf(all, unit, mayAlternate(wave)).length === 0,
        ))
    );
  });
  const takers = new Map(
    columns.map(({ id, unit }) => [
      id,
      first.map((row) => {
        const some = takersOf(listedIn(row).all, unit);
        return some.every(({ scope }) => scope?.isLimited(unit)) ? some : [];
      }),
    ]),
  );
  const needed = columns.filter(({ need }) => need);
  const isFar = (cell: CellValue, its: number, { id, unit }: Measured): boolean => {
    const some = takers.get(id)?.[its] ?? [];
    const value = some.length > 0 ? exactly(cell, unit) : undefined;
    return value !== undefined && some.every(({ scope }) => scope?.beyond(value, unit));
  };
  const namesWave = first.map((row) => listedIn(row).all.some(({ kind }) => namedWave(kind)));
  const isHigh = columns.some(isHighVoltage);
  return inRowOrder([
    ...[...table.rows.keys()].filter(
      (row) => isOdd[group[row] ?? 0] || (isHigh && namesWave[group[row] ?? 0]),
    ),
    ...needed.flatMap((column) => {
      const cells = cellsOf(table.rows, column.id);
      return [...cells.keys()].filter((row) => isFar(cells[row] ?? null, group[row] ?? 0, column));
    }),
  ]);
}

/** The instruments that take or apply a unit, or may. */
const takersOf = (instruments: readonly Known[], unit: Unit, wave?: Wave): Known[] =>
  instruments.filter(({ scope }) => !scope || scope.measures(unit, wave));

/** The wave of a voltage by which the fewest instruments would do. */
const mayAlternate = (wave: Column["wave"]): Wave | undefined =>
  wave === undefined || wave === "DC" ? undefined : "AC";

/** The wave of what was put on in a row; undefined where the row does not tell. */
function waveOf({ wave }: Column, row: Row, lineup: Lineup): Wave | undefined {
  const told = wave === "of the lineup" ? lineup.withstand.wave : wave;
  const one = told === "any" ? String(row.wave ?? "").toUpperCase() : told;
  // Very low frequency comes from no insulation tester either.
  if (one === "AC" || one === "VLF") return "AC";
  return one === "DC" ? one : undefined;
}

/** An error in per cent that is to lie within a limit. */
const isError = ({ unit, sense }: Comparison): boolean => unit === "%" && sense === "within";

/** Finds an instrument of the list with what its description says. */
const knownOf = (instruments: Context["instruments"]) => {
  const scopes = new Map<string, Known | undefined>();
  return (id: string): Known | undefined => {
    const name = id.toLowerCase();
    if (!scopes.has(name)) {
      const one = instruments?.get(name);
      scopes.set(name, one && { ...one, scope: scopeOf(one.kind) });
    }
    return scopes.get(name);
  };
};

/** The readings of a row, none of which any of its instruments takes. */
function wrongSort(
  table: JudgedTable,
  { lineup, text }: Context,
  row: number,
  stored: Row,
  columns: readonly Measured[],
  instruments: readonly Known[],
): Finding[] {
  const read = columns.filter(({ id, need }) => need === "reading" && !isBlank(stored[id]));
  const [first] = read;
  if (!first || instruments.length === 0 || instruments.some(({ scope }) => !scope)) return [];
  const isTaken = (column: Measured) => {
    const wave = waveOf(column, stored, lineup);
    return instruments.some(({ scope }) => scope?.measures(column.unit, wave));
  };
  // One instrument of a set is often named for all of it, but no other puts a high voltage on.
  const odd = read.some(isTaken)
    ? read.find((column) => column.unit === "kV" && column.wave && !isTaken(column))
    : first;
  if (!odd) return [];
  return [
    {
      rule: "instrument-misfit",
      weight: "query",
      ...where(table, row, "instrument"),
      message: text.rules["instrument-misfit"].sort(
        rowName(table, row),
        instruments.map(({ id, kind }) => `${id}, ${kind}`),
        headerOf(table, odd.id),
      ),
      found: String(stored.instrument),
    },
  ];
}

/** What words of a description say of the voltage that a test set gives; common practice, no source. */
const WAVES: readonly (readonly [words: RegExp, wave: TestWave])[] = [
  [/very.?low.?frequency|\bvlf\b|0[.,]1 ?hz/i, "VLF"],
  [/\bdc\b|direct.?voltage|gleichspannung|tension continue/i, "DC"],
  [/\bac\b|power.?frequency|wechselspannung|tension alternative/i, "AC"],
];
type TestWave = Wave | "VLF";

/** The one wave that a description names; undefined where it names none, or several. */
const namedWave = (description: string): TestWave | undefined => {
  const named = WAVES.filter(([words]) => words.test(description)).map(([, wave]) => wave);
  return named.length === 1 ? named[0] : undefined;
};

const isHighVoltage = ({ unit, wave, need }: Measured): boolean =>
  unit === "kV" && wave !== undefined && need !== undefined;

/** What a row's high voltage is: as its column, its row or the lineup says. */
const waveAsked = ({ wave }: Measured, row: Row, { lineup }: Context): string | undefined => {
  if (wave === "of the lineup") return lineup.withstand?.wave;
  return wave === "any" ? String(row.wave ?? "") : wave;
};

/** A high voltage of a wave that none of the row's test sets gives, by what each is called. */
function wrongWave(
  table: JudgedTable,
  context: Context,
  row: number,
  stored: Row,
  columns: readonly Measured[],
  instruments: readonly Known[],
): Finding[] {
  return columns.filter(isHighVoltage).flatMap((column): Finding[] => {
    const takers = takersOf(instruments, column.unit);
    const asked = waveAsked(column, stored, context);
    const given = takers.map(({ kind }) => namedWave(kind));
    const isKnown = WAVES.some(([, wave]) => wave === asked);
    if (!isKnown || isBlank(stored[column.id]) || takers.length === 0) return [];
    if (given.some((wave) => wave === undefined || wave === asked)) return [];
    return [
      {
        rule: "instrument-misfit",
        weight: "query",
        ...where(table, row, "instrument"),
        message: context.text.rules["instrument-misfit"].wave(
          rowName(table, row),
          column.header,
          String(asked),
          takers.map(({ id, kind }) => `${id}, ${kind}`),
        ),
        found: String(stored.instrument),
        expected: asked,
      },
    ];
  });
}

/** Entries beyond what every instrument says that it reaches of their quantity. */
function beyondReach(
  table: JudgedTable,
  { text }: Context,
  row: number,
  stored: Row,
  columns: readonly Measured[],
  instruments: readonly Known[],
): Finding[] {
  return columns.flatMap(({ id, unit, need }): Finding[] => {
    const value = need && instruments.length > 0 ? exactly(stored[id], unit) : undefined;
    if (value === undefined) return [];
    const takers = takersOf(instruments, unit);
    const reach = takers.map(({ scope }) => scope?.beyond(value, unit));
    if (takers.length === 0 || reach.some((one) => one === undefined)) return [];
    const reading = inUnit(stored[id], unit);
    return [
      {
        rule: "instrument-misfit",
        weight: "query",
        ...where(table, row, id),
        message: text.rules["instrument-misfit"].beyond(
          rowName(table, row),
          headerOf(table, id),
          reading,
          takers.map(({ id: name, kind }) => `${name}, ${kind}`),
        ),
        found: reading,
        expected: reach.join("; "),
      },
    ];
  });
}

/** An error in per cent that is to lie within less than the instrument's own. */
function tooCoarse(
  table: JudgedTable,
  { text }: Context,
  row: number,
  judged: Row,
  instruments: readonly Known[],
): Finding[] {
  const finest = Math.min(...instruments.map(({ accuracyPercent = 0 }) => accuracyPercent));
  if (!(finest > 0)) return [];
  return table.kind.accepted
    .filter((one) => isError(one) && applies(one, judged))
    .filter(({ limit, value }) => Number(judged[limit]) < finest && !isBlank(judged[value]))
    .map(({ limit }) => ({
      rule: "instrument-misfit",
      weight: "query",
      ...where(table, row, "instrument"),
      message: text.rules["instrument-misfit"].coarse(
        rowName(table, row),
        instruments.map(({ id }) => id),
        finest,
        headerOf(table, limit),
        Number(judged[limit]),
      ),
      found: String(judged.instrument),
    }));
}
