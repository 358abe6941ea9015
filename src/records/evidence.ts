import type { Lineup } from "../lineup/lineup";
import type { Sense, Verdict } from "../standards/judge";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  type RecordKind,
  type Row,
} from "./kind";
import { applies, compared, isAsked, wordColumns } from "./verdict";

/** One line of a record worked out as on paper. */
export type EvidenceLine =
  | {
      readonly part: "given" | "entry" | "worked" | "limit";
      readonly header: string;
      readonly value: CellValue;
      readonly unit: string | undefined;
      readonly date: boolean;
      /** How the value came about. */
      readonly working: string;
    }
  | {
      readonly part: "judged";
      /** Header of the value and of its limit. */
      readonly header: string;
      readonly limitHeader: string;
      readonly value: CellValue;
      readonly limit: CellValue;
      readonly unit: string | undefined;
      readonly sense: Sense | "word";
      readonly tolerance: number;
      /** What it decides: acceptance, or whether the test proves anything. */
      readonly decides: "acceptance" | "proof";
      readonly verdict: Verdict;
    };

const PART = { given: "given", entry: "entry", computed: "worked", limit: "limit" } as const;

/**
 * A record worked out line by line: what is given, what was read, what follows from it and how, and each
 * comparison with its limit that this row is judged by. Blank cells of what was given and worked out are left
 * out.
 *
 * @param row the row as evaluated
 */
export function evidenceOf(kind: RecordKind, row: Row, lineup: Lineup): EvidenceLine[] {
  const column = new Map(kind.columns.map((one) => [one.id, one]));
  const header = (id: string) => column.get(id)?.header ?? id;
  const lines = kind.columns.flatMap((one): EvidenceLine[] => {
    const part = partOf(one);
    const value = row[one.id] ?? null;
    return part === undefined || (isBlank(value) && part !== "entry")
      ? []
      : [
          {
            part,
            header: one.header,
            value,
            unit: one.unit,
            date: one.accepts?.type === "date",
            working: one.working?.(row, lineup) ?? "",
          },
        ];
  });
  const words = wordColumns(kind.columns)
    .filter((word) => isAsked(word, row))
    .map(
      ({ id, right, wrong, answered }): EvidenceLine => ({
        part: "judged",
        header: header(id),
        limitHeader: "",
        value: row[id] ?? null,
        limit: right,
        unit: undefined,
        sense: "word",
        tolerance: 0,
        decides: "acceptance",
        verdict: wrong(row[id]) ? "Fail" : answered(row[id]) ? "Pass" : "Inconclusive",
      }),
    );
  const judgedBy = (comparisons: readonly Comparison[]) =>
    comparisons.filter((comparison) => applies(comparison, row));
  const judged =
    (decides: "acceptance" | "proof") =>
    (comparison: Comparison): EvidenceLine => ({
      part: "judged",
      header: header(comparison.value),
      limitHeader: header(comparison.limit),
      value: row[comparison.value] ?? null,
      limit: row[comparison.limit] ?? null,
      unit: comparison.unit,
      sense: comparison.sense,
      tolerance: comparison.tolerance ?? 0,
      decides,
      verdict: compared(comparison, row),
    });
  return [
    ...lines,
    ...words,
    ...judgedBy(kind.enough).map(judged("proof")),
    ...judgedBy(kind.accepted).map(judged("acceptance")),
  ];
}

const partOf = ({ id, role }: Column) =>
  id === "sources" || !(role in PART) ? undefined : PART[role as keyof typeof PART];
