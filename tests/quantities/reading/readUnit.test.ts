import { expect, test } from "vitest";
import { readUnit } from "../../../src/quantities/reading/readUnit";
import { UNITS, type Unit } from "../../../src/quantities/units";

test.each(Object.keys(UNITS) as Unit[])("%s is itself", (unit) => {
  expect(readUnit(unit)).toEqual({ ok: true, value: unit });
});

// Spellings met on site: practice.
test.each<[string, Unit]>([
  ["GOHM", "GΩ"],
  ["G\u2126", "GΩ"],
  ["Mohms", "MΩ"],
  ["megaohm", "MΩ"],
  ["microhms", "µΩ"],
  ["kilohm", "kΩ"],
  ["K ohm", "kΩ"],
  ["mohm", "mΩ"],
  ["milliohms", "mΩ"],
  ["uOhm", "µΩ"],
  ["μΩ", "µΩ"],
  ["㏁", "MΩ"],
  ["Volts", "V"],
  ["KV", "kV"],
  ["amps", "A"],
  ["ua", "µA"],
  ["deg C", "°C"],
  ["℃", "°C"],
  ["% RH", "%"],
  ["N-m", "N·m"],
  ["mBar", "mbar"],
  ["KPA", "kPa"],
  ["secs", "s"],
  ["minutes", "min"],
  ["°F", "°F"],
  ["deg F", "°F"],
  ["psig", "psi"],
  ["ft-lb", "lbf·ft"],
  ["lbf·ft", "lbf·ft"],
  ["in-lbs", "lbf·in"],
  ["inches", "in"],
  ["kgf.m", "kgf·m"],
  ["kg·m", "kgf·m"],
  ["mkgf", "kgf·m"],
  ["kgf·cm", "kgf·cm"],
  ["daN.m", "daN·m"],
  ["kg/cm²", "kgf/cm²"],
  ["kgf/cm2", "kgf/cm²"],
  ["pi-lb", "lbf·ft"],
  ["lb-po", "lbf·in"],
  ["milliseconds", "ms"],
  ["msec", "ms"],
  ["Millisekunden", "ms"],
  ["milisegundos", "ms"],
  ["mégohms", "MΩ"],
  ["microhmios", "µΩ"],
  ["kilohms", "kΩ"],
  ["gigaohmios", "GΩ"],
  ["minutos", "min"],
])("%s is %s", (text, unit) => {
  expect(readUnit(text)).toEqual({ ok: true, value: unit });
});

test.each(["", "M", "S", "NA", "MV", "MA", "°R", "ohm·m", "MΩ/km", "toString"])(
  "%j is no unit",
  (text) => {
    expect(readUnit(text)).toMatchObject({ ok: false, kind: "wrong" });
  },
);

test("a bare prefix is one of resistance where resistance belongs", () => {
  expect(readUnit("G", "MΩ")).toEqual({ ok: true, value: "GΩ" });
  expect(readUnit("G", "kV")).toMatchObject({ ok: false });
});
