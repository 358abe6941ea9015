import type { Sense } from "../words/languages/language";
import { FURTHER_SENSES } from "./furtherSenses";
import { type ColumnSense, type ColumnSenses, s } from "./waysOf";

const resistance = s("resistance", "insulation", "insulation resistance", "reading", "measured");
const testVoltage: ColumnSense = {
  any: s(
    "voltage",
    "voltage test",
    "voltage insulation",
    "voltage applied",
    "test",
    "voltage insulation test",
    "applied",
  ),
  usual: [100, 15000],
};
const testCurrent: ColumnSense = {
  any: s("current", "current test", "current applied", "test", "applied"),
  usual: [1, 1000],
};
const temperature = s(
  "temperature",
  "conductor",
  "conductor temperature",
  "air temperature",
  "air",
  "conductor air temperature",
);
const discharge: ColumnSense = { any: s("discharge", "discharge result", "withstand result") };
const leakage: ColumnSense = {
  any: s("current", "leakage", "current leakage", "current measured", "current test"),
};
const insulationRead: ColumnSense = {
  any: s("insulation", "insulation resistance", "resistance insulation winding"),
  usual: [0.1, 1e7],
};
const state: ColumnSense = { any: s("state", "result", "state result", "reading", "item state") };
const at = (seconds: number): ColumnSense => ({ any: resistance, seconds, usual: [0.01, 1e8] });
const primary = s(
  "primary",
  "primary current",
  "primary voltage",
  "primary applied",
  "primary current applied",
  "primary voltage applied",
  "current applied",
  "applied",
);
const secondary = s(
  "secondary",
  "secondary current",
  "secondary voltage",
  "secondary measured",
  "secondary current measured",
  "measured",
  "current measured",
);
const pole: ColumnSense = {
  any: s(
    "time",
    "timing",
    "operation",
    "reading",
    "measured",
    "held",
    "operation time",
    "contact",
    "contact time",
    "closing",
    "opening",
    "closing time",
    "opening time",
    "",
  ),
  usual: [5, 500],
};

/** Of every kind. */
const TRAIL: Readonly<Record<string, ColumnSense>> = {
  date: { any: s("date", "date test", "date time") },
  by: { any: s("by", "by test") },
  instrument: {
    any: s("instrument", "instrument test", "meter", "instrument number", "relay test instrument"),
  },
  serial: { any: s("serial", "serial instrument", "serial number", "serial instrument number") },
  remarks: { any: s("remark", "remark state", "retest") },
  humidity: { any: s("humidity", "humidity air"), usual: [5, 100] },
};

/** By record kind and id of column; `*` for every kind that has the column. */
export const COLUMN_SENSES: ColumnSenses = {
  ...FURTHER_SENSES,
  "*": TRAIL,
  torque: {
    applied: {
      any: s(
        "torque",
        "torque applied",
        "torque measured",
        "applied",
        "measured",
        "reading",
        "torque reading",
        "torque joint",
        "found",
        "found torque",
        "left",
        "left torque",
      ),
      usual: [1, 1000],
    },
    marked: { any: s("marked") },
    rechecked: { any: s("again", "again torque", "again by") },
  },
  earthing: {
    testCurrent,
    reading: {
      any: s(
        "drop",
        "voltage",
        "drop voltage",
        "voltage measured",
        "drop measured voltage",
        "measured",
        "reading",
      ),
      usual: [0.00001, 50],
    },
  },
  contact: {
    testCurrent,
    reading: {
      any: s(
        "contact resistance",
        "resistance",
        "contact",
        "measured",
        "reading",
        "joint resistance",
        "breaker resistance",
        "joint",
      ),
      usual: [0.5, 5000],
    },
    temperature: { any: temperature, usual: [-30, 80] },
  },
  insulation: {
    testVoltage,
    r30s: at(30),
    reading: at(60),
    r10min: at(600),
    temperature: { any: temperature, usual: [-30, 80] },
  },
  indexCurve: {
    testVoltage,
    s15: at(15),
    s30: at(30),
    s45: at(45),
    min1: at(60),
    min2: at(120),
    min3: at(180),
    min5: at(300),
    min10: at(600),
    temperature: { any: temperature, usual: [-30, 80] },
  },
  withstand: {
    temperature: { any: temperature, usual: [-30, 60] },
    pressure: { any: s("barometer", "pressure", "pressure air"), usual: [50, 110] },
    surface: { any: s("surface", "surface temperature"), usual: [-30, 80] },
    applied: {
      any: s(
        "voltage",
        "voltage applied",
        "voltage test",
        "withstand",
        "applied",
        "withstand voltage",
        "withstand applied",
        "voltage reading",
        "withstand test",
        "level",
        "level voltage",
        "level test",
      ),
      usual: [1, 200],
    },
    duration: {
      any: s("held", "time", "time held", "time withstand", "applied time", "time test"),
      usual: [1, 7200],
    },
    current: leakage,
    discharge,
  },
  control: {
    continuity: { any: s("continuity") },
    ferrules: { any: s("ferrule") },
    testVoltage: { ...testVoltage, usual: [50, 1500] },
    reading: { any: resistance, seconds: 60, usual: [0.1, 1e6] },
    applied: {
      any: s(
        "voltage applied",
        "withstand",
        "withstand voltage",
        "applied",
        "withstand applied",
        "withstand voltage applied",
        "voltage",
        "withstand test",
      ),
      usual: [0.3, 5],
    },
    duration: {
      any: s("held", "time", "time held", "time withstand", "applied time"),
      usual: [1, 600],
    },
    discharge,
  },
  mechanism: {
    closingLow: {
      any: s(
        "closing low",
        "closing minimum",
        "control closing low",
        "control closing minimum voltage",
        "closing low voltage",
        "closing minimum voltage",
        "control closing low voltage",
        "control closing pickup voltage",
        "control closing pickup minimum voltage",
      ),
    },
    closingHigh: {
      any: s(
        "closing high",
        "closing maximum",
        "control closing high",
        "closing high voltage",
        "closing maximum voltage",
        "control closing high voltage",
      ),
    },
    openingLow: {
      any: s(
        "opening low",
        "opening minimum",
        "control opening low",
        "opening tripping low",
        "opening low voltage",
        "opening minimum voltage",
        "control opening low voltage",
        "opening tripping trip low",
        "control low",
        "control opening pickup voltage",
        "control opening pickup minimum voltage",
      ),
    },
    openingHigh: {
      any: s(
        "opening high",
        "opening maximum",
        "control opening high",
        "opening tripping high",
        "opening high voltage",
        "opening maximum voltage",
        "control opening high voltage",
      ),
    },
    pickup: { any: s("uv pickup", "pickup", "uv pickup voltage") },
    dropout: { any: s("uv dropout", "dropout", "uv dropout voltage") },
    charged: { any: s("spring", "spring time", "spring held"), usual: [1, 120] },
    counterBefore: { any: s("counter before", "counter found", "counter reading before") },
    counterAfter: { any: s("counter after", "counter left", "counter reading after") },
    made: { any: s("operation", "operation number", "operation applied") },
  },
  timing: {
    controlV: {
      any: s("control", "control voltage", "voltage", "voltage test", "control test voltage"),
      usual: [12, 300],
    },
    l1: pole,
    l2: pole,
    l3: pole,
  },
  gas: {
    reading: {
      any: s(
        "pressure",
        "gas pressure",
        "gas",
        "pressure measured",
        "gas pressure measured",
        "gas pressure reading",
        "pressure reading",
      ),
      usual: [0.01, 2],
      // The pressure of the air, from a high site to a fine day at the sea.
      unlessSaid: { sense: "gas", between: [0.07, 0.108] },
    },
    temperature: {
      any: s("temperature", "gas temperature", "air temperature", "air"),
      usual: [-30, 60],
    },
    pressure: { any: s("barometer", "air pressure", "barometer pressure"), usual: [60, 110] },
    alarmAt: {
      any: s(
        "alarm",
        "alarm pressure",
        "alarm gas pressure",
        "alarm measured",
        "alarm contact",
        "alarm pressure measured",
      ),
    },
    lockoutAt: {
      any: s(
        "lockout",
        "lockout pressure",
        "lockout gas pressure",
        "lockout measured",
        "lockout contact",
        "lockout pressure measured",
      ),
    },
    tight: {
      any: s(
        "search",
        "search result",
        "search state",
        "gas search",
        "search gas result",
        "leakage",
        "search leakage",
        "search rate result",
      ),
    },
    leak: { any: s("rate", "search rate", "leakage rate") },
  },
  currentTransformer: {
    primary: { any: primary, usual: [0.1, 10000] },
    secondary: { any: secondary, usual: [0.001, 100] },
    polarity: { any: s("polarity", "polarity result", "polarity state") },
    winding: {
      any: s(
        "winding",
        "winding resistance",
        "secondary resistance",
        "resistance",
        "winding secondary resistance",
      ),
      usual: [0.001, 100],
    },
    temperature: {
      any: s("winding temperature", "temperature", "air", "air temperature"),
      usual: [-30, 80],
    },
    testVoltage,
    insulationRead,
    burden: { any: s("burden", "burden measured") },
  },
  // The points of the curve: what is said of the first holds for the others.
  excitation: {
    v1: {
      any: s(
        "voltage",
        "voltage applied",
        "voltage excitation",
        "voltage secondary",
        "voltage measured",
        "secondary voltage",
      ),
      usual: [0.5, 5000],
    },
    a1: {
      any: s(
        "current",
        "current excitation",
        "current measured",
        "excitation",
        "current secondary",
      ),
      usual: [0.00001, 20],
    },
  },
  voltageTransformer: {
    primary: { any: primary, usual: [10, 100000] },
    secondary: { any: secondary, usual: [0.1, 500] },
    polarity: { any: s("polarity", "polarity result", "polarity state") },
    testVoltage,
    insulationRead,
    fuses: { any: s("fuse", "fuse state") },
    earth: { any: s("earth", "secondary earth") },
    burden: { any: s("burden", "burden measured") },
  },
  metering: {
    reference: {
      any: s(
        "reference",
        "applied",
        "reference applied",
        "current applied",
        "voltage applied",
        "primary",
        "primary applied",
        "secondary applied",
        "reference meter",
      ),
    },
    shown: {
      any: s("shown", "meter", "reading", "measured", "shown meter", "indication", "meter reading"),
    },
  },
  protection: {
    restraint: { any: s("restraint", "restraint current") },
    reading: {
      any: s(
        "measured",
        "reading",
        "measured time",
        "measured pickup",
        "time",
        "timing",
        "trip time",
        "measured current",
        "applied",
        "measured trip time",
        "opening tripping trip time",
        "measured test",
        "left",
        "left measured",
        "left reading",
        "left test",
        "left test result",
      ),
    },
    direction: { any: s("direction", "direction state") },
    asFoundPickup: { any: s("found pickup", "found pickup setting") },
    asFoundSetting: { any: s("found setting", "found time", "found setting time", "found") },
    asLeftPickup: { any: s("left pickup", "left pickup setting") },
    asLeftSetting: { any: s("left setting", "left time", "left setting time", "left") },
    trips: {
      any: s(
        "trip",
        "trip indication",
        "indication",
        "trip opening tripping",
        "opening tripping trip",
        "trip result",
        "opening tripping trip indication",
        "opening tripping trip result",
        "tripping trip indication",
      ),
    },
  },
  cable: {
    testVoltage,
    insulationRead: {
      ...insulationRead,
      any: [...insulationRead.any, ...s("resistance", "reading", "measured")],
    },
    sheathRead: {
      any: s("sheath", "sheath resistance", "sheath insulation", "sheath insulation resistance"),
    },
    sheathApplied: {
      any: s(
        "sheath",
        "sheath voltage",
        "sheath applied",
        "sheath voltage applied",
        "sheath voltage test",
        "sheath withstand",
      ),
    },
    sheathHeld: { any: s("sheath", "sheath held", "sheath time") },
    applied: {
      any: s(
        "voltage",
        "voltage applied",
        "withstand",
        "applied",
        "withstand voltage",
        "cable",
        "cable voltage",
        "withstand applied",
        "cable withstand",
        "cable voltage applied",
        "voltage test",
        "withstand test",
      ),
      usual: [1, 200],
    },
    minutes: {
      any: s(
        "held",
        "time",
        "time held",
        "time withstand",
        "applied time",
        "cable time",
        "time test",
      ),
      usual: [0.1, 1500],
    },
    current: leakage,
    discharge,
  },
  installation: { state },
  function: { state },
  dimensions: {
    reading: { any: s("measured", "reading", "level", "level measured"), usual: [0, 20000] },
  },
};

/** Words of a title after which its column holds no reading, unless what is looked for speaks of them too. */
export const TELLING: ReadonlySet<Sense> = new Set<Sense>([
  ...(["limit", "minimum", "maximum", "required", "expected", "corrected", "error"] as const),
  ...(["deviation", "mean", "result", "bolt", "grade", "nameplate", "number", "witness"] as const),
  ...(["polarization", "absorption", "ratio", "sheath", "alarm", "lockout", "openpole"] as const),
  ...(["humidity", "search", "rate", "found", "left", "restraint", "burden", "remark"] as const),
  ...(["winding", "marked", "again", "polarity", "discharge", "date", "by", "serial"] as const),
  ...(["torque", "barometer", "surface", "counter", "spring", "uv", "angle", "frequency"] as const),
  ...(["dropout", "pickup", "unit", "retest", "item", "setting", "multiple", "leakage"] as const),
  ...(["tev", "ultrasound", "background", "moisture", "purity", "products", "speed"] as const),
  ...(["travel", "overtravel", "rebound", "wipe", "bounce", "coil", "motor", "spill"] as const),
  ...(["loop", "tandelta", "like", "unlike", "endvolts", "firmware", "charger"] as const),
  ...(["thermostat", "lit", "demagnetized", "links"] as const),
  ...(["instrument", "fuse", "direction", "continuity", "ferrule", "temperature", "drop"] as const),
]);

/** Of these, what a file says of itself: worked out, judged or copied from a plate, and left out without a question. */
export const SAID_BY_FILE: ReadonlySet<Sense> = new Set<Sense>([
  ...(["limit", "minimum", "maximum", "required", "expected", "corrected", "error"] as const),
  ...(["deviation", "mean", "result", "bolt", "grade", "nameplate", "number", "witness"] as const),
  ...(["polarization", "absorption", "ratio", "setting", "multiple", "serial", "pdf"] as const),
]);

/** Words beside others that take nothing from them. */
export const NEUTRAL: ReadonlySet<Sense> = new Set<Sense>([
  "test",
  "measured",
  "reading",
  "phase",
  "place",
  "part",
  "operation",
  "state",
  "before",
  "after",
]);
