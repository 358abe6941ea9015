import { type Area, covers } from "../../sheets/cells/area";
import { EXCEL_LIMITS, type LimitName } from "../../sheets/plan/excelLimits";
import type { Sheet } from "../book";
import { badArgument, type HostObject, hostObject, properties } from "../hostObject";
import { guard } from "./format";

/** The texts of a validation, by property and part of it, that Excel limits. */
const LIMITED: Readonly<Record<string, Readonly<Record<string, LimitName>>>> = {
  prompt: { title: "promptTitle", message: "promptMessage" },
  errorAlert: { title: "errorTitle", message: "errorMessage" },
};

/** @throws {HostError} for a title, message or list that is longer than Excel takes */
function refuseLongTexts(name: string, value: unknown): void {
  const parts = (value ?? {}) as Readonly<Record<string, unknown>>;
  const list = name === "rule" ? (parts.list as { source?: unknown } | undefined) : undefined;
  const texts: [LimitName, unknown][] = [
    ...Object.entries(LIMITED[name] ?? {}).map(([part, limit]): [LimitName, unknown] => [
      limit,
      parts[part],
    ]),
    ["listSource", list?.source],
  ];
  for (const [limit, text] of texts)
    if (typeof text === "string" && text.length > EXCEL_LIMITS[limit].most)
      throw badArgument(`${limit} has more than ${EXCEL_LIMITS[limit].most} characters`);
}

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
        refuseLongTexts(name, value);
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
