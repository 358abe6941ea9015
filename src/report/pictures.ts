import type { JudgedTable } from "../check/context";
import type { Messages } from "../messages/messages";
import { type Row, verdictOf } from "../records/kind";
import { quantity } from "../records/quantity";

/** A drawing of numbers: names or numbers along, a quantity upward. */
export interface Picture {
  readonly title: string;
  /** Names along; undefined where numbers stand along. */
  readonly names?: readonly string[];
  readonly along?: { readonly header: string; readonly log: boolean };
  readonly upward: { readonly header: string; readonly log: boolean };
  readonly series: readonly {
    readonly name: string;
    readonly line: boolean;
    readonly points: readonly (readonly [x: number, y: number])[];
  }[];
}

/** At most so many records stand in one picture. */
const MOST = 400;

/** The pictures that say more than a row's numbers: its neighbours and its limit, and its curve. */
export function picturesOf(table: JudgedTable, row: number, text: Messages["plot"]): Picture[] {
  const { kind, judged } = table;
  const own = judged[row];
  if (!own) return [];
  const curve = kind.curve ? curveOf(table, own) : undefined;
  if (!kind.plot) return curve ? [curve] : [];
  const beside = judged.filter(({ object, part }) => object === own.object && part === own.part);
  const alike = judged.filter((one) => sort(one) === sort(own)).slice(0, MOST);
  return [
    ...(curve ? [curve] : []),
    ...compared(table, beside, String(own.object)),
    ...(alike.length > beside.length ? compared(table, alike, text.across(kind.title)) : []),
  ];
}

/** What a record is of, wherever it stands: poles with poles, joints with joints. */
const sort = (row: Row): string =>
  [
    String(row.part ?? "")
      .replace(/[^\p{L} ]+/gu, "")
      .replace(/\b\p{Lu}$/u, ""),
    row.stage ?? "",
    row.operation ?? "",
  ].join("|");

function compared({ kind }: JudgedTable, rows: readonly Row[], title: string): Picture[] {
  const { plot } = kind;
  if (!plot) return [];
  const drawable = (number: number | undefined): number is number =>
    number !== undefined && Number.isFinite(number) && (!plot.log || number > 0);
  const many = new Set(rows.map(({ object }) => object)).size > 1;
  const nameOf = (row: Row) =>
    kind.columns
      .filter(({ role, id }) => role === "key" && id !== "stage" && (many || id !== "object"))
      .filter(({ id }) => many || id !== "part" || new Set(rows.map((one) => one.part)).size > 1)
      .map(({ id }) => String(row[id] ?? ""))
      .join(" ");
  const names = [...new Set(rows.map(nameOf))];
  const stages = [...new Set(rows.map(({ stage }) => String(stage ?? "")))];
  const header = (id: string) => kind.columns.find((one) => one.id === id)?.header ?? id;
  const points = (stage: string, id: string) =>
    rows.flatMap((row): [number, number][] => {
      const value = quantity(row[id], plot.unit)?.value;
      return String(row.stage ?? "") === stage && drawable(value)
        ? [[names.indexOf(nameOf(row)), value]]
        : [];
    });
  const readings = stages.map((stage) => ({
    name: stage || header(plot.value),
    line: false,
    points: points(stage, plot.value),
  }));
  if (readings.every(({ points }) => points.length === 0)) return [];
  return [
    {
      title,
      names,
      upward: { header: header(plot.value), log: plot.log },
      series: [
        ...readings,
        { name: header(plot.limit), line: true, points: points(stages[0] ?? "", plot.limit) },
      ].filter(({ points }) => points.length > 0),
    },
  ];
}

function curveOf({ kind }: JudgedTable, row: Row): Picture | undefined {
  const { curve } = kind;
  if (!curve) return undefined;
  const number = (id: string | number) => (typeof id === "number" ? id : Number(row[id]));
  const points = curve.points
    .map(([x, y]): [number, number] => [number(x), quantity(row[y], curve.unit)?.value ?? 0])
    .filter(([x, y]) => x > 0 && y > 0);
  const mark = curve.mark === undefined ? 0 : Number(row[curve.mark]);
  if (points.length < 2) return undefined;
  return {
    title: `${kind.title}: ${verdictOf(row)}`,
    along: { header: curve.along, log: true },
    upward: { header: curve.upward, log: true },
    series: [
      { name: curve.upward, line: true, points },
      ...(mark > 0 && curve.mark !== undefined
        ? [
            {
              name: kind.columns.find(({ id }) => id === curve.mark)?.header ?? "",
              line: true,
              points: [
                [points[0]?.[0] ?? mark, mark],
                [points.at(-1)?.[0] ?? mark, mark],
              ] as [number, number][],
            },
          ]
        : []),
    ],
  };
}
