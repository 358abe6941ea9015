import type { Line, ParsedField } from "../place/lineReader";
import type { ExportBlock } from "../table/exportTable";
import { partNamed } from "../words/partNamed";
import type { Lost } from "./lost";
import type { RecordRows } from "./recordRows";
import type { RowSearch, rowFinder } from "./rowFinder";
import { tablesFor } from "./tablesFor";

/** The record tables that lines of a shape and of these quantities can belong to, and what was found there. */
export type Among<T extends RecordRows> =
  | {
      readonly ok: true;
      readonly tables: readonly T[];
      readonly about?: ExportBlock["about"];
      readonly rows: Branch<RowSearch<T>>;
    }
  | Lost;

/** What was found, by one part of a line after the other. */
interface Branch<Found> {
  found?: Found;
  readonly next: Map<ParsedField | undefined, Branch<Found>>;
}

/** The record tables that a line can belong to; lines with the same marks are asked once. */
export const tablesAmong = <T extends RecordRows>(
  line: Line<Among<T>>,
  tables: readonly T[],
  block: ExportBlock,
): Among<T> => {
  const { parts, shape } = line;
  const { last } = shape;
  if (last && isMarked(parts, last.marks)) return last.found;
  const marks = parts.map(({ mark }) => mark);
  const key = marks.join("|");
  const remembered = shape.found.get(key);
  if (remembered) {
    shape.last = { marks, found: remembered };
    return remembered;
  }
  const written = new Map(parts.map((part) => [part.field, part]));
  const found = tablesFor(tables, written, written.get("test")?.name ?? "", block);
  const among: Among<T> = found.ok
    ? { ok: true, tables: found.value, about: block.about, rows: { next: new Map() } }
    : found;
  // A refusal names the line's own text.
  if (found.ok) shape.found.set(key, among);
  return among;
};

const isMarked = (parts: readonly ParsedField[], marks: readonly string[]): boolean => {
  for (let index = 0; index < marks.length; index++)
    if (parts[index]?.mark !== marks[index]) return false;
  return true;
};

/** The search for rows, which answers the same question once. */
export const placeFinder = <T extends RecordRows>(find: ReturnType<typeof rowFinder<T>>) => {
  let left = MAX_REMEMBERED;
  return (
    { shape, parts }: Line<Among<T>>,
    { tables, rows, about }: Extract<Among<T>, { ok: true }>,
  ): RowSearch<T> => {
    const { objects, others } = shape.place;
    let object: ParsedField | undefined;
    for (let index = 0; index < objects.length && !object?.name; index++)
      object = parts[objects[index] as number];
    // Panels are many, so that they come last: their branches are few then, and large.
    let branch: Branch<RowSearch<T>> | undefined = rows;
    for (let index = 0; index < others.length && branch; index++)
      branch = grown(branch, parts[others[index] as number]);
    branch = branch && grown(branch, object);
    if (branch?.found) return branch.found;
    const [part = "", position, stage, operation = "", more = ""] = others.map(
      (index) => parts[index]?.name ?? "",
    );
    const found = find(
      {
        object: object?.name ?? "",
        part: partNamed(`${part} ${more}`.trim(), operation),
        position: position ?? "",
        stage: stage ?? "",
        ...(about && { about }),
      },
      tables,
    );
    if (branch) branch.found = found;
    return found;
  };
  function grown(branch: Branch<RowSearch<T>>, part: ParsedField | undefined) {
    const known = branch.next.get(part);
    if (known || left === 0 || part?.kept === false) return known;
    left -= 1;
    const made: Branch<RowSearch<T>> = { next: new Map() };
    branch.next.set(part, made);
    return made;
  }
};

const MAX_REMEMBERED = 200_000;
