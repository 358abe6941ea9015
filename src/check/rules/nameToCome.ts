import { type CellValue, type Column, isBlank, type Row } from "../../records/kind";
import { amongEntries } from "../among/amongRows";
import { type JudgedTable, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

/** Words that stand in for a number, name or revision, or for nobody in particular; with a digit in it, a cell names something. */
const TO_COME =
  /^(?:t\.?b\.?[acds]\.?|to (?:be )?(?:follow|come|advised?|confirmed|decided|issued)|pending|later|not (?:yet )?(?:known|issued)|awaited|unknown|open|n\.?\/?a\.?|none|nil|x{2,}|[-–—?.*_]+|offen|folgt|unbekannt|en attente|à suivre|pendiente|pendente|various|several|ditto|dito|idem|same|as above|all|everybody|anybody|verschiedene|diverse|mehrere|wie oben|divers(?:es)?|plusieurs|v[aá]rios|vari|["”″]|do\.)$/i;

export const isToCome = (cell: CellValue | undefined): boolean =>
  typeof cell === "string" && !isBlank(cell) && TO_COME.test(cell.trim());

/** Free text that has to name something: a permit, a revision, a document, who signed. Of instruments another rule tells. */
const names = ({ id, accepts, role, need }: Column): boolean =>
  role === "entry" && accepts?.type === "text" && need !== undefined && id !== "instrument";

/** A word that stands for nothing in a cell that has to name something. */
export const nameToCome: Rule = {
  id: "name-to-come",
  reads: "table",
  find: (table, { text }) => {
    const columns = table.kind.columns.filter(names);
    const asked = askedIn(table, columns);
    return overRows(
      table,
      (row, stored) =>
        columns.flatMap((column): Finding[] => {
          const cell = stored[column.id] ?? null;
          if (!isToCome(cell) || isGiven(table, stored, cell)) return [];
          return [
            {
              rule: "name-to-come",
              weight: "query",
              ...where(table, row, column.id),
              message: text.rules["name-to-come"].message(
                rowName(table, row),
                column.header,
                String(cell).trim(),
              ),
              found: String(cell).trim(),
            },
          ];
        }),
      asked,
    ).map(({ finding }) => finding);
  },
};

const askedIn = (table: JudgedTable, columns: readonly Column[]): readonly number[] =>
  amongEntries(table, columns, isToCome);

/** A word that the lineup itself gives for it: what is ordered of a device, or a first revision without a number. */
const isGiven = ({ kind }: JudgedTable, stored: Row, cell: CellValue): boolean =>
  kind.columns.some(({ id, role }) => role === "given" && stored[id] === cell);
