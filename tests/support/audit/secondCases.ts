import type { CellValue } from "../../../src/records/kind";

/** A cell set by an auditor, found by the sheet, the words that name its row, and its header. */
export interface NamedEdit {
  readonly sheet: string;
  /** Keys of the row; a number is its place in the table, from 0. */
  readonly row: readonly string[] | number;
  readonly header: string;
  readonly value: CellValue;
}

export interface NamedCase {
  readonly id: string;
  readonly sort: string;
  readonly edits: readonly NamedEdit[];
  /** Sheets any row of which may tell of it besides the rows that were changed. */
  readonly or?: readonly string[];
}

const set = (
  sheet: string,
  row: NamedEdit["row"],
  header: string,
  value: CellValue,
): NamedEdit => ({ sheet, row, header, value });

let count = 0;
const fault = (sort: string, edits: readonly NamedEdit[], or?: readonly string[]): NamedCase => {
  count += 1;
  return { id: `B${String(count).padStart(3, "0")}`, sort, edits, ...(or ? { or } : {}) };
};

/** Single faults of a second auditor, who had not read the rules, in the filled sample of metal-clad gear. */
export const SECOND_FAULTS: readonly NamedCase[] = [
  fault("main circuit below its pole", [set("Main circuits", ["52-F1", "B"], "R µΩ", 18)]),
  fault("burden far above the loop", [set("CT circuits", ["52-M1", "CT-1", "A"], "Loop Ω", 0.2)]),
  fault("loop above the burden", [set("CT circuits", ["52-T", "CT-1", "B"], "Loop Ω", 3.9)]),
  fault("battery still on its charger", [set("DC supply", ["52-M1"], "At the end V", 131)]),
  fault("battery hours and amperes exchanged", [
    set("DC supply", ["52-M1"], "Discharged with A", 8.1),
    set("DC supply", ["52-M1"], "For h", 6.25),
  ]),
  fault("heater supply a decimal place off", [set("Heaters", ["52-F1"], "Supply V", 12.1)]),
  fault("heater current of two heaters", [set("Heaters", ["52-F1"], "Current A", 2.1)]),
  fault("loss factor falls with voltage", [
    set("Dissipation", ["52-F4", "A"], "At 1.5 U0 e-3", 0.2),
  ]),
  fault("loss factor in per cent", [set("Dissipation", ["52-M1", "B"], "At U0 e-3", 0.142)]),
  fault("scatter above the value itself", [
    set("Dissipation", ["52-M1", "A"], "Deviation at U0 e-3", 2.2),
  ]),
  fault("operating times of two multiples exchanged", [
    set("Protection", ["52-F1", "51P", "2 × pick-up"], "Measured", 1.7),
    set("Protection", ["52-F1", "51P", "10 × pick-up"], "Measured", 21.3),
  ]),
  fault("operating time in milliseconds", [
    set("Protection", ["52-F2", "51P", "5 × pick-up"], "Measured", 3400),
  ]),
  fault("trip noted and nothing measured", [
    set("Protection", ["52-F3", "50P", "Pick-up"], "Measured", null),
  ]),
  fault("relay left to an older order", [
    set("Protection", ["52-F3", "51P", "Pick-up"], "As left: settings order", "SO-15 rev 1"),
  ]),
  fault("relay left at another pick-up", [
    set("Protection", ["52-F3", "51P", "Pick-up"], "As left: pick-up", 5.5),
  ]),
  fault("stability read in secondary amperes", [
    set("Stability", ["52-M1", "Through current"], "Shown A", 1.25),
  ]),
  fault("through current at half a turn", [
    set("Stability", ["52-M1", "Through current"], "Angle °", 180),
  ]),
  fault("spill of the order of the load", [
    set("Stability", ["52-M2", "Through current"], "Spill A", 900),
  ]),
  fault("arc trip in tenths", [set("Arc protection", ["52-F1"], "Light to trip ms", 71)]),
  fault("arc trip faster than a relay is", [
    set("Arc protection", ["52-F1"], "Light to trip ms", 0.07),
  ]),
  fault("arc sensor tried and no breaker seen", [
    set("Arc protection", ["52-T"], "Breakers", null),
  ]),
  fault("speed in other digits", [set("Motion", ["52-F2", "closing speed"], "Measured", 8.7)]),
  fault("no bounce at all", [set("Motion", ["52-F2", "contact bounce", "A"], "Measured", 0)]),
  fault("times in seconds", [set("Timing", ["52-F2", "Breaker 52 closing"], "A ms", 0.0613)]),
  fault("opening and closing exchanged", [
    set("Timing", ["52-F3", "Breaker 52 closing"], "B ms", 33.9),
    set("Timing", ["52-F3", "Breaker 52 opening"], "B ms", 61.3),
  ]),
  fault("timed at half the control voltage", [
    set("Timing", ["52-F4", "Breaker 52 closing"], "Control V", 62),
  ]),
  fault("more operations than counted", [set("Mechanism", ["52-F1"], "Counter after", 28)]),
  fault("spring charged in no time", [set("Mechanism", ["52-F2"], "Spring charged in s", 0.75)]),
  fault("coil not tried at its low voltage", [
    set("Mechanism", ["52-F3"], "Opening release worked at V, low", 125),
  ]),
  fault("a point of a curve a decimal place off", [set("Excitation", ["52-M1", "A"], "V 5", 1178)]),
  fault("a curve that turns back", [set("Excitation", ["52-M1", "B"], "A 7", 0.05)]),
  fault("winding resistance a decimal place off", [
    set("Current transformers", ["52-M1", "CT-1", "A"], "Rct Ω", 4.618),
  ]),
  fault("ratio of half the turns", [
    set("Current transformers", ["52-F1", "CT-1", "B"], "Secondary A", 2.5),
  ]),
  fault("core left magnetized", [
    set("CT circuits", ["52-F1", "CT-1", "C"], "As left", "Not demagnetized"),
  ]),
  fault("circuit earthed twice", [
    set("CT circuits", ["52-F2", "CT-1", "C"], "Earthed at", "Several"),
  ]),
  fault("winding of a transformer a decimal place off", [
    set("VT windings", ["52-M1", "A"], "Primary winding Ω", 130.2),
  ]),
  fault("secondary winding with its lead", [
    set("VT windings", ["52-M2", "A"], "Secondary winding Ω", 0.92),
  ]),
  fault("arrester counter runs back", [
    set("Arresters", ["52-F1", "A"], "Counter before", 12),
    set("Arresters", ["52-F1", "A"], "Counter as left", 11),
  ]),
  fault("arrester without its earth", [
    set("Arresters", ["52-F4", "A"], "Earth lead", "Not connected"),
  ]),
  fault("reference of another point", [set("Metering", ["52-M1", "AM", "50 %"], "Reference", 500)]),
  fault("earth path of no resistance", [set("Earthing", ["52-M1", "Door"], "Drop V", 0)]),
  fault("joint not checked again", [set("Torque", ["52-M1", "Cable lugs"], "Re-checked", "No")]),
  fault("torque in pound-feet", [set("Torque", ["52-M1", "Main bus splice"], "Applied N·m", 50.8)]),
  fault("indicator tripped on arrival", [
    set("Handling", ["52-F1"], "Shock and tilt indicators", "Tripped"),
  ]),
  fault(
    "held after the work",
    [set("Inspection", ["Release for the withstand test"], "Held on", 46_304)],
    ["Withstand"],
  ),
  fault("released by the crew", [
    set("Inspection", ["Release for the withstand test"], "Released by", "Crew M (invented)"),
  ]),
  fault("older revision on site", [set("Documents", ["E-101"], "Revision on site", "2")]),
  fault("function tried before its wiring", [
    set("Function", ["52-M1", "Closes and opens locally"], "Date", 46_292),
  ]),
  fault("pressure reduced to sea level", [
    set("Withstand", ["52-F3", "Circuit", "B"], "Pressure kPa", 101.3),
  ]),
  fault("charging current ten times the others'", [
    set("Withstand", ["52-F3", "Circuit", "B"], "Current mA", 54),
  ]),
  fault("very low frequency set at power frequency", [
    set("Withstand", ["52-F3", "Circuit", "B"], "Instrument", "MEG-1"),
  ]),
  fault(
    "open pole that read nothing",
    [set("Insulation", ["52-F2", "A open", "before"], "R 1 min MΩ", 2)],
    ["Withstand"],
  ),
  fault("reading copied from another panel", [
    set("Insulation", ["52-F2", "Circuit", "A-E", "before"], "R 1 min MΩ", 132_453),
  ]),
  fault("wet day among dry ones", [
    set("Insulation", ["52-F2", "Circuit", "A-E", "before"], "Humidity %", 96),
  ]),
  fault("wiring in gigohms", [set("Control wiring", ["52-M1", "Closing"], "R 1 min MΩ", 0.149)]),
  fault("wiring at twelve kilovolts", [
    set("Control wiring", ["52-M1", "Closing"], "Applied kV", 12),
  ]),
  fault("energized on paper before it was tested", [
    set("Energization", ["52-M1"], "State", "OK"),
    set("Energization", ["52-M1"], "Date", 46_290),
    set("Energization", ["52-M1"], "Checked by", "Crew M (invented)"),
  ]),
  fault("across phases nothing", [
    set("Phasing", ["52-M1", "A"], "Like phases V", 0.4),
    set("Phasing", ["52-M1", "A"], "Unlike phases V", 0.5),
    set("Phasing", ["52-M1", "A"], "Date", 46_310),
    set("Phasing", ["52-M1", "A"], "Tested by", "Crew M (invented)"),
    set("Phasing", ["52-M1", "A"], "Instrument", "DM-1"),
  ]),
  fault("background above the limit", [
    set("Partial discharge", ["52-M1", "Ultrasound"], "Background", 20),
    set("Partial discharge", ["52-M1", "Ultrasound"], "Level", 18),
    set("Partial discharge", ["52-M1", "Ultrasound"], "Date", 46_312),
    set("Partial discharge", ["52-M1", "Ultrasound"], "Tested by", "Crew M (invented)"),
    set("Partial discharge", ["52-M1", "Ultrasound"], "Instrument", "DM-1"),
  ]),
  fault("a vacuum that draws no current", [set("Interrupters", ["52-F1", "A"], "Current mA", 0)]),
  fault("contacts not in full gap", [
    set("Interrupters", ["52-F1", "B"], "Contact gap", "Not in full"),
  ]),
  fault("leakage of a cable in amperes", [set("Cables", ["52-M1", "A"], "Current mA", 530)]),
  fault("cable insulation that failed before its voltage", [
    set("Cables", ["52-F4", "A"], "Insulation MΩ", 0.4),
  ]),
  fault(
    "a bad contact measured until it was good",
    [
      set("Reading history", 0, "Sheet", "Contacts"),
      set("Reading history", 0, "Row", "52-M1 · Breaker 52 · A"),
      set("Reading history", 0, "Column", "R µΩ"),
      set("Reading history", 0, "Value", 88),
      set("Reading history", 0, "Date", 46_297),
      set("Reading history", 0, "Source", "typed"),
      set("Reading history", 0, "Replaced on", 46_298),
    ],
    ["Contacts"],
  ),
  fault(
    "a repair after its retest",
    [
      set("Repairs", 0, "Sheet", "Contacts"),
      set("Repairs", 0, "Row", "52-M1 · Breaker 52 · A"),
      set("Repairs", 0, "Cause", "Worn contact"),
      set("Repairs", 0, "Work on", "Breaker pole"),
      set("Repairs", 0, "What was done", "Pole replaced"),
      set("Repairs", 0, "Repaired by", "Maker's fitter (invented)"),
      set("Repairs", 0, "Date", 46_310),
    ],
    ["Contacts", "Timing", "Motion", "Interrupters", "Insulation"],
  ),
];

/** Differences that an auditor may see and has nothing to ask of. */
export const SECOND_HARMLESS: readonly NamedCase[] = [
  fault("firmware noted", [set("Relay settings", ["52-M1", "51P pick-up"], "Firmware", "4.12")]),
  fault("as found noted", [set("Relay settings", ["52-M1", "51P pick-up"], "As found", 4)]),
  fault("setting with its unit", [
    set("Relay settings", ["52-M1", "50P pick-up"], "As left", "40 A"),
  ]),
  fault("loop a little other", [set("CT circuits", ["52-M1", "CT-1", "A"], "Loop Ω", 1.97)]),
  fault("main circuit a little other", [set("Main circuits", ["52-F1", "B"], "R µΩ", 81.3)]),
  fault("thermometer beside the meter", [
    set("Insulation", ["52-F2", "Circuit", "A-E", "before"], "Instrument", "MEG-1; TH-1"),
  ]),
  fault("hour with its day", [set("Contacts", ["52-F2", "Breaker 52", "A"], "Date", 46_297.4)]),
  fault("remark of weather", [
    set("Withstand", ["52-F3", "Circuit", "B"], "Remarks", "Dry, doors closed."),
  ]),
  fault("time a little other", [set("Timing", ["52-F2", "Breaker 52 closing"], "A ms", 61)]),
  fault("hours a little longer", [set("DC supply", ["52-M1"], "For h", 8.3)]),
  fault("reading with its unit", [
    set("Insulation", ["52-F2", "Circuit", "A-E", "before"], "R 1 min MΩ", "96 GΩ"),
  ]),
  fault("a measured repeat with its cause", [
    set("Reading history", 0, "Sheet", "Contacts"),
    set("Reading history", 0, "Row", "52-M1 · Breaker 52 · A"),
    set("Reading history", 0, "Column", "R µΩ"),
    set("Reading history", 0, "Value", 88),
    set("Reading history", 0, "Date", 46_297),
    set("Reading history", 0, "Source", "typed"),
    set("Reading history", 0, "Replaced on", 46_297),
    set(
      "Contacts",
      ["52-M1", "Breaker 52", "A"],
      "Remarks",
      "First reading over paint; clamp moved to bare metal.",
    ),
  ]),
];
