import { type Area, covers } from "../../sheets/area";
import type { Sheet } from "../book";
import { type HostObject, hostObject, properties } from "../hostObject";
import { guard } from "./format";

/** The data validation of areas; what is set replaces what stood on them. */
export function dataValidation(sheet: Sheet, areas: readonly Area[]): HostObject {
  const stands = () =>
    sheet.validations.find((validation) =>
      areas.every((area) => validation.areas.some((own) => covers(own, area))),
    );
  return hostObject({
    type: "DataValidation",
    ...properties(
      ["rule", "errorAlert", "prompt", "ignoreBlanks"],
      (name) => stands()?.properties[name] ?? null,
      (name, value) => {
        guard(sheet);
        let validation = stands();
        if (!validation) {
          validation = { areas: areas.map((area) => ({ ...area })), properties: {} };
          sheet.validations.push(validation);
        }
        validation.properties[name] = value;
      },
    ),
  });
}
