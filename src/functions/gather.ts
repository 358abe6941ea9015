import type { Result } from "../quantities/result";
import { refuse } from "../quantities/result";
import { type Cell, errorIn, isBlank, plain, refused, toCell } from "./excel";
import type { Input } from "./inputs";

/**
 * Computes a worksheet function from whole ranges, each read as a list.
 *
 * Places that are blank in every range are passed over; a place that is blank in one of them only is
 * refused. Ranges with nothing in them give a blank, an error is handed on.
 *
 * @returns a single cell
 */
export const gather = (
  inputs: readonly Input<number>[],
  compute: (...lists: number[][]) => Result<unknown>,
): Cell => {
  const columns = inputs.map(({ cells }) =>
    (Array.isArray(cells) ? cells.flat() : [cells]).map(plain),
  );
  const error = columns
    .flat()
    .map(errorIn)
    .find((found) => found !== undefined);
  if (error !== undefined) return error;
  const length = Math.max(...columns.map((column) => column.length));
  const places = Array.from({ length }, (_, i) => i).filter((i) =>
    columns.some((column) => !isBlank(column[i])),
  );
  if (places.length === 0) return "";

  const lists: number[][] = inputs.map(() => []);
  for (const place of places)
    for (const [i, { name, read }] of inputs.entries()) {
      const cell = columns[i]?.[place];
      const found = isBlank(cell)
        ? refuse("wrong", (text) => text.functions.blankPoint)
        : read(cell);
      if (!found.ok)
        return refused(
          refuse(found.kind, (text) =>
            text.functions.ofCell(text.name(name), place + 1, found.say(text)),
          ),
        );
      lists[i]?.push(found.value);
    }
  return toCell(compute(...lists));
};
