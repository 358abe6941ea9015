import { bare, type Lineup } from "../../lineup/lineup";
import { memoizeFor } from "../../quantities/memoizeFor";
import { cellsOf } from "../../records/cellsOf";
import type { CellValue } from "../../records/kind";
import { a1, cellAddress } from "../../sheets/cells/address";
import { CRITERIA_COLUMNS, CRITERIA_TABLE } from "../../sheets/ours/criteriaSheet";
import { asRecordTable } from "../../sheets/recordTable";
import { type SheetCells, type SheetSnapshot, tablesOf } from "../../sheets/snapshot";
import {
  type Context,
  everyKind,
  headerOf,
  type JudgedTable,
  type Rule,
  rowName,
  where,
} from "../context";
import type { Finding } from "../findings/finding";

/** What a sheet calls its project and its circuit, in the languages that sheets come in. */
const LABELS = [
  [
    "project",
    /^(project|job|projekt|bauvorhaben|projet|proyecto|projeto|progetto|المشروع)( (name|title))?$/,
  ],
  [
    "circuit",
    /^(feeder|circuit|abgang|feld|d[ée]part|circuito|salida|alimentador|مغذي)( (name|designation))?$/,
  ],
] as const;
/** A head of a sheet has its names in so many rows and columns. */
const [HEAD_ROWS, HEAD_COLUMNS] = [20, 16] as const;
/** What stands between a document's number and its revision. */
const REVISION =
  /^[\s,;:()-]{0,3}(?:revision|rev\.?|issue|index|ind\.?)[\s.:]*([a-z]?\d{1,2}|[a-z])\b/i;

/** Names that differ between sheets: a document at another revision, a head of another project or circuit. */
export const namesDiffer: Rule = {
  id: "names-differ",
  reads: "book",
  of: everyKind,
  find: (context) => [
    ...context.tables.flatMap((table) => superseded(table, context)),
    ...criteriaOf(context),
    ...headsDiffer(context),
  ],
};

/** Documents of the project by what is looked for of their numbers, with their latest approved revisions. */
const documentsOf = memoizeFor(({ project }: Lineup) =>
  [
    ...project.drawings,
    ...(project.specification && project.specificationRevision
      ? [{ number: project.specification, revision: project.specificationRevision }]
      : []),
  ].map(({ number, revision }) => ({
    number: number.replace(/\s*\(.*\)$/, ""),
    revision,
  })),
);

/** Remarks and names of documents that speak of another revision than the latest approved one, each text once. */
function superseded(table: JudgedTable, { lineup, text }: Context): Finding[] {
  const says = text.rules["names-differ"];
  const columns = table.kind.columns.filter(
    ({ id, role, accepts }) =>
      table.at.has(id) &&
      (role === "note" || id === "document" || (role === "entry" && accepts?.type === "text")),
  );
  return columns.flatMap(({ id }) => {
    const cells = cellsOf(table.rows, id);
    return [...new Set(cells)].flatMap((cell): Finding[] => {
      const other = otherRevision(cell, lineup);
      if (!other) return [];
      const row = cells.indexOf(cell);
      if (table.aside.has(row)) return [];
      const header = headerOf(table, id);
      const message = says.document(
        rowName(table, row),
        header,
        other.number,
        other.named,
        other.revision,
      );
      return [
        {
          ...FINDING,
          ...where(table, row, id),
          message,
          found: other.named,
          expected: other.revision,
        },
      ];
    });
  });
}

const FINDING = { rule: "names-differ", weight: "query" } as const;

/** The project's own criteria from a document at another revision than the latest approved one, each document once. */
function criteriaOf({ snapshot, lineup, text }: Context): Finding[] {
  const table = tablesOf(snapshot).find(({ name }) => name === CRITERIA_TABLE);
  if (!table) return [];
  const { at, rows } = asRecordTable({ columns: CRITERIA_COLUMNS }, table);
  const documents = rows.map(({ document }) => document ?? null);
  return [...new Set(documents)].flatMap((cell): Finding[] => {
    const other = otherRevision(cell, lineup);
    if (!other) return [];
    const row = documents.indexOf(cell);
    return [
      {
        ...FINDING,
        sheet: table.sheet,
        address: cellAddress(table, row, at.get("document") ?? 0),
        message: text.rules["names-differ"].document(
          String(rows[row]?.quantity ?? ""),
          "Document",
          other.number,
          other.named,
          other.revision,
        ),
        found: other.named,
        expected: other.revision,
      },
    ];
  });
}

/** A document of the project that a text names at another revision. */
function otherRevision(cell: CellValue, lineup: Lineup) {
  if (typeof cell !== "string") return undefined;
  for (const { number, revision } of documentsOf(lineup)) {
    const at = cell.indexOf(number);
    const [, named] = at < 0 ? [] : (REVISION.exec(cell.slice(at + number.length)) ?? []);
    if (
      named !== undefined &&
      bare(named) !== bare(revision).replace(/^(revision|rev|issue|index)/, "")
    )
      return { number, named, revision };
  }
  return undefined;
}

/** Heads of sheets that are not ours, with the name of another project, or of another circuit than their panel's. */
function headsDiffer({ snapshot, lineup, tables, text }: Context): Finding[] {
  return snapshot.sheets.flatMap((sheet) => {
    const own = tables.filter(({ table }) => table.sheet === sheet.name && table.ownLayout);
    if (own.length === 0) return [];
    const wanted = { project: [lineup.project.name], circuit: circuitOf(own, lineup) };
    return namesIn(sheet).flatMap(({ sort, name, row, column }): Finding[] => {
      const [right, ...others] = wanted[sort];
      if (right === undefined || [right, ...others].some((one) => isSame(name, one))) return [];
      return [
        {
          ...FINDING,
          sheet: sheet.name,
          address: a1(row, column),
          message: text.rules["names-differ"].head(sort, name, right),
          found: name,
          expected: right,
        },
      ];
    });
  });
}

/** The circuit of the one panel that a sheet is about, and the panel itself. */
function circuitOf(tables: readonly JudgedTable[], { panels }: Lineup): readonly string[] {
  const [object, ...others] = new Set(tables.flatMap(({ rows }) => rows.map((row) => row.object)));
  const panel = panels.find(({ designation }) => designation === object);
  return panel?.name === undefined || others.length > 0 ? [] : [panel.name, panel.designation];
}

/** A name, or a part of it, as heads abbreviate them. */
const isSame = (one: string, other: string): boolean =>
  bare(other).includes(bare(one)) || bare(one).includes(bare(other));

interface Named {
  readonly sort: (typeof LABELS)[number][0];
  readonly name: string;
  readonly row: number;
  readonly column: number;
}

/** The names that the head of a sheet gives, each beside its label or after the label's colon. */
const namesIn = memoizeFor(({ cells }: SheetSnapshot): readonly Named[] => {
  if (!cells) return [];
  return Array.from({ length: Math.min(HEAD_ROWS, cells.rowCount) }, (_, row) => row).flatMap(
    (row) =>
      Array.from(
        { length: Math.min(HEAD_COLUMNS, cells.columnCount) },
        (_, column) => column,
      ).flatMap((column) => namedAt(cells, row, column)),
  );
});

function namedAt(cells: SheetCells, row: number, column: number): Named[] {
  const cell = cells.cell(row, column);
  if (typeof cell !== "string") return [];
  const [label = "", after = ""] = cell.split(/:(.*)/s);
  const [sort] = LABELS.find(([, words]) => words.test(label.trim().toLowerCase())) ?? [];
  if (!sort) return [];
  if (after.trim() !== "") return [{ sort, name: after.trim(), row, column }];
  const beside = cells.cell(row, column + 1) ?? cells.cell(row, column + 2);
  return typeof beside === "string" && cell.trim().endsWith(":")
    ? [{ sort, name: beside.trim(), row, column }]
    : [];
}
