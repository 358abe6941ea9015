import { describe, expect, it } from "vitest";
import { checked, drawSheet } from "./support";

const toldOf = (error: string, accuracy = "0.5", heading = "Voltage transformers, ratio") =>
  checked(
    [
      drawSheet(
        "Sheet",
        `
${heading}
Panel | Ratio | Primary V | Secondary V | Error % | Class
W1 | 6600/110 | 1000 | 16.67 | 0.1 | ${accuracy}
W2 | 6600/110 | 1000 | 16.67 | ${error} | ${accuracy}
W3 | 6600/110 | 1000 | 16.67 | -0.1 | ${accuracy}`,
      ),
    ],
    { ratedkV: 12, basis: "IEC" },
  ).findings.map(({ weight, rule, address }) => `${weight} ${rule} ${address}`);

describe("errors beyond the accuracy class", () => {
  // IEC 61869-3:2011: class 0.5 allows ±0.5 %, class 3P ±3 % at rated voltage (from memory).
  it("asks about a ratio error that the class does not allow", () => {
    expect(toldOf("0.6")).toEqual(["query survey-class E4"]);
    expect(toldOf("0.5")).toEqual([]);
    expect(toldOf("-2.9", "3P")).toEqual([]);
    expect(toldOf("-3.1", "3P")).toEqual(["query survey-class E4"]);
  });

  it("leaves it to a limit that the workbook states, and asks nothing of a class that it does not know", () => {
    expect(toldOf("0.6", "0.5", "Voltage transformers, ratio error max 1 %")).toEqual([]);
    expect(toldOf("7", "standard")).toEqual([]);
  });
});
