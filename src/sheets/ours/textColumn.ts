import type { Column } from "../../records/kind";

/** A column that people write words into, on a sheet of ours that is no record. */
export const textColumn = (id: string, header: string, width: number, help: string): Column => ({
  id,
  header,
  role: "entry",
  width,
  accepts: { type: "text" },
  help,
});
