import { type ColumnSenses, s } from "./waysOf";

const state = { any: s("state", "result", "state result", "reading", "item state") };
const insulationRead = {
  any: s("insulation", "insulation resistance", "insulation measured", "resistance insulation"),
  usual: [0.1, 1e7],
} as const;

const factor = { any: s("", "tandelta", "mean", "tandelta mean", "measured", "reading") };

/** What titles of columns speak of, by record kind and id of column: kinds that not every project keeps. */
export const FURTHER_SENSES: ColumnSenses = {
  mainCircuit: {
    testCurrent: {
      any: s("current", "current test", "current applied", "test", "applied"),
      usual: [1, 1000],
    },
    reading: {
      any: s("resistance", "maincircuit", "maincircuit resistance", "measured", "reading"),
      usual: [0.5, 5000],
    },
    temperature: {
      any: s("temperature", "conductor", "conductor temperature", "air temperature", "air"),
      usual: [-30, 80],
    },
  },
  undervoltage: {
    pickup: { any: s("pickup", "pickup voltage", "uv pickup", "uv pickup voltage") },
    dropout: { any: s("dropout", "dropout voltage", "uv dropout", "uv dropout voltage") },
  },
  motion: {
    reading: { any: s("measured", "reading") },
  },
  interrupter: {
    applied: {
      any: s(
        "voltage",
        "voltage applied",
        "voltage test",
        "applied",
        "withstand",
        "withstand voltage",
        "test",
        "interrupter voltage",
        "interrupter",
      ),
      usual: [1, 100],
    },
    duration: { any: s("held", "time", "time held", "time test", "elapsed"), usual: [1, 7200] },
    current: { any: s("current", "leakage", "current leakage", "current measured") },
    polarity: { any: s("polarity") },
    discharge: { any: s("discharge", "discharge result", "withstand result") },
  },
  gasQuality: {
    moisture: {
      any: s("moisture", "gas moisture", "moisture measured", "humidity", "humidity gas"),
    },
    purity: { any: s("purity", "gas purity", "purity measured"), usual: [50, 100] },
    products: { any: s("products", "gas products") },
  },
  battery: {
    current: {
      any: s("current", "current discharge", "current applied", "discharge"),
      usual: [0.1, 1000],
    },
    hours: {
      any: s("held", "time", "time held", "time discharge", "discharge held"),
      usual: [0.05, 100],
    },
    endVolts: {
      any: s("endvolts", "endvolts voltage", "endvolts battery voltage"),
      usual: [5, 500],
    },
    earthAlarm: { any: s("earth alarm", "earth error alarm", "earth lead alarm") },
    chargerAlarm: { any: s("charger", "charger alarm") },
  },
  currentLoop: {
    loop: {
      any: s("loop", "loop resistance", "loop measured", "loop reading", "resistance"),
      usual: [0.001, 100],
    },
    earth: { any: s("earth", "lead") },
    demagnetized: { any: s("demagnetized", "demagnetized left") },
    links: { any: s("links") },
  },
  voltageWinding: {
    testVoltage: {
      any: s("voltage test", "voltage insulation test", "voltage insulation"),
      usual: [100, 15000],
    },
    primaryRead: {
      any: s("primary insulation", "primary insulation resistance", "insulation resistance"),
      usual: [0.1, 1e7],
    },
    temperature: { any: s("winding temperature", "temperature", "air temperature", "air") },
    windingP: {
      any: s("primary winding", "primary resistance", "primary winding resistance"),
      usual: [1, 1e6],
    },
    windingS: {
      any: s("secondary winding", "secondary resistance", "secondary winding resistance"),
      usual: [0.001, 100],
    },
  },
  arrester: {
    insulationRead,
    leakAt: {
      any: s("voltage", "voltage leakage", "voltage test", "voltage applied", "voltage current"),
      usual: [0.5, 100],
    },
    leakage: {
      any: s("leakage", "leakage current", "current", "current measured"),
      usual: [0.0001, 100],
    },
    earth: { any: s("lead", "earth", "earth result", "earth state", "earth continuity") },
    counts: { any: s("counter", "counter test", "counter state", "counter result") },
    counterBefore: { any: s("counter before", "counter found", "counter reading before") },
    counterAfter: { any: s("counter after", "counter left", "counter reading after") },
  },
  settings: {
    asFound: { any: s("found", "found setting") },
    asLeft: {
      any: s("left", "left setting", "reading", "measured", "readback", "setting readback"),
    },
    firmware: { any: s("firmware") },
  },
  stability: {
    injected: {
      any: s("applied", "primary", "primary current", "primary applied", "current applied"),
      usual: [0.01, 20000],
    },
    shown: { any: s("shown", "relay", "relay current", "shown relay", "relay measured") },
    spill: { any: s("spill", "spill current", "spill measured") },
    angle: { any: s("angle") },
  },
  arcProtection: {
    lit: { any: s("lit", "lit sensor", "lit result") },
    tripped: { any: s("breaker trip", "breaker opening tripping trip", "breaker result") },
    reading: {
      any: s("time", "trip time", "opening tripping trip time", "measured", "timing", "reading"),
      usual: [0.1, 500],
    },
  },
  dissipation: {
    low: { ...factor, ofU0: 0.5 },
    rated: { ...factor, ofU0: 1 },
    high: { ...factor, ofU0: 1.5 },
    deviation: { any: s("deviation", "tandelta deviation") },
  },
  heater: {
    supply: {
      any: s("voltage", "control voltage", "control", "voltage measured"),
      usual: [10, 500],
    },
    current: { any: s("current", "current measured", "heating current"), usual: [0.01, 50] },
    switches: { any: s("thermostat", "thermostat state", "thermostat result") },
  },
  phasing: {
    sameV: { any: s("like", "like voltage", "like phase voltage") },
    crossV: { any: s("unlike", "unlike voltage", "unlike phase voltage") },
  },
  rotation: { state },
  energization: { state },
  partialDischarge: {
    background: {
      any: s(
        "background",
        "background reading",
        "background tev",
        "background ultrasound",
        "background level",
      ),
    },
    reading: { any: s("reading", "measured", "pd", "pd level", "level", "tev", "ultrasound") },
  },
};
