import type { Lineup } from "../../lineup/lineup";
import { evaluate } from "../../records/evaluate";
import type { Row } from "../../records/kind";
import type { JudgedTable } from "../context";
import { renamedIn } from "../rules/keyChanged";
import { isSameResult } from "./isSameResult";

/**
 * A row as it would be with its name and facts as the lineup gives them; undefined where it has them so. A
 * limit that is right by these is none that somebody moved: the fact is, of which another rule tells.
 */
export const asLineupHasIt =
  (table: JudgedTable, lineup: Lineup) =>
  (row: number, stored: Row): Row | undefined => {
    const planned = renamedIn(table).get(row) ?? table.given.get(table.keys[row] ?? "");
    if (!planned) return undefined;
    const facts = table.kind.columns.filter(
      ({ id, role, value }) => (role === "given" || role === "key") && !value && id in planned,
    );
    if (facts.every(({ id }) => isSameResult(stored[id], planned[id]))) return undefined;
    const told = Object.fromEntries(facts.map(({ id }) => [id, planned[id] ?? null]));
    return evaluate(table.kind, [{ ...stored, ...told }], lineup)[0];
  };
