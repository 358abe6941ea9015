import { quotedList } from "../words";

const sheets = (names: readonly string[]) =>
  `${names.length === 1 ? "The sheet" : "The sheets"} ${quotedList(names)}`;
const are = (names: readonly string[]) => (names.length === 1 ? "is" : "are");

/** Why work in Excel did not come to its end, and what would be right. */
export const excel = {
  work: {
    addColumns: "Adding the result columns",
    removeColumns: "Removing the result columns",
    build: "Building the records",
    change: "Writing into the workbook",
    fill: "Writing the readings",
    selected: "Asking which cell is selected",
    goTo: (place: string) => `Going to ${place}`,
    read: "Reading the workbook",
    reread: "Reading what was edited",
    selectedCells: "Reading the selected cells",
    insert: "Inserting the function",
    blankSheet: "Taking the blank sheet away",
    undo: "Undoing the build",
    listen: "Following what is edited",
    mark: "Marking the findings",
    unmark: "Clearing the marks",
  },
  notEnded: (work: string, why: string) => `${work} did not come to its end: ${why}.`,
  answered: (message: string) => `Excel answered: ${message}`,
  /** By the code of Excel's error. */
  codes: {
    InvalidOperationInCellEditMode:
      "a cell is being typed in; finish it with Enter, or leave it with Esc, and do this again",
    AccessDenied:
      "Excel does not allow the change: the sheet, the workbook or the file is protected or open for reading only; take the protection off and do this again",
    ItemNotFound:
      "a sheet, a table or a format has gone in the meantime; read the workbook and do this again",
    InvalidReference: "the workbook was changed in the meantime; read it and do this again",
    RequestPayloadSizeLimitExceeded:
      "more was sent at once than Excel takes; nothing of it was written",
    ResponsePayloadSizeLimitExceeded: "more was asked for at once than Excel gives",
    ActivityLimitReached: "Excel is busy; wait a moment and do this again",
    Timeout: "Excel did not answer in time; do this again",
    ConnectionFailure: "the connection to Excel is lost; when it is back, do this again",
    WriteNotSupportedWhenModalDialogOpen: "a window of Excel's is open; close it and do this again",
  },
  columnsShut: (sheet: string) =>
    `The sheet "${sheet}" is protected, so that columns can neither be added nor removed; take the protection off (Review, Unprotect Sheet) and do this again. Nothing was changed.`,
  columnsFilled: (area: string, sheet: string) =>
    `Cells of ${area} on the sheet "${sheet}" were filled since the check; check again and add the columns then. Nothing was changed.`,
  noFile:
    "This Excel does not hand out the workbook as a file; save it, and make the hand-over from the command line.",
  fileRefused: (why: string | undefined) =>
    `Excel did not hand out the workbook as a file (${why ?? "no reason given"}); save it and try again. Nothing was made.`,
  tableChanged: (table: string) =>
    `The table ${table} was changed since it was read; read the workbook again and do this once more. Nothing was changed.`,
  sheetAdded: (sheet: string) =>
    `A sheet "${sheet}" was added since the workbook was read; read it again and do this once more. Nothing was changed.`,
  sheetTaken: (sheet: string, table: string) =>
    `The workbook has a sheet "${sheet}" of its own, where the table ${table} should go; rename that sheet and try again. Nothing was changed.`,
  onlySheet: (sheet: string) =>
    `"${sheet}" is the only sheet of the workbook, which Excel does not take away to make it anew; add another sheet and do this again. Nothing was changed.`,
  structureShut:
    "The workbook's structure is protected, so that no sheet can be added; take the protection off (Review, Protect Workbook) and build again. Nothing was changed.",
  buildShut: (names: readonly string[]) =>
    `${sheets(names)} would be changed and ${are(names)} protected; take the protection off (Review, Unprotect Sheet) and build again. Nothing was changed.`,
  changedMeanwhile: (names: readonly string[]) =>
    `${quotedList(names)} ${names.length === 1 ? "was" : "were"} changed while the records were being built: what was changed there stays. Build again to bring the rest up to date.`,
  cellsShut: (sheet: string) =>
    `The sheet "${sheet}" is protected and the cells to be filled are locked; take the protection off (Review, Unprotect Sheet) and place the readings again. Nothing was changed.`,
  table: (name: string) => `The table ${name}`,
  sheet: (name: string) => `The sheet "${name}"`,
  readChanged: (what: string) =>
    `${what} was changed while it was read; nothing is lost: read the workbook again.`,
  manySelected: (cells: number, most: number) =>
    `${cells} cells are selected; select at most ${most} for one argument. Nothing was changed.`,
  notEmpty: (cell: string) =>
    `${cell} is not empty. Select an empty cell, or clear it first; nothing was changed.`,
  undoChanged:
    "The workbook was changed since it was built, so that undoing would lose something. Nothing was changed.",
  undoKept: (names: readonly string[]) =>
    `${quotedList(names)} ${names.length === 1 ? "was" : "were"} changed while the build was being undone: what was changed there stays, and so do the rows that hold it. Build again, or take these rows out by hand.`,
  undoShut: (sheet: string | undefined) =>
    `${sheet === undefined ? "The workbook's structure" : `The sheet "${sheet}"`} is protected; take the protection off and undo again. Nothing was changed.`,
  marksShut: (names: readonly string[]) =>
    `${sheets(names)} ${are(names)} protected, so that marks can neither be put on nor taken off; take the protection off (Review, Unprotect Sheet) and do this again. Nothing was changed.`,
  held: (sheet: string, cell: string, value: string | undefined) =>
    `"${sheet}" ${cell} ${value === undefined ? "was blank" : `held ${value}`}`,
  notPutBack: (cells: readonly string[]) =>
    `Cells were changed while they were being written, and what they held could not be put back: ${cells.join("; ")}. Make these cells hold that again, unless it was changed on purpose.`,
};
