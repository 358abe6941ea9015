/** More sheets of one name than anybody keeps. */
const MANY = 20;

/** The names that a sheet of ours may have, in their order: its own, and what it goes by where that is somebody's. */
const namesFor = (sheet: string): string[] =>
  Array.from({ length: MANY }, (_, at) =>
    at === 0 ? sheet : `${sheet} (Gearproof${at === 1 ? "" : ` ${at}`})`,
  );

const sameName = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

/**
 * The name that a new sheet of ours gets in a workbook which may have a sheet of that name already.
 *
 * @param taken names of the sheets that are somebody's own; spreadsheets do not tell names apart by the case of their letters
 * @example freeSheetName("Contacts", ["contacts"]) // "Contacts (Gearproof)"
 */
export const freeSheetName = (sheet: string, taken: readonly string[]): string =>
  namesFor(sheet).find((name) => !taken.some((other) => sameName(other, name))) ?? sheet;

/** Whether a sheet of this name may be the one of ours. */
export const mayBeNamed = (sheet: string, name: string): boolean =>
  namesFor(sheet).some((one) => sameName(one, name));
