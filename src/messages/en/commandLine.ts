import { countIn, pluralIn } from "../plurals";
import { told } from "./told";

const plural = pluralIn("en");
const count = countIn("en");

const ROWS = { one: "row", other: "rows" };
const CELLS = { one: "cell", other: "cells" };
const LINES = { one: "line", other: "lines" };
const FINDINGS = { one: "finding", other: "findings" };

/** What the rules of the survey are about, as a heading over their findings. */
const CAUSES: Readonly<Record<string, string>> = {
  "survey-apart": "Readings apart from their like",
  "survey-blank": "Blank, and filled in elsewhere",
  "survey-blank-label": "A label without its entry",
  "survey-bound": "A bound that does not hold",
  "survey-calibration": "Instrument out of calibration",
  "survey-copied": "Readings copied",
  "survey-correction": "Corrected values that do not follow",
  "survey-counter": "Counter readings that do not follow",
  "survey-dates": "Dates that do not agree",
  "survey-discharge": "Discharge, and passed",
  "survey-drop": "Fallen after the withstand test",
  "survey-duration": "Held too short",
  "survey-falls": "Falls with time",
  "survey-far-date": "Date far off",
  "survey-formula": "Formula that differs",
  "survey-future": "Date in the future",
  "survey-level": "Test level",
  "survey-level-criterion": "Test level of the whole table",
  "survey-limit": "Outside the limit",
  "survey-limit-doubt": "A limit that most readings miss",
  "survey-missing": "No reading",
  "survey-named-limit": "Outside the limit",
  "survey-name": "Panel called otherwise",
  "survey-no-date": "No date",
  "survey-odd-result": "Neither passed nor failed",
  "survey-off-error": "Error off the others",
  "survey-off-series": "Off its series",
  "survey-open": "Not begun",
  "survey-other-limit": "Limit other than elsewhere",
  "survey-remark": "Remark against the result",
  "survey-repeated": "Readings repeated",
  "survey-stage-order": "Tests out of order",
  "survey-temperature": "Temperature or humidity that cannot be",
  "survey-typed-over": "Typed value among formulas",
  "survey-unit-slip": "Unit or decimal mark",
  "survey-unreadable": "Cannot be read",
  "survey-verdict": "Result that does not follow",
  "survey-word": "Word in place of a reading",
  "survey-worked-out": "Worked out otherwise",
  "survey-quotient": "No quotient as in the other lines",
};

/** Texts of the command line: its help, and what its commands print. */
export const commandLine = {
  told,
  /** How an option is to be written, where it is not understood. */
  forms: {
    rated: (least: number, most: number) => `use kilovolts from ${least} to ${most}.`,
    constant:
      'write the field, an equals sign and the value, such as --set stage=before or --set "part=Breaker Q0".',
    columns:
      'give a JSON file with an object of column title and field, such as {"R1": "reading"}, or "R1=reading, Tester=by"; of columns with one title the second is called "R1#2"',
    means:
      'give a JSON file with an object of field (object, part, position, stage, test, or a column with words to choose from, such as polarity) and names, such as {"object": {"Bay 1": "=H01"}}, or "object: Bay 1==H01, Bay 2==H02; part: VCB=Breaker Q0; polarity: good=As marked"',
    noJson: (file: string, form: string) => `${file}: is not JSON; ${form}`,
    notUnderstood: (said: string, form: string) => `${said}: is not understood; ${form}`,
  },
  about: "Test records of a medium-voltage switchgear lineup: build, take in, check.",
  commands: {
    demo: "run the whole job on an invented lineup",
    new: "ask for a lineup, question by question, and write its file; its panels from a table where one is given",
    lineup: "build the record workbook of a lineup, onto BOOK.xlsx where it already exists",
    intake: "place the readings of instrument exports on the rows they belong to",
    repair: "reopen a record that failed and was repaired; keeps the failed reading",
    map: "guess how a workbook in its own layout is read as records; writes a map file",
    check: "recompute every record and list the findings; never writes to the workbook",
    handover: "make the folder that is handed over: report, frozen workbook, punch list, data",
    examples: "write a workbook with every worksheet function live: arguments, result and source",
    verify: "compare a folder that was handed over with its manifest; name what was changed",
  },
  options: {
    handoverOut: "folder to make; one that holds something is left as it is",
    handoverFolder: "the folder that was handed over",
    failed: 'a cell of the record, as the finding gives it: "Contacts!H12"',
    cause: "why it failed",
    work: "what was worked on, by which the tests are known that have to be made again",
    done: "what was done",
    by: "who made the repair",
    repaired: "day of the repair, as 2026-11-25; today where not given",
    panel: "panel that was worked on, where the record is of a bus section",
    sign: "file with the firm's private Ed25519 key (PEM), by which the manifest is signed",
    key: "file with the firm's public Ed25519 key (PEM), against which the signature is checked",
    paper: "size of the report's pages, where not that of the lineup's practice",
    demoOut: "folder for the workbook and the page",
    bookOut: "the workbook to write",
    examplesInto: "a workbook to put the sheet into; a new one where none is given",
    mapOut: "the map file to write",
    lineupOut: "the lineup file to write",
    table: "delimited text file with the panels as a table, in place of being asked for them",
    tableColumns: 'what columns of the table hold, where their titles do not tell: "Title=name, …"',
    medium: "what breakers break in where the table does not say it: vacuum or SF6",
    exports: "delimited text files",
    books: "workbooks, or folders of workbooks",
    overwrite: "overwrite files that already exist",
    rated: "rated voltage in kV, for a workbook in a layout of its own",
    basis: "practice by which it is judged, for a workbook in a layout of its own",
    replace: "replace readings that differ; the earlier ones move to the history",
    undo: "undo the last intake",
    decimal: "decimal mark of the exports, where it cannot be told",
    dateOrder: "order of day and month in dates such as 03/11/2026, where it cannot be told",
    encoding: "character set of the files",
    delimiter: "column separator",
    shape: "long: one reading per line; wide: phases side by side",
    columns: 'what columns mean: "Title=field, …", or a JSON file of titles and fields',
    means:
      'what names mean: "field: text=name, …; field: …", or a JSON file of texts and names by field',
    synonyms: "column titles in your own words: a JSON file of words by field",
    set: "what holds for all lines that do not say it themselves: stage=before; once for each field",
    remember: "save these settings in the workbook, for files like these",
    map: "map file: how blocks in a layout of their own are read as records",
    lineup: "lineup file, where the workbook does not hold its lineup",
    json: "print one JSON object",
    all: "list every finding, not only the first of each cause",
    final: "check for hand-over: tests of which nothing is recorded are stops",
    html: "write a self-contained page (one for each workbook)",
    marked: "write a copy with the findings marked (one for each workbook)",
    sheet: "write a copy with the findings on a sheet (one for each workbook)",
    punch: "write a copy with the punch list brought up to date (one for each workbook)",
    against: "compare with an earlier revision of the workbook",
    addColumns:
      "write a copy with corrected values, limits and results beside the tables of a layout of its own",
    removeColumns: "write a copy without these columns",
  },
  wrote: (file: string) => `Wrote ${file}`,
  noExport: "give at least one export to take in, or --undo",
  againstOne: "--against compares one workbook with its earlier revision; give one workbook",
  folder: (workbooks: number, rows: number, stopped: number, clear: number, unread: number) =>
    `${count(workbooks, { one: "workbook", other: "workbooks" })}, ${count(rows, ROWS)}: ${stopped} with stops, ${clear} without${unread > 0 ? `, ${unread} that could not be checked` : ""}.`,

  repair: {
    reopened: (row: string, cells: number, work: string) =>
      `${row}: reopened after work on "${work}". ${count(cells, CELLS)} moved to the history; record the retest on the row.`,
    noCell: (cell: string) =>
      `"${cell}" is no cell of a record; give sheet and cell as the finding gives them, such as "Contacts!H12"`,
    noDay: (day: string) => `"${day}" is no day that has come; write it as 2026-11-25`,
    refused: (cell: string, why: string) => `${cell}: ${why}`,
  },

  demo: {
    invented:
      "Gearproof demo: an invented lineup at an invented site; every name, number and reading is made up.",
    caution: "Gearproof evaluates records; it never says that equipment is safe to energize.",
    building: "building the record workbook",
    placing: "placing the readings of the exports",
    repairing: "reopening a record that was repaired, and placing its retest",
    checking: "checking",
    writing: "writing the page",
    handingOver: "making the hand-over",
    placedWhole: (files: number, cells: number) =>
      `${count(files, { one: "export", other: "exports" })} placed whole, ${count(cells, CELLS)}. Of the others, something was left over:`,
    workbook: (file: string) => `Workbook:  ${file}`,
    page: (file: string) => `Page:      ${file}`,
    report: (file: string) => `Hand-over: ${file}`,
  },

  new: {
    questions: {
      name: "Project?",
      site: "Site?",
      basis: "Practice, IEC or NETA?",
      voltage: "Rated voltage, kV (IEC: rated voltage; NETA: rated maximum voltage)?",
      frequency: "Frequency, 50 or 60 Hz?",
      busbar: "Rated current of the busbar, A?",
      control: "Control voltage, V (blank: not known)?",
      powerFrequency: "Plate: power frequency withstand, kV (blank: not known)?",
      impulse: "Plate: lightning impulse withstand, kV (blank: not known)?",
      phases: "Names of the phases (blank: L1 L2 L3)?",
    },
    panels:
      "Panels, one a line, a blank line after the last:\n  designation; name; type; bus section; breaker medium; breaker A\n  such as  K01; Incomer 1; incomer; A; vacuum; 1250  or, without a breaker,  K02; Voltage transformers; metering; A",
    blank: "must not be blank.",
    noNumber: (answer: string) => `"${answer}" is no number above 0; write one such as 12 or 17.5.`,
    choose: (answer: string, choices: readonly string[]) =>
      `"${answer}" is none of ${choices.join(", ")}.`,
    threePhases: "three different names are needed, such as A B C.",
    panelLine: (line: number, message: string) => `panel ${line}: ${message}`,
    tableLine: (file: string, line: number, message: string) => `${file}, line ${line}: ${message}`,
    leftOut: (titles: readonly string[]) =>
      `Left out, since the title tells nothing: ${titles.map((title) => `"${title}"`).join(", ")}. Say what it holds with --columns "${titles[0] ?? ""}=name", or "=spare" to leave it out.`,
    wrongColumns: (said: string, fields: readonly string[]) =>
      `--columns ${said}: a column of panels is one of ${fields.join(", ")}`,
    noPanels: "No panel was given; nothing was written.",
    ended: (question: string) => `The answers ended before "${question}"; nothing was written.`,
    next: (file: string) =>
      `Build the workbook: gearproof lineup ${file} -o BOOK.xlsx. Equipment, limits and instruments can be added in the file or in the pane.`,
  },

  build: {
    built: (sheets: readonly { readonly sheet: string; readonly rows: number }[]) =>
      `Built ${sheets.map(({ sheet, rows }) => `${sheet} (${count(rows, ROWS)})`).join(", ")}.`,
    kept: (tables: number, rows: number, added: readonly string[]) =>
      `Kept ${count(tables, { one: "table", other: "tables" })} with every reading; added ${count(rows, ROWS)}${added.length > 0 ? ` (${added.join(", ")})` : ""}.`,
    aside: (rows: readonly string[], more: number) =>
      `No longer in the lineup, left where they are: ${rows.join("; ")}${more > 0 ? `; and ${more} more` : ""}.`,
    errors: (file: string, errors: number) =>
      `${file}: ${count(errors, { one: "error", other: "errors" })} to correct`,
    otherLineup: (out: string, there: string, file: string, described: string) =>
      `${out}: holds the records of another lineup (${there}) than ${file} describes (${described}); give another name for a new workbook`,
    lineup: (project: string, panels: number, first: string, last: string) =>
      `${project}: ${count(panels, { one: "panel", other: "panels" })}, ${first} to ${last}`,
  },

  intake: {
    noTables: (book: string) =>
      `${book}: has no record tables to place readings in; build them first (gearproof lineup LINEUP.json -o ${book})`,
    nothingPlaced: (out: string) => `Nothing could be placed, so ${out} was not written.`,
    nothingToUndo: (book: string) =>
      `${book}: has no intake that can be undone; only the last two can, each once`,
    undone: (day: string, files: string, cells: number) =>
      `Undid the intake of ${day} (${files}): ${count(cells, CELLS)} restored.`,
    changedSince: "  Changed since, and left as they are:",
    summary: (
      file: string,
      lines: number,
      cells: number,
      rows: number,
      same: number,
      conflicts: number,
      unplaced: number,
    ) =>
      `${file}: ${count(lines, LINES)}; ${count(cells, CELLS)} placed in ${count(rows, ROWS)}, ${same} already there, ${conflicts} would overwrite, ${unplaced} not placed.`,
    decimal: (evidence: string) => `  Decimal mark: ${evidence}`,
    mapping: (name: string) => `  Read with the saved settings "${name}" of this workbook`,
    tables: (tables: number) => `${tables} tables`,
    table: (line: number, title: string | undefined, lines: number, shape: string) =>
      `line ${line}: ${title ?? "no title"}, ${count(lines, LINES)}, ${shape}`,
    shape: (evidence: string) => `  Shape: ${evidence}`,
    unsure: "Not sure; set it with an option",
    notReadings: (lines: number) => `Lines without readings (${lines})`,
    unknownColumns: "Columns not recognised and left out (say what they mean with --columns)",
    conflicts:
      "Would overwrite; held back with everything else on their lines (take them with --replace)",
    conflict: (
      line: number,
      place: string,
      old: string,
      stands: string | undefined,
      value: string,
    ) =>
      `line ${line}: ${place}: ${old} in the workbook${stands === undefined ? "" : `, ${stands}`}, ${value} in the export`,
    unknownNames: "Names that no row has (confirm one with --means)",
    unknownName: (field: string, written: string, lines: number, candidates: string) =>
      `${field} "${written}" on ${count(lines, LINES)}: ${candidates}?`,
    kept: (values: number) =>
      `  ${count(values, { one: "earlier value", other: "earlier values" })} moved to the sheet Reading history`,
    notPlaced: "Not placed",
  },

  map: {
    unknownField: (field: string, fields: string) => `Unknown field ${field}; ${fields}`,
    noLineup: (book: string) => `${book}: holds no lineup; give one with --lineup LINEUP.json`,
    noBlock: (book: string) =>
      `${book}: has no block of rows under titles that match rows of the lineup; change its titles or words, or write a map by hand (see "gearproof map --help")`,
    noTitle: (book: string, missed: string, titles: readonly string[], more: number) =>
      `${book}: has no column titled ${missed}; ${
        titles.length === 0
          ? "no row of titles was found"
          : `its titles are ${titles.join(", ")}${more > 0 ? ` and ${more} more` : ""}`
      }`,
    block: (sheet: string, row: number, kind: string, confidence: string, evidence: string) =>
      `${sheet} row ${row}: ${kind} (${confidence}: ${evidence})`,
    unit: (unit: string, heading: string) =>
      `  readings without a unit: in ${unit}, by the heading ${heading} (likely)`,
    leftOut: (what: string) => `Left out: ${what}`,
    wrote: (file: string) => `Wrote ${file}. Review and correct it before using it.`,
  },

  handover: {
    notEmpty: (folder: string) =>
      `${folder}: already there and not an empty folder; give a new name, nothing was written`,
    made: (folder: string, files: number, fingerprint: string) =>
      `Made ${folder} with ${count(files, { one: "file", other: "files" })}. Fingerprint ${fingerprint}`,
    notFinal: (stops: number) =>
      `Not final, and says so on each page: ${count(stops, { one: "stop", other: "stops" })} in the check for hand-over.`,
    notFound: (names: readonly string[]) =>
      `Named in the workbook but not found beside it, or not a valid file name: ${names.join(", ")}`,
    notAsNoted: (file: string) =>
      `${file}: is not the file that was brought in; its SHA-256 differs from the one the workbook noted then`,
    noKey: (file: string, why: string) => `${file}: ${why}`,
    noManifest: (folder: string, why: string) =>
      `${folder}: is no hand-over that can be verified (${why})`,
  },

  verify: {
    same: (files: number, fingerprint: string) =>
      `${count(files, { one: "file is", other: "files are" })} as handed over. Fingerprint ${fingerprint}`,
    signed: "The manifest is signed by the owner of the key.",
    unchecked: "The folder has a signature; give the firm's public key with --key to check it.",
    notSigned: (file: string) => `${file}: is missing, so that nobody has signed the manifest`,
    badSignature: (file: string) =>
      `${file}: is no signature of this manifest by the owner of the key`,
    seal: (file: string) => `${file}: was changed since it was handed over`,
    noKey: (file: string, why: string) => `${file}: ${why}`,
    missing: "missing",
    otherForm: (form: string) => `not of the form ${form}`,
    lost: (file: string) => `${file}: is missing`,
    altered: (file: string) => `${file}: was changed since it was handed over`,
    added: (file: string) => `${file}: was not handed over`,
    fingerprint: (told: string, found: string) =>
      `records.json: has the fingerprint ${found}, the manifest says ${told}`,
    unreadable: (file: string, why: string) => `${file}: cannot be compared (${why})`,
    changed: (file: string, place: string, what: string, was: string, is: string) =>
      `${file}: ${place} (${what}): handed over ${was || "blank"}, now ${is || "blank"}`,
    unlike: (file: string, line: number, said: string, book: string, cell: string, held: string) =>
      `${file}: line ${line} says ${said || "nothing"}, ${book} has ${held || "nothing"} in ${cell}`,
    unlikeEarlier: (
      file: string,
      line: number,
      said: string,
      book: string,
      cell: string,
      held: string,
    ) =>
      `${file}: line ${line} says ${said || "nothing"}, the reading history of ${book} has ${held || "nothing"} for ${cell}`,
    known: "the hand-over says so itself (changed-since-intake)",
    notCompared: (file: string, rows: number) =>
      `${file}: ${count(rows, ROWS)} brought in from it could not be compared again; it was read with answers that the workbook does not keep, or its lines say the same of several records`,
  },

  survey: {
    /** A rule that has no heading yet goes by its id. */
    cause: (rule: string) => CAUSES[rule] ?? rule,
    needsLineup: (options: readonly string[]) =>
      `${options.join(" and ")} cannot be made of a workbook without a lineup; leave it out, or give --lineup and --map. --marked marks the findings.`,
    answeredBefore: (from: string, options: string) =>
      `Answered before, in ${from}: ${options}. Another answer takes its place.`,
    keptIn: (file: string) => `The answers are kept in ${file} for the next check.`,
    onlyOwn:
      "--add-columns and --remove-columns are for workbooks in layouts of their own; the record tables of a lineup have their limits and results",
    columnsAdded: (file: string, tables: number) =>
      `Wrote ${file}, with result columns beside ${count(tables, { one: "table", other: "tables" })}`,
    columnsLeftOut: (sheet: string, range: string, why: string) =>
      `${sheet}!${range} has none: ${why}`,
    columnsRemoved: (file: string, tables: number) =>
      `Wrote ${file}, without the result columns of ${count(tables, { one: "table", other: "tables" })}`,
    block: (
      sheet: string,
      range: string,
      kinds: readonly string[],
      panels: number,
      readings: number,
    ) =>
      `${sheet}!${range}: ${kinds.join(", ")}, ${count(panels, { one: "panel", other: "panels" })}, ${count(readings, { one: "reading", other: "readings" })}`,
    summary: (blocks: number, readings: number, stops: number, queries: number) =>
      `${count(blocks, { one: "table", other: "tables" })}, ${count(readings, { one: "reading", other: "readings" })}: ${stops} to stop at, ${queries} to ask`,
  },
  check: {
    weights: { stop: "stop", query: "query", note: "note" },
    where: "Where",
    finding: "Finding",
    none: "No findings.",
    accepted: (message: string, name: string, date: string, reason: string) =>
      `${message} Accepted by ${name}, ${date}: ${reason}`,
    legend:
      "ok: every row passes; F fail, M missing, ? inconclusive, o open: nothing recorded yet.",
    columns: {
      fail: "fail",
      missing: "missing",
      inconclusive: "inconclusive",
      open: "open",
      pass: "pass",
    },
    passedKinds: (kinds: string) => `Every row passes: ${kinds}.`,
    untouchedKinds: (kinds: string) => `Nothing recorded yet: ${kinds}.`,
    askingObjects: (objects: readonly string[]) =>
      `${count(objects.length, { one: "panel or section asks", other: "panels and sections ask" })} for something: ${objects.join(", ")}.`,
    passedObjects: (objects: number) =>
      `${count(objects, { one: "panel or section passes", other: "panels and sections pass" })} in every row.`,
    moreOfCause: (findings: number) => `and ${findings} more (all with --all)`,
    alike: (rows: number, addresses: readonly string[]) =>
      `The same of ${count(rows, { one: "more row", other: "more rows" })}, at ${addresses.join(", ")}${rows > addresses.length ? " and so on" : ""}.`,
    rows: (rows: number, results: string) => `${count(rows, ROWS)}: ${results || "none"}.`,
    findings: (stop: number, query: number, note: number, accepted: number) =>
      `Findings: ${stop} stop, ${query} query, ${note} note${accepted > 0 ? `; ${accepted} accepted` : ""}.`,
    against: (
      file: string,
      closed: number,
      fresh: number,
      changed: number,
      same: number,
      altered: number,
    ) =>
      `Against ${file}: ${count(closed, FINDINGS)} closed, ${fresh} new, ${changed} changed, ${same} unchanged; ${altered} ${plural(altered, { one: "entry", other: "entries" })} altered.`,
    lists: { fresh: "New", changed: "Changed", closed: "Closed", altered: "Entries altered" },
    more: (left: number) => `and ${left} more (all with --json)`,
    changed: (now: string, before: string) => `${now} Before: ${before}`,
    altered: (place: string, column: string, before: string, after: string, rows = 1) =>
      `${place}, "${column}": was ${before}, now ${after}${rows > 1 ? `, in ${count(rows, ROWS)}` : ""}`,
    blank: "blank",
    page: (file: string) => `Page: ${file}`,
    marked: (file: string) => `Marked copy: ${file}`,
    sheet: (file: string) => `Copy with findings: ${file}`,
    punch: (file: string) => `Copy with the punch list brought up to date: ${file}`,
  },

  files: {
    missing: (file: string) => `${file}: no such file`,
    folder: (file: string) => `${file}: is a folder; give a file`,
    unreadable: (file: string, why: string) => `${file}: cannot be read (${why})`,
    unwritable: (file: string, why: string) => `${file}: cannot be written (${why})`,
    signed: (file: string) =>
      `${file}: carries a digital signature, which no longer holds for what is written; sign it again`,
    noFileRead: (file: string) => `${file}: is no ordinary file; give one that is stored on a disk`,
    noFile: (file: string) =>
      `${file}: is no ordinary file, and is not written over; give another name`,
    noFolder: (file: string, folder: string) =>
      `${file}: cannot be written; there is no folder ${folder}`,
    noBooks: (folder: string) => `${folder}: is a folder without .xlsx or .xlsm workbooks`,
    isRead: (file: string) =>
      `${file}: is read by this command and is not overwritten; give another name for the output`,
    exists: (file: string) =>
      `${file}: already exists; give another name, or --overwrite to overwrite it`,
    twice: (file: string) => `${file}: would be written twice by this command; give two names`,
    ending: (file: string, ending: string, why: string) =>
      `${file}: Excel opens this workbook only under a name that ends in ${ending} (${why}); nothing was written`,
    endings: {
      ".xlsx": "it has no macros",
      ".xlsm": "it has macros",
      ".xltx": "it is a template",
      ".xltm": "it is a template with macros",
    } as Readonly<Record<string, string>>,
    memory:
      "needs more memory than it was given; split the workbook, check it alone, or on a larger machine",
    unforeseen: (why: string) =>
      `could not be worked through, by a fault of Gearproof's own (${why}); leave it out, and report the fault`,
    unreadFolder: (folder: string, why: string) => `${folder}: cannot be looked through (${why})`,
  },
};
