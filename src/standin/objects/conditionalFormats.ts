import { type Area, overlap } from "../../sheets/cells/area";
import { type Format, newId, type Sheet, type StandInBook } from "../book";
import { HostError, type HostObject, hostObject, notFound, properties } from "../hostObject";
import { clearFormats } from "./copyLook";
import { guard } from "./format";

/** The conditional formats that reach into some areas. */
export function conditionalFormats(
  book: StandInBook,
  sheet: Sheet,
  areas: readonly Area[],
): HostObject {
  const here = () =>
    sheet.formats.filter((format) =>
      format.areas.some((area) => areas.some((other) => overlap(area, other))),
    );
  const find = (id: string) => {
    const format = here().find((format) => format.id === id && !format.unfindable);
    return format ? conditionalFormat(sheet, format) : null;
  };
  return hostObject({
    type: "ConditionalFormatCollection",
    items: () => here().map((format) => conditionalFormat(sheet, format)),
    item: (id) => find(String(id)),
    call: {
      add: (type: string) => {
        guard(sheet);
        const format: Format = {
          id: newId(book),
          areas: areas.map((area) => ({ ...area })),
          type,
          stopIfTrue: false,
          properties: type === "Custom" ? { "rule.formula": "" } : {},
        };
        sheet.formats.unshift(format);
        return conditionalFormat(sheet, format);
      },
      clearAll: () => {
        guard(sheet);
        for (const area of areas) clearFormats(sheet, area);
      },
      getItemOrNullObject: (id: string) => find(id),
      getItemAt: (index: number) => {
        const format = here()[index];
        if (!format || format.unfindable) throw notFound();
        return conditionalFormat(sheet, format);
      },
    },
  });
}

function conditionalFormat(sheet: Sheet, format: Format): HostObject {
  const bag = (type: string, path: string, names: readonly string[]) =>
    hostObject({
      type,
      ...properties(
        names,
        (name) => format.properties[path + name] ?? null,
        (name, value) => {
          guard(sheet);
          format.properties[path + name] = value;
        },
      ),
    });
  const look = () =>
    hostObject({
      type: "ConditionalRangeFormat",
      go: {
        fill: () => bag("ConditionalRangeFill", "format.fill.", ["color"]),
        font: () => bag("ConditionalRangeFont", "format.font.", ["color", "bold"]),
        borders: () =>
          hostObject({
            type: "ConditionalRangeBorderCollection",
            item: (edge) =>
              bag("ConditionalRangeBorder", `format.borders.${edge}.`, ["style", "color"]),
          }),
      },
    });
  const custom = () =>
    hostObject({
      type: "CustomConditionalFormat",
      go: { rule: () => bag("ConditionalFormatRule", "rule.", ["formula"]), format: look },
    });
  const cellValue = () =>
    hostObject({
      ...bag("CellValueConditionalFormat", "", ["rule"]),
      go: { format: look },
    });
  const only = (type: string, make: () => HostObject) => () => {
    if (format.type !== type)
      throw new HostError("InvalidOperation", `this conditional format is of type ${format.type}`);
    return make();
  };
  const orNull = (type: string, make: () => HostObject) => () =>
    format.type === type ? make() : null;
  return hostObject({
    type: "ConditionalFormat",
    id: format.id,
    get: {
      id: () => format.id,
      type: () => format.type,
      priority: () => sheet.formats.indexOf(format),
      stopIfTrue: () => format.stopIfTrue,
    },
    set: {
      stopIfTrue: (value) => {
        guard(sheet);
        format.stopIfTrue = value === true;
      },
    },
    go: {
      custom: only("Custom", custom),
      customOrNullObject: orNull("Custom", custom),
      cellValue: only("CellValue", cellValue),
      cellValueOrNullObject: orNull("CellValue", cellValue),
    },
    call: {
      delete: () => {
        guard(sheet);
        sheet.formats = sheet.formats.filter((other) => other !== format);
      },
    },
  });
}
