import { type BoltSize, bolts, proofStress } from "../../../src/engineering/bolts";
import { type Curve, curves } from "../../../src/engineering/curves";
import { insulationFactors } from "../../../src/engineering/insulationFactors";
import { sources } from "../../../src/functions/sources";
import { BASES, type Source } from "../../../src/standards/criterion";
import { declaredStandards, type ListedCriterion, standardsTables } from "./standardsTables";

/** One table of figures: what it is, where it comes from, and its rows. */
export interface CriteriaTable {
  readonly title: string;
  readonly sources: readonly Source[];
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

/** Every table that the criteria and calculations rest on: those that the standards' files declare, then those of the calculations. */
export async function criteriaTables(): Promise<CriteriaTable[]> {
  const { tables } = await declaredStandards();
  return [...standardsTables(tables), ...calculationTables()];
}

/** Every criterion: those of the standards' files, then the figures of the calculations, row by row. */
export async function listedCriteria(): Promise<ListedCriterion[]> {
  const { criteria } = await declaredStandards();
  const others = calculationTables().flatMap(({ title, sources: [source], columns, rows }) =>
    source === undefined
      ? []
      : rows.map((row) => ({
          what: title,
          value: row.map((cell, at) => `${columns[at]} ${cell}`).join(", "),
          source,
        })),
  );
  return [...criteria, ...others];
}

/** Figures that calculations work with, and that stand with them. */
const calculationTables = (): CriteriaTable[] => [
  {
    title: "Insulation resistance: factors to 20 °C",
    sources: sourcesOf("IRFACTOR"),
    columns: ["°C", "solid", "oil"],
    rows: insulationFactors.solid.map(([celsius, solid], i) => [
      celsius,
      solid,
      insulationFactors.oil[i]?.[1] ?? "none given",
    ]),
  },
  {
    title: "Inverse-time curves: t = setting (a / (M^p − 1) + b)",
    sources: sourcesOf("CURVETIME"),
    columns: ["curve", "a s", "b s", "p"],
    rows: (Object.keys(curves) as Curve[]).map((name) => {
      const { a, b, p } = curves[name];
      return [name, a, b, p];
    }),
  },
  {
    title: "Bolts: stress area",
    sources: sourcesOf("BOLTTORQUE").slice(0, 1),
    columns: ["bolt", "mm", "stress area mm²"],
    rows: (Object.keys(bolts) as BoltSize[]).map((size) => [
      size,
      bolts[size].diameter,
      bolts[size].area,
    ]),
  },
  {
    title: "Bolts: proof stress",
    sources: sourcesOf("BOLTTORQUE").slice(0, 1),
    columns: ["class", "to M16, MPa", "above, MPa"],
    rows: (["8.8", "10.9", "12.9"] as const).map((grade) => [
      grade,
      proofStress[grade].small,
      proofStress[grade].large,
    ]),
  },
];

function sourcesOf(name: string): readonly Source[] {
  const found = sources[name] ?? [];
  return "IEC" in found ? BASES.flatMap((basis) => found[basis]) : found;
}
