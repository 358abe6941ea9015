import { bare } from "../lineup/lineup";
import { LINEUP } from "../records/columns/common";
import { isBlank } from "../records/kind";
import { WORKS, type Work } from "../records/repairs";
import { repairsOf } from "../sheets/ours/repairSheet";
import { type Context, dayOf } from "./context";

/** A repair that says enough to tell what it reaches. */
export interface Repair {
  readonly sheet: string;
  /** The repaired record's key cells in order. */
  readonly row: string;
  readonly work: Work;
  /** Serial day. */
  readonly day: number;
  /** The panel or bus section that was worked on. */
  readonly object: string;
}

/** The work that a cell names. */
export const workIn = (cell: unknown): Work | undefined =>
  WORKS.find((work) => bare(work) === bare(String(cell ?? "")));

/** The repairs of a workbook whose work and day are known. */
export const knownRepairs = ({ snapshot }: Pick<Context, "snapshot">): Repair[] =>
  repairsOf(snapshot).flatMap(({ row }) => {
    const [work, day] = [workIn(row.work), dayOf(row.date)];
    const name = String(row.row ?? "").trim();
    if (work === undefined || day === undefined || name === "" || isBlank(row.sheet)) return [];
    const object = isBlank(row.panel) ? (name.split(" · ")[0] ?? LINEUP) : String(row.panel);
    return [{ sheet: String(row.sheet).trim(), row: name, work, day, object: object.trim() }];
  });

/** The bus sections that an object belongs to, or is. */
export const sectionsOf = (
  { panels }: Pick<Context["lineup"], "panels">,
  object: string,
): readonly string[] => [
  ...new Set(
    panels
      .filter(({ designation, section }) =>
        [designation, section].some((name) => bare(name) === bare(object)),
      )
      .map(({ section }) => section),
  ),
];
