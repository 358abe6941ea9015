import { cellsOf } from "../../records/cellsOf";
import { isBlank } from "../../records/kind";
import { type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

/** The hash of one settings file at two relays. */
export const sameFile: Rule = {
  id: "same-file",
  reads: "table",
  find: (table, { text }) => {
    if (!table.at.has("fileHash")) return [];
    const first = new Map<string, number>();
    const told = new Set<string>();
    return cellsOf(table.rows, "fileHash").flatMap((cell, row): Finding[] => {
      if (isBlank(cell) || table.aside.has(row)) return [];
      const hash = String(cell).trim().toLowerCase();
      const device = deviceAt(table.rows[row]);
      const earlier = first.get(hash);
      if (earlier === undefined) first.set(hash, row);
      if (earlier === undefined || deviceAt(table.rows[earlier]) === device) return [];
      const name = `${hash} ${device}`;
      if (told.has(name)) return [];
      told.add(name);
      return [
        {
          rule: "same-file",
          weight: "query",
          ...where(table, row, "fileHash"),
          message: text.rules["same-file"].message(
            rowName(table, row),
            String(cell).trim(),
            rowName(table, earlier),
            where(table, earlier, "fileHash").address,
          ),
          found: String(cell).trim(),
        },
      ];
    });
  },
};

const deviceAt = (row: Readonly<Record<string, unknown>> | undefined): string =>
  `${String(row?.object ?? "")} · ${String(row?.part ?? "")}`;
