import type { Unit } from "../../quantities/units";
import { namedInstruments } from "../../records/instruments";
import { type Column, isBlank, type Row } from "../../records/kind";
import { onceForAlike } from "../../records/onceForAlike";
import { exactly } from "../../records/quantity";
import { applies } from "../../records/verdict";
import type { InstrumentRow } from "../../sheets/ours/instrumentSheet";
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
import type { Finding } from "../finding";
import { type Scope, scopeOf } from "../instrumentScope";
import { oncePerEntry } from "../oncePerEntry";

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
    const listedIn = onceForAlike(({ instrument }) => {
      const named = namedInstruments(instrument).map((id) => known(id));
      // One that is not listed, or whose description says nothing, may have measured anything.
      const listed = named.filter((one): one is Known => one !== undefined);
      return { listed, all: listed.length === named.length ? listed : [] };
    });
    return oncePerEntry(
      overRows(table, (row, stored, judged): Finding[] => {
        const { listed, all } = listedIn(stored);
        if (listed.length === 0) return [];
        return [
          ...wrongSort(table, context, row, stored, columns, all),
          ...beyondReach(table, context, row, stored, columns, all),
          ...tooCoarse(table, context, row, judged, listed),
        ].slice(0, 1);
      }).map(({ finding }) => finding),
      context.text,
    );
  },
};

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
  { text }: Context,
  row: number,
  stored: Row,
  columns: readonly Measured[],
  instruments: readonly Known[],
): Finding[] {
  const read = columns.filter(({ id, need }) => need === "reading" && !isBlank(stored[id]));
  const [first] = read;
  if (!first || instruments.length === 0 || instruments.some(({ scope }) => !scope)) return [];
  const fits = read.some(({ unit }) => instruments.some(({ scope }) => scope?.measures(unit)));
  if (fits) return [];
  return [
    {
      rule: "instrument-misfit",
      weight: "query",
      ...where(table, row, "instrument"),
      message: text.rules["instrument-misfit"].sort(
        rowName(table, row),
        instruments.map(({ id, kind }) => `${id}, ${kind}`),
        headerOf(table, first.id),
      ),
      found: String(stored.instrument),
    },
  ];
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
    const takers = instruments.filter(({ scope }) => !scope || scope.measures(unit));
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
    .filter((one) => one.unit === "%" && one.sense === "within" && applies(one, judged))
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
