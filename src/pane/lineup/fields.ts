import { bolts } from "../../engineering/bolts";
import { curves } from "../../engineering/curves";
import { BREAKER_MEDIA, PANEL_TYPES } from "../../lineup/equipment";
import { POINT_TYPES } from "../../lineup/settings";
import { ITEM_KINDS, KINDS, RECORD_KINDS } from "../../records/kinds";
import { OWN_QUANTITIES } from "../../records/ownQuantities";
import { CABLE_WAVES } from "../../standards/cableTest";
import { BASES } from "../../standards/criterion";
import { EDITIONS, PURPOSES } from "../../standards/editions";

/** One field of a form: where it stands in the lineup, and what it holds. */
export interface Field {
  readonly path: string;
  readonly label: string;
  /** What the words of a list are shown as, where that is not the words themselves. */
  readonly shown?: Readonly<Record<string, string>>;
  readonly holds:
    | "text"
    | "number"
    | "day"
    | "words"
    | "numbers"
    | readonly (string | number | boolean)[];
}

/** A list of equipment in the lineup: its fields, and what a new one starts with. */
export interface ListFields {
  readonly path: string;
  readonly title: string;
  readonly fields: readonly Field[];
  readonly fresh: Readonly<Record<string, unknown>>;
  /** Path of the field that an entry of the list is known by. */
  readonly name: string;
}

const text = (path: string, label: string): Field => ({ path, label, holds: "text" });
const number = (path: string, label: string): Field => ({ path, label, holds: "number" });
const one = (path: string, label: string, of: readonly (string | number)[]): Field => ({
  path,
  label,
  holds: of,
});

const yesNo = (path: string, label: string): Field => ({
  path,
  label,
  holds: [true, false],
  shown: { true: "Yes", false: "No" },
});

export const PROJECT: readonly Field[] = [
  text("project.name", "Project"),
  text("project.site", "Site"),
  text("project.number", "Project number"),
  text("project.specification", "Specification"),
  text("project.specificationRevision", "Its revision"),
];

export const RATINGS: readonly Field[] = [
  one("basis", "Basis", BASES),
  one("purpose", "Tests are for", PURPOSES),
  ...Object.entries(EDITIONS).map(([document, editions]) =>
    one(`editions.${document}`, `Edition of ${document}`, editions),
  ),
  { path: "phases", label: "Phases, three names", holds: "words" },
  number("ratings.voltagekV", "Rated voltage, kV"),
  number("ratings.operatingkV", "Operating voltage, kV"),
  one("ratings.frequencyHz", "Frequency, Hz", [50, 60]),
  number("ratings.busbarA", "Busbar current, A"),
  number("ratings.shortTimekA", "Short-time current, kA"),
  number("ratings.shortTimeS", "Short time, s"),
  number("ratings.powerFrequencykV", "Plate: power-frequency withstand, kV"),
  number("ratings.impulsekV", "Plate: impulse withstand, kV"),
  number("ratings.controlV", "Control voltage, V"),
  one("ratings.controlKind", "Control supply", ["DC", "AC"]),
  number("ratings.controlWireV", "Control wire rated, V"),
  number("ratings.altitudeM", "Altitude, m"),
];

export const TESTS: readonly Field[] = [
  one("insulation.correction", "Insulation corrected by", ["solid", "oil", "halving", "none"]),
  number("insulation.baseC", "Base temperature, °C"),
  one("withstand.wave", "Withstand test with", ["AC", "DC"]),
  number("withstand.seconds", "Withstand duration, s"),
  number("withstand.gapM", "Shortest path in air, m"),
  yesNo("withstand.parallelInternal", "Solid, vacuum or gas insulation beside the air"),
];

export const DRAWINGS: ListFields = {
  path: "project.drawings",
  title: "Drawings",
  name: "number",
  fields: [text("number", "Number"), text("revision", "Revision"), text("title", "Title")],
  fresh: { number: "", revision: "" },
};

export const INSTRUMENTS: ListFields = {
  path: "instruments",
  title: "Instruments",
  name: "id",
  fields: [
    text("id", "Id"),
    text("kind", "Instrument"),
    text("serial", "Serial number"),
    { path: "calibrated", label: "Calibrated", holds: "day" },
    { path: "due", label: "Due", holds: "day" },
    number("accuracyPercent", "Accuracy, ± %"),
  ],
  fresh: { id: "", kind: "", serial: "" },
};

export const CRITERIA: ListFields = {
  path: "criteria",
  title: "Criteria",
  name: "quantity",
  fields: [
    one("quantity", "Quantity", OWN_QUANTITIES),
    number("value", "Value"),
    one("from", "Given by", ["project", "maker"]),
    text("document", "Document"),
    { path: "applies", label: "Panels or sections (blank for all)", holds: "words" },
  ],
  fresh: { from: "project" },
};

export const CONFIRMED: ListFields = {
  path: "confirmed",
  title: "Criteria confirmed against the standard",
  name: "criterion",
  fields: [text("criterion", "Criterion, as the sources of limits name it"), text("by", "By whom")],
  fresh: { criterion: "", by: "" },
};

const KIND_TITLES = Object.fromEntries(KINDS.map(({ id, title }) => [id, title]));

export const LEFT_OUT: ListFields = {
  path: "leaveOut",
  title: "Records left out",
  name: "kind",
  fields: [
    { ...one("kind", "Record", RECORD_KINDS), shown: KIND_TITLES },
    text("reason", "Reason"),
    text("document", "Document"),
  ],
  fresh: { reason: "" },
};

export const POINTS: ListFields = {
  path: "inspectionPoints",
  title: "Inspection points",
  name: "activity",
  fields: [
    text("activity", "Activity"),
    one("type", "Point", POINT_TYPES),
    one("each", "Once for each", ["lineup", "panel"]),
    { path: "guards", label: `Holds up (${RECORD_KINDS.join(", ")})`, holds: "words" },
    text("document", "Document"),
  ],
  fresh: { activity: "", type: "witness", each: "lineup" },
};

export const ITEMS: ListFields = {
  path: "checkItems",
  title: "Check items of the project",
  name: "item",
  fields: [
    { ...one("kind", "Record", ITEM_KINDS), shown: KIND_TITLES },
    text("item", "Item"),
    { path: "applies", label: "Panels or sections (blank for all)", holds: "words" },
    { path: "types", label: `Types of panel (${PANEL_TYPES.join(", ")})`, holds: "words" },
    number("least", "Minimum, mm (dimensions)"),
    number("most", "Maximum, mm (dimensions)"),
    text("document", "Document"),
  ],
  fresh: { kind: "installation", item: "", document: "" },
};

export const PANEL: readonly Field[] = [
  text("designation", "Designation"),
  text("name", "Circuit"),
  one("type", "Type", PANEL_TYPES),
  text("section", "Bus section"),
  number("massKg", "Mass, kg"),
];

export const BREAKER: readonly Field[] = [
  text("breaker.designation", "Breaker's designation"),
  one("breaker.medium", "Medium", BREAKER_MEDIA),
  one("breaker.device", "Switching device", ["fused contactor"]),
  number("breaker.ratedA", "Rated current, A"),
  text("breaker.document", "Manufacturer's document"),
  number("breaker.contactLimit", "Contact resistance, maximum (µΩ)"),
  number("breaker.closingMs.least", "Closing time, minimum (ms)"),
  number("breaker.closingMs.most", "Closing time, maximum (ms)"),
  number("breaker.openingMs.least", "Opening time, minimum (ms)"),
  number("breaker.openingMs.most", "Opening time, maximum (ms)"),
  number("breaker.poleSpreadMs", "Pole spread, maximum (ms)"),
  number("breaker.closingV.least", "Closing coil, minimum (V)"),
  number("breaker.closingV.most", "Closing coil, maximum (V)"),
  number("breaker.openingV.least", "Opening release, minimum (V)"),
  number("breaker.openingV.most", "Opening release, maximum (V)"),
  number("breaker.chargingS", "Spring charging time, maximum (s)"),
  number("breaker.closingSpreadMs", "Pole spread on closing, maximum (ms)"),
  number("breaker.openingSpreadMs", "Pole spread on opening, maximum (ms)"),
  number("breaker.controlV", "Control voltage of this breaker, V"),
  one("breaker.controlKind", "Its control supply", ["DC", "AC"]),
  number("breaker.openingControlV", "Control voltage of its opening release, V"),
  one("breaker.openingControlKind", "Supply of its opening release", ["DC", "AC"]),
  yesNo("breaker.secondTripCoil", "Second trip coil"),
  number("breaker.undervoltageV.pickupMost", "Undervoltage release: picks up by, V"),
  number("breaker.undervoltageV.dropoutLeast", "Undervoltage release: drops out from, V"),
  number("breaker.undervoltageV.dropoutMost", "Undervoltage release: drops out by, V"),
];

export const GAS: readonly Field[] = [
  number("breaker.gas.fillingMPa", "Filling at 20 °C, MPa"),
  number("breaker.gas.alarmMPa", "Alarm at 20 °C, MPa"),
  number("breaker.gas.lockoutMPa", "Lockout at 20 °C, MPa"),
  number("breaker.gas.maximumMPa", "Maximum at 20 °C, MPa"),
  number("breaker.gas.tolerancekPa", "Tolerance, kPa"),
  number("breaker.gas.monitorClass", "Monitor's class, % of span"),
  number("breaker.gas.monitorSpanMPa", "Monitor's span, MPa"),
  yesNo("breaker.gas.sealed", "Sealed for life"),
  one("breaker.gas.pressure", "Pressures are", ["gauge", "absolute"]),
];

/** Lists of a panel's equipment. */
export const PANEL_LISTS: readonly ListFields[] = [
  {
    path: "currentTransformers",
    title: "Current transformers",
    name: "name",
    fields: [
      text("name", "Core"),
      number("primaryA", "Primary, A"),
      one("secondaryA", "Secondary, A", [1, 5]),
      text("accuracy", "Class"),
      number("burdenVA", "Burden, VA"),
      number("accuracyLimitFactor", "Accuracy limit factor"),
      number("kneeV", "Knee point, minimum (V)"),
      number("windingOhm", "Winding at 75 °C, maximum (Ω)"),
      number("burdenLeastVA", "Burden at least, VA"),
      number("ratingFactor", "Rating factor"),
      number("excitingA", "Exciting current at the knee, maximum (A)"),
      one("encloses", "Encloses", ["one phase", "all phases"]),
    ],
    fresh: { name: "", secondaryA: 1, accuracy: "" },
  },
  {
    path: "voltageTransformers",
    title: "Voltage transformers",
    name: "name",
    fields: [
      text("name", "Winding"),
      number("primaryV", "Primary, V"),
      number("secondaryV", "Secondary, V"),
      text("accuracy", "Class"),
      number("burdenVA", "Burden, VA"),
      number("burdenLeastVA", "Burden at least, VA"),
      number("voltageFactor", "Voltage factor"),
    ],
    fresh: { name: "", accuracy: "" },
  },
  {
    path: "meters",
    title: "Meters",
    name: "designation",
    fields: [
      text("designation", "Designation"),
      text("quantity", "Measures"),
      number("fullScale", "Full scale"),
      text("unit", "Unit"),
      number("accuracy", "Error, maximum (%)"),
      one("accuracyOf", "Class is of", ["full scale", "reading"]),
      { path: "points", label: "Points, % of full scale", holds: "numbers" },
    ],
    fresh: { designation: "", quantity: "", unit: "", points: [25, 50, 100] },
  },
  {
    path: "protection",
    title: "Protection elements",
    name: "element",
    fields: [
      text("relay", "Relay"),
      text("element", "Element"),
      number("pickup", "Pick-up"),
      text("unit", "Unit"),
      one("curve", "Curve", ["definite", ...Object.keys(curves)]),
      number("setting", "Time multiplier, dial or delay"),
      { path: "multiples", label: "Tested at multiples of pick-up", holds: "numbers" },
      number("pickupPercent", "Pick-up error, maximum (%)"),
      number("timePercent", "Time error, maximum (%)"),
      number("timeS", "Time error, maximum (s)"),
      number("slopePercent", "Slope, %"),
      number("resetPercent", "Reset ratio, %"),
      text("document", "Settings order and revision"),
    ],
    fresh: {
      relay: "",
      element: "",
      unit: "A",
      curve: "definite",
      multiples: [2, 5, 10],
      pickupPercent: 5,
      timePercent: 5,
      timeS: 0.04,
    },
  },
  {
    path: "cables",
    title: "Cables",
    name: "designation",
    fields: [
      text("designation", "Designation"),
      number("ratedkV", "Rated voltage U, kV"),
      number("u0kV", "U0, kV"),
      one("purpose", "Tested for", PURPOSES),
      number("sheathMm", "Oversheath, mm"),
      one("wave", "Wave of the withstand test", CABLE_WAVES),
    ],
    fresh: { designation: "" },
  },
  {
    path: "joints",
    title: "Bolted joints",
    name: "name",
    fields: [
      text("name", "Joints"),
      one("bolt", "Bolt", Object.keys(bolts)),
      text("grade", "Grade (8.8, A2-70, SAE 5 …)"),
      number("torqueNm", "Manufacturer's torque (N·m)"),
      number("torqueLbfFt", "Manufacturer's torque (lbf·ft)"),
      text("document", "Document"),
    ],
    fresh: { name: "", bolt: "M12", grade: "8.8" },
  },
];
