import { quotedList } from "../words";

/** Why a workbook's file cannot be read or written: what stands after its name. */
export const book = {
  damaged: (why: string) =>
    `is damaged or not a workbook (${why}); open it in a spreadsheet, let that repair it, and save it again as .xlsx`,
  empty: "is empty; give an .xlsx workbook",
  encryptedOrOld:
    "is encrypted or an old .xls file; open it in a spreadsheet, take the password off and save it as .xlsx",
  noWorkbook: "is not a workbook; give an .xlsx file as a spreadsheet saves it",
  binary: "is a binary workbook (.xlsb); save it as .xlsx in a spreadsheet",
  otherDocument: "is not a workbook but another kind of document; give an .xlsx file",
  encrypted: (part: string) => `is encrypted (its part ${part}); save it without a password`,
  manyParts: (parts: number, most: number) =>
    `has ${parts} parts, more than the ${most} that are read`,
  largePart: (part: string, size: number, packed: number) =>
    `unpacks to more than can be read: its part ${part} to ${size} MB from ${packed} MB; split the workbook`,
  large: (size: number) => `unpacks to ${size} MB, more than can be read; split it`,
  noMemory: "needs more memory than this machine gives; read it on a larger machine",
  limits: {
    cells: "cells",
    texts: "texts",
    elements: "elements",
    remembered: "bytes to remember",
    "steps to its array formulas": "steps to its array formulas",
    panels: "panels",
  },
  beyond: (most: number, what: string, raise: string) =>
    `has more than ${most.toLocaleString("en")} ${what}, which takes more memory than is given; split it, or raise the limits (${raise}) on a machine that has the memory`,
  /** Why it is damaged. */
  why: {
    namesNone: "it names no workbook",
    noSheets: "it has no sheets",
    sheetMissing: (sheet: string) => `its sheet "${sheet}" is missing`,
    partMissing: (part: string) => `its part ${part} is missing`,
    notUnpacked: (part: string) => `its part ${part} cannot be unpacked`,
    endMissing: "the end of the file is missing",
    endBroken: "the end of the file is broken",
    listBroken: "its list of parts is broken off",
    oddPacking: (part: string) => `its part ${part} is packed in a way that no spreadsheet uses`,
    misplaced: (part: string) => `its part ${part} is not where its list says`,
    overlaps: (part: string) => `its part ${part} overlaps another`,
    twoParts: (part: string) => `it has two parts ${part}`,
    tooLarge: (part: string) => `its part ${part} says that it is larger than it can be`,
    part: (part: string, why: string) => `its part ${part}: ${why}`,
    missing: "it is missing",
    nameless: (part: string) => `its part ${part} says of no cells or no name`,
    noText: (index: number, count: number, part: string) =>
      `a cell holds the text number ${index} of ${count} in its part ${part}`,
    noStyles: (part: string) => `its part ${part} holds no styles`,
    declaresType: "it declares a document type",
    holdsNothing: "it holds nothing",
  },
  /** What is wrong in a part of it, after the name of the part. */
  broken: (part: string, why: string) => `its part ${part} ${why}`,
  part: {
    declaresType: "declares a document type",
    breaksOff: "breaks off",
    holdsNothing: "holds nothing",
    isNo: (element: string) => `is no ${element}`,
    noCells: "has no cells, not even none",
    noRow: "has a row that no sheet has",
    noColumn: "has a column that no sheet has",
    otherElement: (among: string) => `has something else among its ${among}`,
    unknownKind: "has a cell of an unknown kind",
    noNumber: (row: number) => `has a text without a number, in row ${row}`,
  },
  noSheet: (sheet: string) => `has no sheet "${sheet}" any more`,
  lostSheet: (sheet: string) => `has lost its sheet ${sheet}`,
  lostTable: (table: string) => `has lost its table ${table}`,
  noCell: (sheet: string, value: string) => `has no cell on the sheet "${sheet}" for ${value}`,
  sheetTaken: (sheet: string, table: string) =>
    `has a sheet "${sheet}" of its own, where the table ${table} should go; rename that sheet and try again`,
  tableTaken: (table: string) =>
    `has a table "${table}" that is none of ours; rename that table and try again`,
  noSheetList: "has no list of sheets",
  arrayFormula: (area: string, cell: string) =>
    `has one formula over the cells ${area}, so that ${cell} cannot be written alone; clear that formula and try again`,
  nameTaken: (table: string, sheet: string, headers: readonly string[]) =>
    `The table ${table} on "${sheet}" has no column ${quotedList(headers)}, by which its rows are known; put the column back, or give the table another name, and build again. Nothing was changed.`,
};
