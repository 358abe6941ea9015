import { type Reasons, reasonsFor } from "../messages/reasons";
import type { Refusal, Result } from "../quantities/result";

/** What Excel hands over or takes back in one cell: a number, text, a boolean, nothing, or an error. */
export type Cell = unknown;

/** An error as Excel shows it, with the sentence that stands behind it. */
export interface CellError {
  readonly code: string;
  readonly message?: string;
}

const CODES = { wrong: "#VALUE!", range: "#NUM!", none: "#N/A" } as const;

type HostError = new (code: never, message?: string) => CellError;

/** The host's own error where there is a host, else a plain object of the same shape. */
const error = (code: string, message?: string): CellError => {
  const Host = (globalThis as { CustomFunctions?: { Error?: HostError } }).CustomFunctions?.Error;
  return Host ? new Host(code as never, message) : { code, ...(message && { message }) };
};

/** A refusal as a cell: `wrong` #VALUE!, `range` #NUM!, `none` #N/A, each with its sentence. */
export const refused = ({ kind, say }: Refusal): CellError => error(CODES[kind], say(words()));

/** The reasons in the language that the host shows. */
const words = (): Reasons =>
  reasonsFor(
    (globalThis as { Office?: { context?: { displayLanguage?: string } } }).Office?.context
      ?.displayLanguage ?? "en",
  );

/** A result as a cell. */
export const toCell = (result: Result<unknown>): Cell =>
  result.ok ? result.value : refused(result);

/** The plain value inside a cell of a richer data type. */
export const plain = (cell: Cell): Cell =>
  isObject(cell) && "basicValue" in cell ? cell.basicValue : cell;

/** Nothing written: an empty cell, an argument left out, or text of spaces alone. */
export const isBlank = (cell: Cell): boolean =>
  cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");

const ERROR_TEXT = /^#(?:N\/A|DIV\/0!|[A-Z_]+[!?])$/;

/** The error that a cell carries, as an object or as text such as "#N/A", ready to hand on; else undefined. */
export const errorIn = (cell: Cell): Cell | undefined => {
  if (typeof cell === "string")
    return cell.startsWith("#") && ERROR_TEXT.test(cell) ? error(cell) : undefined;
  return isObject(cell) && typeof cell.code === "string" && cell.code.startsWith("#")
    ? cell
    : undefined;
};

const isObject = (cell: Cell): cell is Record<string, unknown> =>
  typeof cell === "object" && cell !== null;
