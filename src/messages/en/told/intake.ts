import { quotedList } from "../words";

/**
 * What is said of exports, pasted tables and own layouts that are taken in: why something is not taken, and
 * how it is known what a file holds. Texts of the file come in quotation marks already, cut where they are long.
 */
export const intake = {
  /** What a column of an export can hold. */
  fields: {
    object: "panel or section",
    circuit: "circuit, where no panel is named",
    section: "bus section, where no panel is named",
    part: "part",
    position: "combination, phase or pole",
    operation: "operation of a breaker, which its part is named with",
    stage: "stage",
    test: "test",
    reading: "reading",
    resistance: "resistance",
    r30s: "resistance at 30 s",
    r10min: "resistance at 10 min",
    voltage: "test voltage",
    controlV: "control voltage",
    current: "test current",
    temperature: "temperature of what is tested",
    air: "air temperature, which stands in where no other is given",
    surface: "surface temperature",
    humidity: "humidity",
    pressure: "air pressure",
    unit: "unit of the readings beside it",
    duration: "duration",
    discharge: "disruptive discharge",
    date: "date",
    time: "time of day",
    by: "tested by",
    instrument: "instrument",
    serial: "instrument's serial number",
    remarks: "remarks",
  },
  /** What a layout of somebody's own states itself. */
  stated: {
    limit: "limit of the layout",
    corrected: "corrected value of the layout",
    spread: "spread of the layout",
    error: "error of the layout",
    result: "result of the layout",
  },
  leftOut: "left out",
  mappable: (
    fields: readonly (readonly [field: string, name: string])[],
    stated: readonly string[],
    leftOut: string,
  ) =>
    `use one of ${fields.map(([field, name]) => (name === field ? field : `${field} (${name})`)).join(", ")}; ${stated.join(", ")}, which are compared; ${leftOut}; or a trade word for a field, such as "panel" or "combination"`,
  cells: {
    thisOnly: (reason: string, header: string) =>
      `${reason} (${header} only; the rest of the line stands)`,
    otherPressure: (text: string, title: string, plate: "gauge" | "absolute") =>
      `${text} under ${title} is ${plate === "gauge" ? "an absolute" : "a gauge"} pressure; the plate of this compartment gives ${plate} pressures. Convert it with the air pressure of the day, and enter it by hand.`,
    noRemarks: (sheet: string) => `${sheet} has no column for remarks.`,
    commentLeft: (comment: string, reason: string) =>
      `the comment ${comment} beside a number is left out, its number is taken: ${reason}`,
    noUnit: (text: string, header: string, name: string, unit: string) =>
      `${text} has no unit for ${header}; write it in the title, such as "${name} (${unit})", or in the cell.`,
    onlyBound: (text: string, header: string) =>
      `${text} is only a bound; ${header} needs an exact value.`,
    outside: (
      text: string,
      value: number,
      unit: string,
      header: string,
      least: number,
      most: number,
    ) => `${text} is ${value} ${unit}; ${header} takes ${least} to ${most} ${unit}.`,
    negative: (text: string, header: string) =>
      `${text} is negative; ${header} takes zero or more.`,
    unwantedUnit: (text: string, header: string) =>
      `${header} has no unit to bring ${text} to; write a plain number, in the unit that its row names where it names one, under a title without a unit.`,
    unknownWord: (text: string, words: readonly string[]) =>
      `Unknown word ${text}; use one of ${quotedList(words)}.`,
    unseen: (text: string) => `${text} holds nothing that can be seen, and is not taken over.`,
    likeFormula: (text: string) =>
      `${text} begins like a formula and is not taken over; write it without the sign in front.`,
    tooLong: (text: string, characters: number, most: number) =>
      `${text} has ${characters} characters; at most ${most} are taken over.`,
    notGiven: (header: string) => `nothing is given for ${header}.`,
    twice: (title: string, other: string, header: string, text: string, otherText: string) =>
      `${title} and ${other} both give ${header}, ${text} and ${otherText}; keep one of them.`,
    otherWave: (text: string, wave: string, wanted: string) =>
      `${text} is of ${wave}; the withstand test of this lineup is ${wanted}.`,
    withMark: (reason: string, evidence: string) => `${reason} (The file: ${evidence}.)`,
    lostUnit: (unit: string, title: string | undefined, right: string) =>
      `the unit "${unit}"${title === undefined ? "" : ` in the title "${title}"`} has lost a sign and cannot be read; export the file as UTF-8, with a unit such as ${right}.`,
    noDate: (text: string) => `${text} is not a date; write it as 2026-11-25.`,
    yearFirst: (text: string) => `${text} could have the year first; write it as 2026-11-25.`,
    dayOrMonth: (text: string) =>
      `${text} could have the day or the month first; write it as 2026-11-25.`,
    noPosition: (text: string) =>
      `${text} is not a phase, pole or combination; use, for example, "L1-E", "L1-L2", "L1 open" or "L1".`,
    mixedLetters: (text: string) =>
      `${text}: the file mixes phase letters of more than one kind (R Y B, R S T, A B C, U V W); use L1, L2, L3.`,
    openLetters: (text: string, meanings: readonly string[]) =>
      `${text} could be ${meanings.join(" or ")}, since the file does not show which letters it uses; use L1, L2, L3.`,
  },
  titles: {
    alike: (title: string, other: string, field: string, second: string | undefined) =>
      `the columns ${title} and ${other} both read as ${field}; say by a mapping which of them it is${second === undefined ? "" : `; the second is called ${second}`}.`,
    second: (name: string, leftOut: string) => `${name}, such as ${leftOut}`,
    unknownField: (text: string, mappable: string) => `Unknown field ${text}; ${mappable}.`,
    tooWide: (file: string, columns: number, line: number, most: number) =>
      `${file} has ${columns} columns on line ${line}; at most ${most} are read, as many as a spreadsheet has.`,
    none: (file: string, titles: readonly string[], known: string, unclosed: number | undefined) =>
      `${file} has no row of titles with columns that are recognised. The titles found are ${titles.length > 0 ? titles.join(", ") : "all blank"}; use titles such as ${known}.${unclosed === undefined ? "" : ` A quotation mark on line ${unclosed} opens a cell and none closes it.`}`,
    of: (file: string, reason: string) => `${file}: ${reason}`,
    eitherKind: (sheet: string, other: string) =>
      `could be a record of ${sheet} or of ${other}; say which in a line over the titles, such as "Test: ${sheet}".`,
    noReading:
      "there is no column with a reading that any record here takes; give each reading's column a title that says what was measured, and its unit.",
    contested: (title: string, other: string, header: string, sheet: string, answer: string) =>
      `${title} and ${other} could each be ${header} of ${sheet}; say which is the reading, such as --columns ${answer}, or leave the other out.`,
  },
  constants: {
    of: (word: string, reason: string) => `${word}: ${reason}`,
    unknown: (word: string, settable: readonly string[]) =>
      `${word} cannot be set for all lines; use ${settable.join(", ")}, or a condition of the test by the id of its column, such as testVoltage.`,
    blank: (word: string) =>
      `${word} is blank; say what holds for all lines, such as ${word}=before.`,
    ofALine: (word: string, field: string) =>
      `${word} (${field}) is read line by line and cannot hold for all.`,
    noStage: (text: string) => `${text} is no stage; say before or after.`,
    noRecordOf: (text: string, names: string) =>
      `no record here is of ${text}; there are ${names}.`,
    noKind: (text: string, sheets: readonly string[]) =>
      `${text} is no record of this workbook; there are ${sheets.join(", ")}.`,
    noQuantity: (text: string) => `${text} is no quantity; write a number with its unit.`,
  },
  file: {
    of: (file: string, reason: string) => `${file} ${reason}`,
    empty: "is empty; an export has a row of titles and rows of readings.",
    nul: (line: number) =>
      `is not delimited text: there is a NUL character on line ${line}. Export it as CSV or tab-separated text, UTF-8.`,
    notUtf8: (line: number) =>
      `has a character on line ${line} that is not UTF-8. Save it again as UTF-8, so that units such as µΩ are read right.`,
    archive: "is a workbook or an archive; export it as delimited text (CSV or tab-separated).",
    mixed: (sound: number, broken: number) =>
      `mixes encodings: line ${sound} is UTF-8 and line ${broken} is not. Export it again in one encoding, or say which it is.`,
    encodings: {
      "utf-8": "UTF-8",
      "utf-16le": "UTF-16, low byte first",
      "utf-16be": "UTF-16, high byte first",
      "windows-1252": "Windows-1252",
    },
    plain: "only characters that every encoding writes alike",
    soundUtf8: "UTF-8, because every character outside the plain ones is sound in it",
    fallback: (line: number) => `Windows-1252, because line ${line} is not UTF-8`,
    byMark: (encoding: string) => `${encoding}, because the file begins with its mark`,
    byNuls: (encoding: string) => `${encoding}, because every second byte is NUL`,
  },
  words: {
    noList:
      'is not an object of field and list of words; write, for example, {"object": ["Schakelveld"]}.',
    unknownField: (field: string) =>
      `has an unknown field ${field}; use one such as object, position or reading.`,
    noJson: 'is not JSON; write, for example, {"object": ["Schakelveld"]}.',
  },
  /** Lines of a file, each once. */
  lines: {
    span: (from: number, to: number) => `${from} to ${to}`,
    others: (left: number) => `${left} others`,
    list: (shown: readonly string[], last: string) =>
      [...(shown.length > 0 ? [shown.join(", ")] : []), last].join(" and "),
    with: (count: number, lines: string, reason: string) =>
      `${count === 1 ? "line" : "lines"} ${lines}: ${reason}`,
  },
  seen: {
    howSure: (evidence: string, confidence: "certain" | "likely" | "open") =>
      `${evidence} (${confidence})`,
    asSet: (what: string) => `${what}, as you set it`,
    sheetCells: "the cells of a sheet",
    delimiters: {
      ",": "comma",
      ";": "semicolon",
      "\t": "tab",
      "|": "vertical bar",
      gaps: "columns of fixed width",
    },
    byTitles: (delimiter: string, columns: number) =>
      `${delimiter}, by which ${columns} columns are recognised`,
    titlesOn: (line: number, recognised: number) =>
      `line ${line}, where ${recognised} titles are recognised`,
    grouped: (lines: 2 | 3) =>
      `${lines === 2 ? "two" : "three"} lines, because the upper groups the lower`,
    oneLine: "one line, which says all that is recognised",
    unitRow: "a row of units under the titles",
    noUnitRow: "no row of units",
    shapes: { wide: "wide", long: "long" },
    wide: "wide, because titles name phases",
    long: "long: one reading a line",
    below: (evidence: string) => `${evidence}; written once, it holds for the blank cells below it`,
    alike: (title: string) =>
      `reads as the same as ${title}, and is left out; say in the map which of them it is`,
    unknown: "not recognised, and left out",
    instruments: (field: string) =>
      `${field}: its every cell is an Id or serial number of the lineup's instruments`,
    noPhases: (field: string) => `${field}: its cells name no phase, and the titles beside it do`,
    byTitleOf: (field: string, says: readonly string[]) =>
      `${field} of ${says.join(", ")}, by the title`,
    byTitle: (field: string, how: "title" | "language" | "words") =>
      `${field}, by the ${how === "title" ? "title" : how === "language" ? "title in another language" : "words of the title"}`,
    stated: (field: string) => `${field}, by the title; compared, never taken over`,
    first: { "day-first": "day first", "month-first": "month first" },
    ordersOn: (text: string, line: number) => `${text} on line ${line}`,
    bothOrders: (day: string, month: string) =>
      `no one order of day and month, because ${day} has the day first and ${month} the month`,
    orderProved: (order: string, proof: string) =>
      `${order}, because ${proof} can be read no other way`,
    orderOpen: (open: string) =>
      `order of day and month unknown, because ${open} could be read either way and nothing else settles it`,
    noDates: "no date that could be read two ways",
    orderByLanguage: "day first, because the file is in a language in which it comes first",
    summary: (word: string) => `${word} of readings, none itself`,
    titlesAgain: "the titles again",
    note: (text: string) => `a note: ${text}`,
  },
  /** How it is known which decimal mark a column or an export uses. */
  decimals: {
    set: (mark: string) => `decimal ${mark}, as you set it`,
    on: (text: string, line: number) => `${text} on line ${line}`,
    both: (point: string, comma: string) =>
      `no one decimal mark, because ${point} needs a decimal point and ${comma} a decimal comma`,
    proved: (mark: string, proof: string) =>
      `decimal ${mark}, because ${proof} can be read no other way`,
    open: (open: string) =>
      `decimal mark unknown, because ${open} could be read either way and nothing else settles it`,
    byDays: (mark: string) => `decimal ${mark}, because days are written with the month first`,
    whole: "no decimal mark in use: every number is whole",
  },
  rows: {
    names: { position: "combination, phase or pole", stage: "stage" },
    noName: (name: string, title: string, choices: string) =>
      `names no ${name}; add a column "${title}" with ${choices}.`,
    noRowBy: (object: string | undefined, name: string) =>
      `${object} has no row by ${name} for such a reading.`,
    unknown: (name: string, text: string, object: string | undefined, choices: string) =>
      `Unknown ${name} ${text} for ${object}; use one of ${choices}.`,
    noObject: 'names no panel or section; add a column "Panel".',
    openObject: (object: string, names: string) =>
      `panel or section ${object} could be ${names}; write it as it stands there.`,
    noRow: (object: string, known: readonly (readonly [sheet: string, objects: string])[]) =>
      `panel or section ${object} has no row. ${known.map(([sheet, objects]) => `${sheet} has ${objects}`).join("; ") || "The lineup needs no record of this kind"}.`,
    noPart: (object: string, parts: string) =>
      `names no part of ${object}; add a column "Part" with ${parts}.`,
    unknownPart: (part: string, object: string, parts: string) =>
      `Unknown part ${part} of ${object}; use one of ${parts}.`,
    several: (count: number, names: string, isOneOfKinds: boolean) =>
      `fits ${count} rows: ${names}; say which in a column "Part"${isOneOfKinds ? ' or "Test"' : ""}.`,
    noStage: (text: string) =>
      `stage ${text} is neither before nor after the withstand test; use "before" or "after".`,
    unknownTest: (test: string, sheets: readonly string[]) =>
      `Unknown test ${test}; use the name of a record table here: ${sheets.join(", ")}.`,
    noReadingColumn:
      "there is no column with a reading; give one a title that says what was measured, with its unit.",
    noReadingColumnFor: (wanted: string) =>
      `there is no column with a reading; add one for ${wanted}, with its unit.`,
    noReading: (titles: readonly string[]) =>
      `has no reading: blank under ${titles.join(" and ")}.`,
    otherQuantity: (text: string, title: string, wanted: string) =>
      `${text} under ${title} is of another quantity than ${wanted}.`,
    unclosed:
      "a quotation mark opens a cell and none closes it, so that the line cannot be split into cells; close it at the cell's end, or take it out.",
    torn: (cells: number, titles: number) =>
      `has ${cells} cells under ${titles} titles; where a comma is decimal, the line needs another delimiter or quotation marks around the number.`,
  },
  place: {
    earlierDay:
      "is of an earlier day than what stands there, and is not written over it; it goes to the history.",
    leftBlank: (reason: string) =>
      `${reason}; it is left blank and the rest of the line stands. Give each record a cell of its own.`,
    notPlaced: (reason: string) =>
      `${reason}; nothing of the line is placed. Bring in lines for all of them that agree, or give each record a cell of its own.`,
    valueOf: (header: string, value: string) => `${header} (${value})`,
    noCell: (sheet: string, values: readonly string[], record: string, isWholeLine: boolean) =>
      `the sheet ${sheet} has no cell for ${values.join(", ")} of ${record}, ${isWholeLine ? "and nothing of the line is placed" : "and the rest of the line stands"}; add a column for ${values.length === 1 ? "it" : "them"} there.`,
    textUnderFormula: (
      text: string,
      cell: string,
      sheet: string,
      formulaCell: string,
      formula: string,
      others: readonly string[],
    ) =>
      `${text} goes into ${cell} of the sheet ${sheet} as text, and the formula at ${formulaCell} (${formula})${others.length > 0 ? `, as those at ${others.join(", ")},` : ""} takes that cell: with text, arithmetic gives #VALUE!, a comparison takes it for more than any number, so that it can say "pass", and sums and averages leave it out. Judge this row by hand or by the check, and not by ${others.length > 0 ? "these cells" : "that cell"}.`,
    gone: (values: readonly string[]) =>
      `replaces a reading and does not give ${values.join(", ")}, which was of the test before and goes to the history; bring in a line with all that the record needs.`,
    stays: (values: readonly string[], why: "same day" | "other rows") =>
      `replaces a reading and does not give ${values.join(", ")}, which ${why === "same day" ? "is of the same day" : "is of other rows too"} and stays; correct it where it was another.`,
    lines: (lines: readonly number[]) =>
      lines.length <= 8
        ? lines.join(" and ")
        : `${lines.slice(0, 4).join(", ")} … ${lines.slice(-2).join(", ")}`,
    contradicting: (lines: string, record: string) =>
      `lines ${lines} give different values for ${record}; none of them is taken, since no date and time tell which is later. Keep one line, or give each its date and time.`,
    later: (line: number, record: string) =>
      `line ${line} gives other values for ${record} and is later; line ${line} is taken.`,
    cellOf: (cell: string, sheet: string) => `${cell} of the sheet ${sheet}`,
    sharedApart: (header: string, cell: string, line: number, other: number) =>
      `${header} is one cell for several records, ${cell}, and lines ${line} and ${other} give it different values`,
    sharedWithout: (header: string, cell: string, records: number) =>
      `${header} is one cell for several records, ${cell}, and the export has no value for ${records} of them`,
  },
  layout: {
    note: (note: string) => `The reading has a note on its cell: ${note}.`,
    formulas: (count: number, cells: readonly string[]) =>
      `${count === 1 ? "A reading" : `${count} readings`} of this block ${count === 1 ? "is a formula" : "are formulas"} (${cells.join(", ")}${count > cells.length ? " …" : ""}); what ${count === 1 ? "it" : "each"} was last computed to is taken for the reading.`,
    onlyNamed:
      "has a title that you named, and no other that is recognised; say what the others mean as well.",
    found: (lines: number, of: number, kind: string) =>
      `${lines} of ${of} lines find their row of ${kind}`,
    foundBut: (found: string, row: number, reason: string) => `${found}; row ${row}: ${reason}`,
    joined: (taken: number, row: number) =>
      `The reading is one cell over several rows, and is taken for row ${taken} alone; row ${row} needs its own.`,
    comment: (text: string, comment: string) =>
      `"${text}" has a comment beside its number: "${comment}". The number counts; the comment belongs into the remarks.`,
    doubled: (titles: readonly string[], row: number, record: string | undefined) =>
      `Were the names under ${titles.join(", ")} held for the blank cells below them, row ${row} would be a second line of ${record}; so none is held. Write them on each line.`,
    noSheet: (sheet: string) =>
      `The map names a sheet "${sheet}", which this workbook does not have.`,
    noKind: (kind: string, kinds: readonly string[]) =>
      `The map names an unknown record kind "${kind}"; use one of ${kinds.join(", ")}.`,
    noRecord: (row: number, sheet: string, reason: string, means: string | undefined) =>
      `Row ${row} is taken for no record of ${sheet}: ${reason}${means === undefined ? "" : ` What it means can be said in the map: "means": ${means}.`}`,
  },
  panels: {
    noTitle:
      'no column is titled "Panel"; give the column of designations that title, or say which column it is',
    twice: (designation: string, line: number) =>
      `${designation} stands on line ${line} as well; give each panel its own designation`,
    noDesignation: "no designation; write one such as =H01",
    unknownType: (text: string, types: readonly string[]) =>
      `Unknown type of panel ${text}; use one of ${types.join(", ")}`,
    noMedium: (media: readonly string[]) =>
      `a breaker without its medium; write ${media.join(" or ")}, or leave its designation and current blank`,
    unknownMedium: (text: string, media: readonly string[]) =>
      `Unknown breaker medium ${text}; use ${media.join(" or ")}, or leave it blank for a panel without a breaker`,
    current: (reason: string) => `rated current of the breaker: ${reason}`,
  },
  undo: {
    gone: (record: string, isTwice: boolean) =>
      `${record}: the record is no longer ${isTwice ? "one row of its table" : "there"}`,
    changed: (record: string, header: string, now: string, written: string) =>
      `${record}, "${header}": holds ${now} now, the intake had written ${written}`,
  },
  reopen: {
    ownLayout: (record: string) =>
      `${record} stands in a layout of your own: write the repair onto the sheet Repairs by hand, and the retest where it belongs`,
    nothing: (record: string) =>
      `nothing is recorded for ${record}: there is no failed test to keep`,
  },
};
