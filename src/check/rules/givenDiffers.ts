import type { Column } from "../../records/kind";
import { SOURCES } from "../../records/limits";
import { amongDifferences, differences } from "../compare/differences";
import { type Rule, rowName, said, shown, where } from "../context";

const isFact = ({ role, id }: Column) => role === "given" && id !== SOURCES;

/** A rating or fact of a row that is not the lineup's. */
export const givenDiffers: Rule = {
  id: "given-differs",
  reads: "row",
  among: (table) => amongDifferences(table, isFact),
  rows: (table, { text }) =>
    differences(table, isFact, (row, { id, header }, stored, wanted) => ({
      rule: "given-differs",
      weight: "stop",
      ...where(table, row, id),
      message: text.rules["given-differs"].message(
        rowName(table, row),
        header,
        shown(stored, text),
        shown(wanted, text),
      ),
      found: said(stored),
      expected: said(wanted),
    })),
};
