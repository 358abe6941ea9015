import type { Sheet } from "../book";
import { type HostObject, hostObject } from "../hostObject";

/** A sheet as it is known from a table on it: by its id and name. */
export const sheetIdentity = (sheet: Sheet): HostObject =>
  hostObject({
    type: "Worksheet",
    id: sheet.id,
    get: { id: () => sheet.id, name: () => sheet.name },
  });
