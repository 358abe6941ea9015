import { expect, test } from "vitest";
import { readTitle } from "../../../src/intake/words/readTitle";

test.each([
  ["Insulation resistance [GΩ]", { field: "resistance", unit: "GΩ" }],
  ["Conductor", { field: "position" }],
  // Headers of our own, as they are and with their unit in brackets.
  ["Conductor °C", { field: "temperature", unit: "°C" }],
  ["Conductor (°C)", { field: "temperature", unit: "°C" }],
  ["Temperature (°C)", { field: "temperature", unit: "°C" }],
  ["Test between", { field: "position" }],
  ["Applied (N·m)", { field: "applied", unit: "N·m" }],
  ["Applied torque (N·m)", { field: "applied", unit: "N·m" }],
  ["Applied (kV)", { field: "voltage", unit: "kV" }],
  ["Applied torque", {}],
  ["Primary injected (A)", { field: "primary", unit: "A" }],
  ["Secondary measured (A)", { field: "secondary", unit: "A" }],
  ["Colour of the door", {}],
])("%s", (title, said) => {
  expect(readTitle(title)).toEqual(said);
});
