import { countIn, pluralIn } from "../plurals";

const plural = pluralIn("en");
const count = countIn("en");

const ROWS = { one: "row", other: "rows" };
const CELLS = { one: "cell", other: "cells" };
const LINES = { one: "line", other: "lines" };
const READINGS = { one: "reading", other: "readings" };
const FINDINGS = { one: "finding", other: "findings" };
const PANELS = { one: "panel", other: "panels" };
const SHEETS = { one: "new sheet", other: "new sheets" };
const BLOCKS = { one: "block", other: "blocks" };

/** Every text that the pane shows, in English. */
export const pane = {
  title: "Gearproof",
  noExcel: "Open this pane from Excel: it works on the open workbook.",
  working: "Working…",
  progress: (done: number, total: number) => `${done} of ${total} steps`,
  formulasToCome:
    "The values have been checked. Formulas are still loading; anything wrong with them is reported once they are in.",
  stop: "Stop",
  closeMessage: "Close this message",
  failed: (reason: string) => reason,
  steps: {
    lineup: "Lineup",
    readings: "Readings",
    check: "Check",
    handOver: "Hand over",
  },
  stepsLabel: "Steps",
  read: "Read the workbook again",
  stale: "The workbook has changed since it was read.",
  notRead: "The workbook has not been read yet.",
  caution:
    "Gearproof evaluates records. It never says that equipment is safe to energize: licensed people decide that under the local code, the permit system and the maker's instructions.",

  state: {
    heading: "State",
    counts: "Rows by result",
    wholeLineup: "Whole lineup",
    chosen: (object: string) => `Records of ${object}`,
    all: "Show the whole lineup",
    rows: (rows: number) => count(rows, ROWS),
    toRows: (kind: string, object: string, words: string) => `${kind}, ${object}: ${words}`,
    matrix: "By panel and record",
    object: "Panel or section",
    none: "–",
    next: "Next",
    nothingNext: "No readings are missing.",
    missing: (rows: number) => `${count(rows, READINGS)} missing`,
    blocked: (by: string) => `waits for ${by}`,
    more: (left: number) => `and ${left} more`,
    elevation: "Front elevation. Choose a panel or section.",
  },

  lineup: {
    none: "This workbook has no lineup yet. Describe it here, open a lineup file, or check the workbook as it stands.",
    start: "Describe a lineup",
    open: "Open a lineup file",
    save: "Save as a lineup file",
    edit: "Change the lineup",
    back: "Back to the overview",
    leave: "Close without building",
    opened: (file: string) => `${file} is open. Review it, then build.`,
    fileErrors: (file: string, errors: number) =>
      `${file}: ${count(errors, { one: "error", other: "errors" })} to correct`,
    errors: (errors: number) =>
      `Correct ${count(errors, { one: "error", other: "errors" })} before building:`,
    parts: {
      project: "Project",
      ratings: "Basis and ratings",
      tests: "Insulation and withstand tests",
      panels: "Panels",
      sets: "Equipment of several panels",
      instruments: "Instruments",
      settings: "Inspection points, check items, records left out",
      criteria: "Project and maker criteria",
      weights: "Weights of the check's rules",
      drawings: "Drawings, revisions of the report",
    },
    panelTitle: (designation: string, name: string) =>
      name ? `${designation} · ${name}` : designation,
    toPutRight: "to correct",
    further: (fields: number, filled: number) =>
      `Further facts (${fields}${filled > 0 ? `, ${filled} filled in` : ""})`,
    unnamed: "(no designation)",
    addTo: (one: string) => `Add ${one}`,
    yes: "Yes",
    no: "No",
    addPanel: "Add a panel",
    addSeries: "Add a series",
    paste: "Paste a list",
    remove: "Remove",
    copy: "Copy",
    earlier: "Move to the left",
    later: "Move to the right",
    up: "Move up",
    down: "Move down",
    seriesFirst: "First designation",
    seriesCount: "How many",
    seriesType: "Type",
    seriesSection: "Bus section",
    seriesMedium: "Breaker",
    seriesRated: "Rated current, A",
    seriesMost: (most: number) => `Enter a whole number from 1 to ${most}.`,
    seriesMade: (first: string, last: string) => `${first} to ${last}`,
    pasteLabel: "Panels, one per line",
    pasteHelp:
      "Typed, or pasted from a panel schedule: designation, circuit, type, bus section, medium of the breaker (vacuum, SF6 or blank), rated current, breaker designation; with column titles, in any order.",
    columnAsked: (title: string, sample: string) =>
      `What does "${title}" hold, such as "${sample}"?`,
    columnLeftOut: "Nothing of these: left out",
    columns: {
      designation: "Designation of the panel",
      name: "Circuit",
      type: "Type of panel",
      section: "Bus section",
      medium: "Medium of the breaker",
      ratedA: "Rated current",
      breaker: "Designation of the breaker",
    },
    columnTitles: {
      designation: "Panel",
      name: "Circuit",
      type: "Type",
      section: "Section",
      medium: "Medium",
      ratedA: "Rated A",
      breaker: "Breaker",
    },
    table: "Panels as a table",
    tableHelp:
      "A designation in the last line begins a panel. Enter goes down. A table copied from elsewhere can be pasted into any cell.",
    asTable: "Show as a table",
    asList: "Show as a list",
    lackingHeading: "Not described yet (dashed above), where there is any:",
    lacking: (part: string, panels: readonly string[], more: number) =>
      `${part}: ${panels.join(", ")}${more > 0 ? ` and ${more} more` : ""}`,
    sets: {
      noPanels: "Add panels first.",
      help: "What panels have alike is one set: change it once, and choose the panels that get it. A panel with something of its own keeps it until it is ticked itself.",
      list: "Equipment",
      title: (names: string, panels: number) =>
        `${names || "(no name)"} · ${count(panels, PANELS)}`,
      new: "New set",
      own: "{panel} in a name stands for the designation of the panel: {panel}-W1.",
      panels: "Panels that get it",
      ofType: (type: string, panels: number, all: number) =>
        panels === all ? `${type} (${panels})` : `${type} (${panels} of ${all})`,
      has: "has this",
      hasOther: (names: string) => `has its own: ${names}`,
      hasNone: "has none",
      replaces: (panels: number) =>
        `${count(panels, PANELS)} with something of ${plural(panels, { one: "its", other: "their" })} own: it is replaced.`,
      apply: (panels: number) => `Put into ${count(panels, PANELS)}`,
    },
    mediumAsked: "Medium of the breakers whose line does not say it",
    pasteAdd: (panels: number) => `Add ${count(panels, PANELS)}`,
    pasteProblem: (line: number, message: string) => `Line ${line}: ${message}`,
    breaker: "Circuit-breaker",
    hasBreaker: "This panel has a breaker",
    hasGas: "SF6 pressures from the nameplate",
    notSet: "–",
    preview: "Preview",
    build: "Build",
    previewHeading: "Build will",
    creates: (sheet: string, rows: number) => `add the sheet ${sheet} with ${count(rows, ROWS)}`,
    adds: (sheet: string, rows: number) => `add ${count(rows, ROWS)} to ${sheet}`,
    updates: (sheet: string, cells: number) =>
      `update ${count(cells, CELLS)} in ${sheet} that Gearproof wrote`,
    renames: (sheet: string, rows: number) =>
      `rename ${count(rows, ROWS)} in ${sheet}, with their readings`,
    keeps: (readings: number) =>
      `keep every reading (${count(readings, CELLS)} filled in), your own columns and sheets, and the row order`,
    asides: (sheet: string, rows: readonly string[], more: number) =>
      `set aside in ${sheet}, with their readings: ${rows.join("; ")}${more > 0 ? ` and ${more} more` : ""}`,
    nothing: "change nothing: the workbook already matches the lineup",
    keepOnly: "Keep the lineup without record sheets",
    keepOnlyHelp: "For a workbook that keeps its records in sheets of its own.",
    keptOnly:
      "The lineup is stored in the workbook. Under Readings, choose the sheets that hold the records.",
    built: (created: number, added: number, aside: number) =>
      `Built: ${count(created, SHEETS)}, ${count(added, ROWS)} added to existing tables${aside > 0 ? `; ${count(aside, ROWS)} no longer in the lineup set aside with ${plural(aside, { one: "its", other: "their" })} readings` : ""}.`,
    undoBuild: "Undo the build",
    undone: "The build is undone: the workbook holds what it held before.",
    number: (unit: string) => `a number in ${unit}`,
  },

  functions: {
    open: "Worksheet functions",
    heading: "Worksheet functions",
    about:
      "Choose a function, give its arguments as values or cells, see what it gives and where its figures come from, and insert it into the selected cell.",
    choose: "Function",
    gives: (what: string) => `Gives: ${what}`,
    optional: (name: string) => `${name} (may be left out)`,
    leftOut: "Left out",
    word: (word: string, meaning: string) => `${word}: ${meaning}`,
    named: (name: string, what: string) => `${name}: ${what}`,
    point: "Take the selected cells",
    pointFor: (what: string) => `Take the selected cells for: ${what}`,
    result: "Result",
    source: "Source",
    more: (results: number) =>
      `and ${count(results, { one: "more result", other: "more results" })}, in the cells beside or below`,
    insert: "Insert into the selected cell",
    inserted: (sheet: string, address: string) => `Inserted into ${sheet}!${address}.`,
    missing: (names: readonly string[]) => `Still to give: ${names.join("; ")}.`,
    example: (formula: string) => `Such as ${formula}`,
    useExample: "Fill in this example",
    examples: "Put all examples on a sheet",
    onSheet: (sheet: string, examples: number) =>
      `The sheet ${sheet} has ${count(examples, { one: "example", other: "examples" })}, each live: change an argument, and the result follows.`,
    close: "Back to the lineup",
    sheet: {
      title: "Worksheet functions: live examples",
      purpose:
        "Each function with its examples. The arguments stand in cells of their own: change one, and the result follows. The sheet can be deleted, and is made anew when it is asked for again.",
      caution:
        "A figure that is looked up comes from the source named beside it, with how certain it is. The maker's and the project's documents come first.",
    },
  },

  asItStands: {
    open: "Check this workbook",
    heading: "This workbook as it stands",
    recognised: (tables: number, readings: number) =>
      `Recognised: ${count(tables, { one: "table", other: "tables" })}, ${count(readings, READINGS)}`,
    point: "Choose a line to select its cells in the sheet.",
    block: (
      sheet: string,
      range: string,
      kinds: readonly string[],
      panels: number,
      readings: number,
      units: readonly string[],
    ) =>
      `${sheet} ${range}: ${kinds.join("; ")}; ${panels === 0 ? "no panel named" : count(panels, PANELS)}; ${count(readings, READINGS)}${units.length > 0 ? ` in ${units.join(", ")}` : ""}`,
    nothing:
      "No records were recognised. A table needs titles over its columns and at least one column of readings with a unit.",
    questions: "What the check goes by",
    rated: "Rated voltage, kV",
    basis: "Basis",
    unanswered: "Not said",
    wrongRated: (least: string, most: string) => `Enter kilovolts from ${least} to ${most}.`,
    guessed: (text: string, sheet: string, address: string) =>
      `From "${text}" in ${sheet}!${address}: please confirm.`,
    byRated: (kilovolts: string) =>
      `No cell says it. ${kilovolts} kV is a rated voltage of this basis only: please confirm.`,
    noGuess: "No cell says it.",
    onlyStated:
      "Where this is not said, a reading is judged only by what the workbook states itself.",
    check: "Check",
    again: "Check again",
    counts: "Readings by result",
    asOf: "As of this check. Check again after a change in the sheets.",
    addColumns: "Add result columns",
    removeColumns: "Remove the result columns",
    columnsAdded: (tables: number, left: readonly string[]) =>
      [
        tables === 0
          ? "No table got result columns."
          : `Result columns stand beside ${count(tables, { one: "table", other: "tables" })}.`,
        ...left,
      ].join("\n"),
    columnsLeftOut: (sheet: string, range: string, why: string) =>
      `${sheet} ${range}: without columns, since ${why}.`,
    columnsRemoved: (tables: number) =>
      tables === 0
        ? "There were no result columns."
        : `The result columns of ${count(tables, { one: "table", other: "tables" })} are removed.`,
  },

  putRight: {
    open: "Put right",
    how: "Select a cell in the sheet, say what it is, and press the button; or choose from the lists.",
    selectedIs: "The selected cell",
    head: "is in the row of titles",
    column: (what: string) => `is in the column: ${what}`,
    cell: (what: string) => `is, for the whole sheet: ${what}`,
    point: "Take the selected cell",
    otherSheet: (sheet: string) =>
      `Select a cell on the sheet "${sheet}", where this table stands.`,
    fromList: "From lists",
    kind: "Record",
    titled: (address: string, title: string) => `${address} ${title}`.trim(),
    nothing: "not looked at",
    takeBack: (address: string, what: string) => `Take back: ${address} ${what}`,
    kept: "Answered before, and kept in this workbook.",
    concepts: {
      reading: "reading",
      panel: "panel",
      part: "part",
      position: "phase or connection",
      stage: "before or after",
      test: "test",
      unit: "unit",
      minimum: "least value",
      maximum: "greatest value",
      limit: "limit",
      required: "value called for",
      corrected: "corrected value",
      temperature: "temperature",
      air: "air temperature",
      humidity: "humidity",
      voltage: "test voltage",
      duration: "duration",
      current: "test current",
      discharge: "discharge",
      result: "result",
      error: "error",
      spread: "spread",
      date: "date",
      by: "tested by",
      instrument: "instrument",
      remarks: "remarks",
    },
  },

  readings: {
    heading: "Readings",
    none: "There are no record tables yet. Build them from a lineup, or choose the sheets of your own that hold the records.",
    kind: "Record",
    object: "Panel or section",
    result: "Result",
    any: "All",
    cautions: "Before the test",
    rows: "Rows",
    noRows: "No rows match.",
    more: (left: number) => `Show more (${left} left)`,
    back: "Back to the rows",
    goTo: "Go to the row in the sheet",
    rowBefore: "Previous to fill in",
    rowAfter: "Next to fill in",
    lastTyped: "Last entered",
    typeHere: "Fill in this row",
    writeRow: "Write, and go on",
    evidence: {
      given: "Given",
      entry: "Entered",
      worked: "Calculated",
      limit: "Limits",
      judged: "Judged",
      sources: "Sources of limits",
      result: "Result",
    },
    bring: "Bring in an export",
    bringHelp:
      "Delimited text. Nothing is written until you confirm it, and no reading is overwritten.",
    place: (cells: number, rows: number) => `Write ${count(cells, CELLS)} in ${count(rows, ROWS)}`,
    taken: (file: string, lines: number) => `${file}: ${count(lines, LINES)}`,
    already: (cells: number) => `Already there: ${count(cells, CELLS)}`,
    conflicts: (cells: number) =>
      `${count(cells, CELLS)} would overwrite what is there; held back, with everything else on ${plural(cells, { one: "that line", other: "those lines" })}`,
    unplaced: (lines: number) => `${count(lines, LINES)} not placed`,
    toWrite: (readings: number) => `${count(readings, READINGS)} to write, old and new`,
    change: (row: string, column: string, old: string, value: string) =>
      `${row}, ${column}: ${old} → ${value}`,
    suggestion: (written: string) => `No row is named "${written}".`,
    means: (written: string, name: string) => `"${written}" means ${name}`,
    paste: "Paste readings",
    constants: {
      heading: "The same for all lines",
      granted: "Taken from the record that is open; change it where the lines are of another.",
      asTheFileSays: "As the lines say",
      test: "Record of all lines",
      panel: "Panel or section of all lines",
      part: "Part of all lines",
      stage: "Stage of all lines",
    },
    pasteLabel: "Readings, with their column titles",
    pasted: "Pasted block",
    readPasted: "Read the pasted text",
    columns: "What the columns hold",
    leftOut: "left out",
    decimal: "Decimal mark",
    point: "point",
    comma: "comma",
    dateOrder: "Date order",
    dayFirst: "day first",
    monthFirst: "month first",
    takeBack: (files: string, day: string) => `Undo the readings from ${files} (${day})`,
    unreadable: (file: string, reason: string) => `${file}: ${reason}`,
    readBy: (name: string) => `Read with the saved settings "${name}".`,
    asRead: "How the file is read",
    encoding: "Character set",
    delimiter: "Column separator",
    delimiters: { ",": "comma", ";": "semicolon", "\t": "tab", "|": "vertical bar" },
    shape: "Phases",
    shapes: { long: "one below the other", wide: "side by side" },
    titles: "Title line",
    found: (evidence: string, confidence: string) => `${evidence} (${confidence})`,
    byInspection: "detected",
    skipped: (lines: number) => `${count(lines, LINES)} without readings`,
    keepAs: "Save these settings for files like this one, as",
    replace: "Replace the readings that are there",
    replaceHelp: "The readings that are there now move to the sheet Reading history.",
    kept: (values: number) =>
      `${count(values, { one: "earlier value", other: "earlier values" })} to the sheet Reading history`,
    stands: { earlier: "from an earlier day", later: "from a later day", open: "" },
    takenBack: (cells: number, heldBack: number) =>
      `Restored: ${count(cells, CELLS)}${heldBack > 0 ? `; ${heldBack} changed since and left as they are` : ""}.`,
    line: (line: number, reason: string) => `Line ${line}: ${reason}`,
    written: (written: number, heldBack: number) =>
      `Written: ${count(written, CELLS)}${heldBack > 0 ? `; ${heldBack} held back because they changed in the meantime` : ""}.`,
    cancel: "Cancel",
  },

  layouts: {
    heading: "Records in sheets of your own",
    help: "A block of rows under column titles, in any layout, is read as records. The cells stay as they are; readings are written into them.",
    noLineup: "Describe the lineup first and keep it: rows are matched to records by their panel.",
    look: "Look for records in the other sheets",
    looked: (blocks: number) =>
      blocks === 0
        ? "No other block looks like records of this lineup."
        : `${count(blocks, BLOCKS)} ${plural(blocks, { one: "looks", other: "look" })} like records. Review each before it is used.`,
    guessed: "Found, not used yet",
    title: (sheet: string, row: number, kind: string) => `${sheet}, row ${row}: ${kind}`,
    kind: "Its rows are records of",
    fact: (title: string, value: string) => `For all rows: ${title} ${value}`,
    below: (title: string) => `Blank cells under "${title}"`,
    nameAbove: "repeat the name above",
    noName: "are empty",
    records: (records: number) => count(records, { one: "record", other: "records" }),
    problems: (lines: number) => `${count(lines, LINES)} not understood`,
    keep: "Read these as records",
    kept: (title: string) => `Now read as records: ${title}.`,
    drop: "Stop reading these as records",
    dropped: (title: string) => `No longer read as records: ${title}. The sheet is unchanged.`,
    save: "Save the maps as a file",
    open: "Open a map file",
    opened: (file: string, blocks: number) => `${file}: ${count(blocks, BLOCKS)} read as records.`,
    words: "Add titles in your own words",
    wordsHelp:
      'A JSON file of titles that your sheets and exports use, such as {"object": ["Schakelveld"]}. The workbook keeps them.',
    wordsTaken: (file: string) => `${file}: this workbook now knows these titles.`,
  },

  judged: {
    least: (value: string, limit: string) => `${value}, at least ${limit}`,
    most: (value: string, limit: string) => `${value}, at most ${limit}`,
    within: (value: string, limit: string) => `${value}, within ± ${limit}`,
    equal: (value: string, limit: string) => `${value}, to be ${limit}`,
    word: (value: string, right: string) => `${value}, required: ${right}`,
    tolerance: (percent: string) => `${percent} % tolerance`,
    proof: "without it the test proves nothing",
  },

  plot: {
    show: "Show as a picture",
    hide: "Hide the picture",
    across: (kind: string) => `${kind}, across the lineup`,
    joins: " to ",
    rising: "Rising voltage",
    falling: "Falling voltage",
    toRow: "Choose a point to see its row.",
    copy: "Copy the picture",
    save: "Save the picture",
    copied: "The picture is copied.",
    cannotCopy: "The pane cannot put pictures on the clipboard here. Save the picture instead.",
  },

  check: {
    heading: "Findings",
    none: "No findings.",
    noneLikeThat: "No findings match.",
    cannot: (reason: string) => `This workbook ${reason}.`,
    weight: "Weight",
    weights: { stop: "stop", query: "query", note: "note" },
    count: (stop: number, query: number, note: number) =>
      `${stop} stop, ${query} query, ${note} note`,
    group: "Group by",
    groups: { panel: "Panel", rule: "Rule" },
    record: "Record",
    any: "All",
    noPanel: "Workbook",
    previous: "Previous",
    next: "Next",
    at: (place: number, findings: number) => `${place} of ${findings}`,
    listed: (findings: number) => count(findings, FINDINGS),
    goTo: "Go to the cell",
    again: "Check again",
    closed: "This finding is closed.",
    stands: "This finding still stands.",
    expected: "Expected",
    found: "Found",
    source: "Source",
    rule: "Rule",
    accept: "Accept with a reason",
    acceptNow: "Accept this finding",
    reason: "Reason, and the document that says so",
    name: "Name",
    date: "Date",
    noConcessions:
      "This workbook has no Concessions table. Build the lineup onto it again to add one.",
    acceptedNow: (findings: number) =>
      findings === 1
        ? "Accepted. The finding stays listed and no longer counts as open."
        : `Accepted: ${count(findings, FINDINGS)}. They stay listed and no longer count as open.`,
    acceptAlike: (findings: number) =>
      `All ${findings} open findings of this cause, listed together`,
    acceptAll: (findings: number) => `Accept these ${count(findings, FINDINGS)}`,
    repair: {
      open: "Repaired: reopen for the retest",
      about:
        "The failed reading moves to the history, the repair onto the sheet Repairs, and the row is blank for the retest.",
      cause: "Why it failed",
      work: "Worked on",
      panel: "Panel that was worked on",
      done: "What was done",
      by: "Repaired by",
      date: "Day of the repair",
      now: "Reopen the record",
      reopened: (row: string) => `${row} is reopened. Record the retest on it.`,
      heldBack: (cells: number) =>
        `${count(cells, CELLS)} changed meanwhile and stand as they are. Check again, and reopen the record once more.`,
    },
    withdraw: "Withdraw the acceptance",
    withdrawn: "The acceptance is withdrawn: the finding counts as open again.",
    alike: (others: number) => `and ${others} more of the same cause`,
    state: "Result",
    states: {
      Fail: "failed",
      Missing: "missing",
      Inconclusive: "inconclusive",
      today: "mine, today",
    },
    panel: "Panel",
    tester: "Your name",
    testerHelp: "As it stands under Tested by. Rows dated today with that name are listed.",
    accepted: "accepted",
    concession: (reason: string, name: string, date: string) => `${reason} (${name}, ${date})`,
    mark: "Mark the findings in the sheets",
    list: "List the findings on a sheet",
    onSheet: (sheet: string, findings: number) =>
      `The sheet ${sheet} lists ${count(findings, FINDINGS)} as of now. It does not follow later changes.`,
    unmark: "Remove the marks",
    marked: (cells: number) => `Marked: ${count(cells, CELLS)}.`,
    unmarked: "The marks are removed.",
    more: (left: number) => `Show more (${left} left)`,
  },

  handOver: {
    folder: {
      heading: "Hand-over",
      about:
        "One archive: the report, the workbook with values in place of formulas, the punch list, the records as data, and a manifest by which it can be verified. Choose the exports, photos and certificates that go with it.",
      choose: "Files to go with it",
      chosen: (files: number) =>
        `Files to go with it: ${count(files, { one: "file", other: "files" })} chosen`,
      make: "Make the hand-over",
      made: (file: string, files: number, fingerprint: string) =>
        `Made ${file} with ${count(files, { one: "file", other: "files" })}. Fingerprint ${fingerprint}.`,
      notAsNoted: (file: string) =>
        `${file} is not the file that was brought in: its SHA-256 differs from the one noted then.`,
      notFinal: "It is not final, and says so on each page: stops are open.",
      notFound: (names: readonly string[]) =>
        `Named in the workbook but not among the files chosen, or not a valid file name: ${names.join(", ")}.`,
    },
    compare: {
      heading: "Compare with a hand-over",
      about:
        "Shows, cell by cell, where this workbook differs from what was handed over. Choose the archive of the hand-over, or the records.json in it.",
      printed: "Fingerprint printed on the report",
      printedHelp:
        "At the foot of every page. Enter it to confirm that the records you choose belong to that report.",
      choose: "Choose the hand-over",
      none: (file: string) =>
        `${file} holds no records of a hand-over. Choose its archive, or the file records.json out of its folder.`,
      fingerprint: (day: string, fingerprint: string) =>
        `Handed over on ${day}. Fingerprint of the records: ${fingerprint}`,
      isPrinted: "It matches the fingerprint on the report.",
      notPrinted:
        "It does not match the fingerprint on the report: the records were changed since, or belong to another hand-over.",
      same: "This workbook matches the hand-over.",
      changed: (changes: number) =>
        `Differs from the hand-over in ${count(changes, { one: "place", other: "places" })}`,
      change: (place: string, what: string, was: string, is: string) =>
        `${place} (${what}): handed over ${was || "blank"}, now ${is || "blank"}`,
      more: (left: number) => `and ${left} more`,
    },
    heading: "Summary",
    byRecord: "By record",
    record: "Record",
    punch: "Punch list",
    punchNone: "No open stops or queries.",
    check: "Check for hand-over",
    updatePunch: "Bring the punch list up to date",
    punchUpdated: (open: number) =>
      `The sheet Punch list is up to date: ${count(open, { one: "item", other: "items" })} open. What was typed there stays.`,
    checked: "Checked for hand-over: what is still open is in the list.",
    copy: "Copy the summary and punch list",
    copied: "Copied.",
    cannotCopy: "The pane cannot use the clipboard here. Select the text and copy it.",
    instruments: "Instruments used",
    due: (day: string) => `calibration due ${day}`,
    notListed: "not in the instrument table",
    rows: (rows: number) => count(rows, ROWS),
  },

  counts: {
    fail: "fail",
    inconclusive: "inconclusive",
    missing: "missing",
    open: "open",
    pass: "pass",
  },
};
