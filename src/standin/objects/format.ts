import { type Area, cellCount, covers, overlap } from "../../sheets/cells/area";
import type { Sheet } from "../book";
import { denied, type HostObject, hostObject, properties } from "../hostObject";

/** Refuses a change of anything but an unlocked cell's content on a protected sheet. */
export function guard(sheet: Sheet): void {
  if (sheet.protected) throw denied(`the sheet ${sheet.name}`);
}

/** Whether the cells of an area are locked: true, false, or null where some are and some are not. */
export function locked(sheet: Sheet, area: Area): boolean | null {
  if (!sheet.unlocked.some((open) => overlap(open, area))) return true;
  if (sheet.unlocked.some((open) => covers(open, area))) return false;
  if (cellCount(area) > 100_000) return null;
  for (let row = area.top; row <= area.bottom; row++)
    for (let column = area.left; column <= area.right; column++) {
      const cell = { top: row, left: column, bottom: row, right: column };
      if (!sheet.unlocked.some((open) => covers(open, cell))) return null;
    }
  return false;
}

const EDGES = [
  "EdgeTop",
  "EdgeBottom",
  "EdgeLeft",
  "EdgeRight",
  "InsideHorizontal",
  "InsideVertical",
];

/** The look of areas: every property set becomes a look of the sheet. */
export function formatObject(sheet: Sheet, areas: readonly Area[]): HostObject {
  const write = (path: string) => (property: string, value: unknown) => {
    guard(sheet);
    for (const area of areas) {
      const name = path + property;
      const same = sheet.looks.findIndex(
        (look) => look.property === name && covers(area, look.area),
      );
      if (same >= 0) sheet.looks.splice(same, 1);
      sheet.looks.push({ area, property: name, value });
    }
  };
  const unread = () => null;
  return hostObject({
    type: "RangeFormat",
    ...properties(
      ["horizontalAlignment", "verticalAlignment", "wrapText", "columnWidth", "rowHeight"],
      unread,
      write(""),
    ),
    go: {
      fill: () =>
        hostObject({ type: "RangeFill", ...properties(["color"], unread, write("fill.")) }),
      font: () =>
        hostObject({
          type: "RangeFont",
          ...properties(["name", "size", "bold", "color"], unread, write("font.")),
        }),
      borders: () =>
        hostObject({
          type: "RangeBorderCollection",
          item: (edge) =>
            EDGES.includes(String(edge))
              ? hostObject({
                  type: "RangeBorder",
                  ...properties(["style", "color", "weight"], unread, write(`borders.${edge}.`)),
                })
              : null,
        }),
      protection: () =>
        hostObject({
          type: "FormatProtection",
          get: {
            locked: () => {
              const all = areas.map((area) => locked(sheet, area));
              return all.every((one) => one === all[0]) ? all[0] : null;
            },
          },
        }),
    },
  });
}
