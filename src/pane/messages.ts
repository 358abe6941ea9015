/** Every text that the pane shows, in English. Another language is one more file of this shape. */
export const messages = {
  title: "Gearproof",
  noExcel: "Open this pane from Excel: it works on the open workbook.",
  working: "Working…",
  progress: (done: number, total: number) => `${done} of ${total} steps`,
  stop: "Stop",
  tables: "Record tables",
  noTables: "This workbook has no record tables yet. Build them from a lineup.",
  rows: (count: number) => (count === 1 ? "1 row" : `${count} rows`),
  build: "Build from a lineup file",
  buildHelp: "A .lineup.json file. Readings, extra columns and the order of rows stay as they are.",
  built: (created: number, added: number, aside: number) =>
    `Built: ${created} new sheets, ${added} rows added to tables that were there${aside > 0 ? `, ${aside} rows that the lineup no longer has left where they are` : ""}.`,
  lineupErrors: (file: string, count: number) =>
    `${file}: ${count === 1 ? "one thing" : `${count} things`} to put right`,
  check: "Check",
  look: "Read the workbook again",
  findings: "Findings",
  noFindings: "No findings.",
  mark: "Mark the findings in the sheets",
  unmark: "Take the marks off",
  marked: (cells: number) => `${cells} cells marked.`,
  unmarked: "The marks are off.",
  cannotCheck: (reason: string) => `This workbook ${reason}.`,
  failed: (reason: string) => reason,
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
