import { countIn } from "../plurals";

const count = countIn("en");
const ROWS = { one: "row", other: "rows" };

/** Texts of the report that is handed over. */
export const handover = {
  title: "Test report",
  project: "Project",
  number: "Project number",
  site: "Site",
  specification: "Specification",
  drawings: "Drawings",
  ratings: "Ratings",
  ratingsOf: (kV: number, hertz: number, busbarA: number, basis: string) =>
    `${kV} kV, ${hertz} Hz, busbar ${busbarA} A; criteria by ${basis} practice`,
  client: "Client",
  contractor: "Tested by (firm)",
  revision: "Revision",
  revisions: "Revision history",
  revisionColumns: ["Revision", "Date of issue", "What it changes"],
  revisionsNone: "First issue.",
  made: "Checked for hand-over and issued",
  relatesOnly:
    "The results hold for the equipment named in this report, in the state in which it was tested.",
  end: "End of the report",
  decision: "Decision rule",
  decisionOf: {
    simple:
      "Simple: a reading is accepted where it meets its limit as it stands; the measuring uncertainty is not counted against it.",
    guarded:
      "Guarded: a reading is accepted only where it keeps inside its limit by the accuracy of its instrument; between the two it is inconclusive.",
  },
  leftOut: "Left out",
  leftOutNone: "No record was left out.",
  leftOutColumns: ["Record", "Reason", "Document"],
  fingerprint: "Fingerprint (SHA-256)",
  notFinal: "NOT FINAL",
  final: "The check for hand-over found nothing that stops it.",
  stopsLeft: (stops: number) =>
    `Not final: the check for hand-over found ${count(stops, { one: "stop", other: "stops" })}. They are listed under Punch list.`,
  footer: (project: string, revision: string | undefined, page: number, pages: number) =>
    `${project}${revision === undefined ? "" : ` · revision ${revision}`} · page ${page} of ${pages}`,
  fingerprintShort: (fingerprint: string) => `Fingerprint ${fingerprint}`,
  signatures: "Signatures",
  signature: ["Tested by", "Reviewed by", "Witnessed by", "Accepted for the client"],
  signatureColumns: ["", "Name", "Company", "Date", "Signature"],
  summary: "Summary",
  results: "Results by panel and record",
  sheetOf: (panel: string) => `${panel}: records`,
  nameplate: "Nameplate",
  item: "Item",
  record: "Record",
  fromLines: (name: string, lines: number, numbers: string) =>
    `Brought in from ${name}, ${lines === 1 ? "line" : "lines"} ${numbers}`,
  to: "to",
  plots: "Plots",
  result: "Result",
  sources: (numbers: string) => `Limits from criteria ${numbers}`,
  time: "Time",
  openRows: (rows: number) => `Nothing recorded yet: ${count(rows, ROWS)}.`,
  punch: "Punch list",
  punchNone: "Nothing is open.",
  punchColumns: ["No.", "Severity", "Panel", "What", "Cell", "Owner, due", "State"],
  punchClosed: "Closed",
  punchClosedColumns: ["No.", "Panel", "What", "Closed", "Closing note"],
  stillFound: (state: string) => `${state}, still found`,
  concessions: "Concessions",
  concessionsNone: "No finding was accepted.",
  concededColumns: ["Finding", "Reason", "Accepted by", "Date"],
  instruments: "Test instruments",
  instrumentColumns: ["Id", "Instrument", "Serial number", "Calibrated", "Due", "Accuracy, %"],
  criteria: "Criteria",
  criteriaNote:
    "Each source as the records name it, with how certain its figure is. The sheets of the panels name them by these numbers.",
  ownCriteria: "Criteria of the manufacturer and the project",
  ownCriteriaColumns: ["Quantity", "Applies to", "Given by", "Value", "Document"],
  all: "all",
  cautions: "Cautions",
  caution:
    "This report evaluates records. It never says that equipment is safe to energize: licensed people decide that under the local code, the site's permit system and the manufacturer's instructions.",
  repairs: "Failure, repair, retest",
  repairColumns: ["Record", "As found", "Cause", "Repair", "Repaired by", "As left"],
  notRetested: "Not tested again yet",
  replaced: "Readings that were replaced",
  replacedColumns: ["Record", "Column", "Value", "Tested", "Source", "Replaced on"],
};
