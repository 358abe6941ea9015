import { serialDay } from "../../quantities/dates";
import { answered, blank, closing, LINEUP, signed } from "../columns/common";
import { type Column, isBlank, type RecordKind, type Row } from "../kind";
import { verdictBy } from "../verdict";

const NOT_KNOWN = "not known";

const day = (id: string, header: string, help: string): Column => ({
  id,
  header,
  role: "entry",
  width: 12,
  format: "yyyy-mm-dd",
  accepts: { type: "date" },
  need: "condition",
  help,
});

const dayText = (cell: Row[string] | undefined) =>
  typeof cell === "number" ? serialDay(cell) : String(cell);

const columns: readonly Column[] = [
  { id: "object", header: "For", role: "key", width: 10 },
  { id: "part", header: "Permit", role: "key", width: 30 },
  {
    id: "number",
    header: "Permit number",
    role: "entry",
    width: 18,
    accepts: { type: "text" },
    need: "reading",
  },
  day("from", "Valid from", "First day that the permit holds for."),
  day("to", "Valid to", "Last day that the permit holds for; with every extension of it."),
  ...signed("Holder", "Day of the work").map(
    (column): Column => (column.id === "date" ? { ...column, need: "condition" } : column),
  ),
  answered("valid", "Valid that day", ["Yes", "No"], {
    role: "computed",
    need: undefined,
    formula: (ref) => {
      const [from, to, date] = ["from", "to", "date"].map(ref) as [string, string, string];
      return `IF(OR(${blank(from)},${blank(to)},${blank(date)}),"",IF(AND(ISNUMBER(${from}),ISNUMBER(${to}),ISNUMBER(${date})),IF(AND(${date}>=${from},${date}<${to}+1),"Yes","No"),"${NOT_KNOWN}"))`;
    },
    value: ({ from, to, date }) => {
      if ([from, to, date].some(isBlank)) return null;
      return typeof from === "number" && typeof to === "number" && typeof date === "number"
        ? date >= from && date < to + 1
          ? "Yes"
          : "No"
        : NOT_KNOWN;
    },
    working: ({ from, to, date, valid }) =>
      valid === "Yes" || valid === "No"
        ? `${dayText(date)} is ${valid === "Yes" ? "from" : "not from"} ${dayText(from)} to ${dayText(to)}`
        : "",
  }),
];

/** Permits to work: held, and valid on the day of the work. */
export const permits: RecordKind<"permits"> = {
  id: "permits",
  role: "permit",
  furtherBy: ["number", "from", "to", "date"],
  sheet: "Permits",
  table: "GearPermits",
  columns: [...columns, verdictBy(columns, [], []), ...closing()],
  // Common practice: one to work on the gear, and one more for tests at high voltage.
  rows: () => [
    { object: LINEUP, part: "Permit to work" },
    { object: LINEUP, part: "Sanction for high-voltage tests" },
  ],
  accepted: [],
  enough: [],
};
