/** Every text that the pane shows, in English. Another language is one more file of this shape. */
export const messages = {
  title: "Gearproof",
  noExcel: "Open this pane from Excel: it works on the open workbook.",
  tables: "Record tables",
  noTables: "This workbook has no record tables yet.",
  rows: (count: number) => (count === 1 ? "1 row" : `${count} rows`),
  look: "Read the workbook again",
  check: "Check",
  checking: "Checking…",
  findings: "Findings",
  noFindings: "No findings.",
  cannotCheck: (reason: string) => `This workbook ${reason}`,
  failed: (reason: string) => `Excel could not do this: ${reason} Nothing was changed.`,
  goTo: (cell: string) => `Go to ${cell}`,
  more: (count: number) => `and ${count} more; they show as these are closed`,
  counts: {
    fail: "fail",
    inconclusive: "inconclusive",
    missing: "missing",
    pass: "pass",
  },
  caution:
    "Gearproof evaluates records. It never says that equipment is safe to energize: licensed people decide that under the local code, the permit system and the maker's instructions.",
};
