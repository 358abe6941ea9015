import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import type { FoundRow } from "../rows/candidates";
import type { Lost } from "../rows/lost";
import type { RecordRows } from "../rows/recordRows";
import type { KnownPanel } from "../understand/devices";
import type { Entry } from "./lineReader";

/** A line that has found its row, with the cells that it has for it. */
export interface Arrival<T extends RecordRows> extends FoundRow<T> {
  readonly line: number;
  readonly cells: readonly Entry[];
  /** Serial day; with the time of day as its fraction where the line has that too. */
  readonly day?: number;
  /** Set where the file says that it was measured again. */
  readonly retest?: boolean;
  /** Date and time of day as a serial number, where the line has both. */
  readonly when?: number;
}

/** Is told of a line or cell that cannot be placed, and of the names that come nearest to one in it. */
export type Say = (line: number, reason: Said<Told>, suggestion?: Lost["suggestion"]) => void;

/** What the user has answered of an export, and what the workbook knows. */
export interface ArrivalOptions {
  readonly instruments?: readonly { readonly id: string; readonly serial?: string }[];
  readonly wave?: "AC" | "DC";
  /** The lineup's panels, of which an export may give the circuit's name, or that of a breaker or cable in it. */
  readonly panels?: readonly KnownPanel[];
  /** What a text of the export means here, by field or column of the records: confirmed by the user. */
  readonly means?: Readonly<Record<string, Readonly<Record<string, string>>>>;
}
