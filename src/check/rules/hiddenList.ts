import { isBlank } from "../../records/kind";
import { cellAddress } from "../../sheets/cells/address";
import { CONCESSION_TABLE } from "../../sheets/ours/concessionSheet";
import { HISTORY_TABLE } from "../../sheets/ours/historySheet";
import { INSTRUMENT_TABLE } from "../../sheets/ours/instrumentSheet";
import { REPAIR_TABLE } from "../../sheets/ours/repairSheet";
import { type TableSnapshot, tablesOf } from "../../sheets/snapshot";
import { noKind, type Rule } from "../context";
import type { Finding } from "../findings/finding";

/** Lists without which a record cannot be believed. */
const LISTS: ReadonlySet<string> = new Set([
  INSTRUMENT_TABLE,
  HISTORY_TABLE,
  REPAIR_TABLE,
  CONCESSION_TABLE,
]);

/** A list that goes with the records and holds something, on a sheet that is hidden. */
export const hiddenList: Rule = {
  id: "hidden-list",
  reads: "book",
  of: noKind,
  find: ({ snapshot, text }) => {
    const hidden = new Set(snapshot.sheets.flatMap((one) => (one.hidden ? [one.name] : [])));
    return tablesOf(snapshot)
      .filter((table) => hidden.has(table.sheet) && LISTS.has(table.name) && holdsAny(table))
      .map(
        (table): Finding => ({
          rule: "hidden-list",
          weight: "query",
          sheet: table.sheet,
          address: cellAddress(table, -1, 0),
          message: text.rules["hidden-list"].message(table.sheet),
        }),
      );
  },
};

const holdsAny = ({ rowCount, cell }: TableSnapshot): boolean => {
  for (let row = 0; row < rowCount; row++) if (!isBlank(cell(row, 0))) return true;
  return false;
};
