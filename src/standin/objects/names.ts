import { besideReference } from "../../sheets/besideTable";
import { readArea } from "../../sheets/cells/area";
import type { Name, Sheet, StandInBook } from "../book";
import { badArgument, type HostObject, hostObject, isHostObject } from "../hostObject";

/** The names of a workbook: each for one area of a sheet, with which it moves. */
export function nameCollection(book: StandInBook): HostObject {
  const all = () => book.sheets.flatMap((sheet) => sheet.names.map((name) => ({ sheet, name })));
  const find = (key: string) => {
    const found = all().find(({ name }) => name.name.toLowerCase() === key.toLowerCase());
    return found ? nameObject(found.sheet, found.name) : null;
  };
  return hostObject({
    type: "NamedItemCollection",
    items: () => all().map(({ sheet, name }) => nameObject(sheet, name)),
    item: (key) => find(String(key)),
    call: {
      add: (name: string, range: unknown) => {
        if (!/^[\p{L}_\\][\p{L}\d._\\]*$/u.test(name) || find(name))
          throw badArgument(`a name cannot be ${name}, or is it already`);
        const address = isHostObject(range) ? String(range.get?.address?.()) : "";
        const sheet = book.sheets.find((one) => address.startsWith(`${one.name}!`));
        const area = readArea(address);
        if (!sheet || !area) throw badArgument("the stand-in names ranges alone");
        const added = { name, area, visible: true };
        sheet.names.push(added);
        return nameObject(sheet, added);
      },
    },
  });
}

const nameObject = (sheet: Sheet, name: Name): HostObject =>
  hostObject({
    type: "NamedItem",
    id: name.name,
    get: {
      name: () => name.name,
      formula: () => {
        const { top, left, bottom, right } = name.area;
        return bottom < top || right < left
          ? "=#REF!"
          : `=${besideReference({ sheet: sheet.name, area: name.area })}`;
      },
      visible: () => name.visible,
    },
    set: {
      visible: (value) => {
        name.visible = value === true;
      },
    },
    call: {
      delete: () => {
        sheet.names = sheet.names.filter((other) => other !== name);
      },
    },
  });
