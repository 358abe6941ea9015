const ERROR =
  /^#(N\/A|VALUE!|REF!|NAME\?|NUM!|DIV\/0!|NULL!|SPILL!|CALC!|FIELD!|GETTING_DATA|BLOCKED!|CONNECT!|UNKNOWN!|BUSY!)$/;

/** Whether a cell holds an error value, such as `#REF!`. */
export const isErrorValue = (cell: unknown): boolean =>
  typeof cell === "string" && cell.startsWith("#") && ERROR.test(cell);
