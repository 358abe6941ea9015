import { expect, test } from "vitest";
import { titlesOf } from "../../../src/intake/words/titles";

const columns = (...titles: string[]) =>
  titlesOf([titles], [], { given: new Map() }).map(({ field, unit, says }) =>
    [field, unit, says?.position].filter((one) => one !== undefined).join(" "),
  );

// Letters of phases after former colours: common practice, no source.
test.each([
  [
    ["R (µΩ)", "Y (µΩ)", "B (µΩ)"],
    ["reading µΩ R", "reading µΩ Y", "reading µΩ B"],
  ],
  [
    ["A [GΩ]", "B [GΩ]", "C [GΩ]"],
    ["reading GΩ A", "reading GΩ B", "reading GΩ C"],
  ],
  [
    ["R", "Y", "B"],
    ["reading R", "reading Y", "reading B"],
  ],
  // A resistance, something else and a temperature.
  [
    ["R (MΩ)", "S (MPa)", "T (°C)"],
    ["resistance MΩ", "", "temperature °C"],
  ],
  // Only two of a scheme.
  [
    ["R (µΩ)", "Y (µΩ)"],
    ["resistance µΩ", ""],
  ],
  [["CB serial"], [""]],
  [["CT serial"], [""]],
])("%o", (titles, read) => {
  expect(columns(...titles)).toEqual(read);
});
