import type { Sheet } from "../book";
import { type HostObject, hostObject } from "../hostObject";

/** A sheet as it is known from a table on it: its id, its name, and whether it is protected. */
export const sheetIdentity = (sheet: Sheet): HostObject =>
  hostObject({
    type: "Worksheet",
    id: sheet.id,
    get: { id: () => sheet.id, name: () => sheet.name },
    go: { protection: () => sheetProtection(sheet) },
  });

export const sheetProtection = (sheet: Sheet): HostObject =>
  hostObject({ type: "WorksheetProtection", get: { protected: () => sheet.protected } });
