import type { Asked } from "./placement";

/** What is said of an export besides its text, and what the workbook knows. */
export interface ArrivalOptions {
  readonly instruments?: readonly { readonly id: string; readonly serial: string }[];
  readonly wave?: "AC" | "DC";
  /** The lineup's panels, of which an export may give the circuit's name. */
  readonly panels?: readonly { readonly designation: string; readonly name?: string }[];
  /** What a text of the export means here, by field: confirmed by the user. */
  readonly means?: Readonly<Partial<Record<Asked, Readonly<Record<string, string>>>>>;
}
