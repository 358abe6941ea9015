import { describe, expect, it } from "vitest";
import { functions } from "../../src/functions/catalogue";

const call = (name: string, ...args: unknown[]) => functions[name]?.(...(args as never[]));

/** Facts of common practice (practice: no published source), asked as an engineer would on a sheet. */
describe("practice", () => {
  it("gives the busbar bolts of a metal-clad lineup at least 65 N·m", () => {
    const torque = call("BOLTTORQUE", "M12", "8.8");
    expect(call("JUDGE", torque, 65, "least")).toBe("Pass");
    expect(call("SOURCE", "BOLTTORQUE")).toContain("(practice)");
  });

  it("tests medium-voltage buses with 5 kV DC, and says that this is practice", () => {
    expect(call("IRTESTVOLTAGE", [[3.6], [7.2], [12], [24], [36]], "IEC")).toEqual(
      Array(5).fill([5000]),
    );
    expect(call("SOURCE", "IRTESTVOLTAGE", "IEC")).toContain("(practice)");
  });

  it("satisfies a standard's least test voltage with 5 kV, as a higher one does", () => {
    const least = call("IRTESTVOLTAGE", [[4.16], [12], [13.8], [34.5]], "NETA");
    expect(call("JUDGE", 5000, least, "least")).toEqual(Array(4).fill(["Pass"]));
  });

  it("accepts 2065 mm in front and 1800 mm behind against a drawing's least clearances", () => {
    // The drawing's values are invented.
    const measured = [[2065], [1800]];
    expect(call("JUDGE", measured, [[2000], [1500]], "least")).toEqual([["Pass"], ["Pass"]]);
    expect(call("JUDGE", measured, [[2100], [""]], "least")).toEqual([["Fail"], ["Inconclusive"]]);
  });

  it("asks for 3 K above the dew point, and for more than none", () => {
    expect(call("JUDGE", call("DEWMARGIN", 20, 22, 60), 3, "least")).toBe("Pass");
    expect(call("JUDGE", call("DEWMARGIN", 10, 22, 60), 3, "least")).toBe("Fail");
    expect(call("SOURCE", "DEWMARGIN")).toContain("(practice)");
  });
});
