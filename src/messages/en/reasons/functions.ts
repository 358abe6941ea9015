/** Why a worksheet function refuses its arguments. `what` is one of `names`, `shown` a cell as it stands. */
export const functions = {
  of: (what: string, why: string) => `${what}: ${why}`,
  ofCell: (what: string, cell: number, why: string) => `${what}, cell ${cell}: ${why}`,
  /** A cell that cannot be shown in a line. */
  whatStands: "What stands here",
  blankPoint: "nothing stands here; every point needs one.",
  shapes: (shapes: readonly (readonly [rows: number, columns: number])[]) =>
    `Ranges must be of one shape: ${shapes.map(([rows, columns]) => `${rows} by ${columns}`).join(", ")}.`,
  noQuantity: (shown: string, unit: string) =>
    `${shown} is no quantity; a number in ${unit} belongs here.`,
  onlyBound: (shown: string, unit: string) =>
    `${shown} is only a bound; a number in ${unit} belongs here.`,
  noNumber: (shown: string) => `${shown} is not a number; write one such as 1.5.`,
  noRatio: (shown: string) => `${shown} is not a ratio; write one such as "400/5" or 80.`,
  noName: (shown: string) => `${shown} is no name; write it as the plate does.`,
  noWord: (shown: string, words: readonly string[]) =>
    `${shown} is not one of ${words.join(", ")}.`,
  ownCriteria:
    "the project's and the maker's own criteria stand on the sheet Criteria of the workbook; refer to the cell there, or write IEC or NETA.",
  noLimit: 'a limit belongs here: a number, or text such as "at least 5 GΩ" or "max 50 µΩ".',
  noFunction: (names: readonly string[]) =>
    `No function of that name; there are ${names.join(", ")}.`,
};
