import { contact } from "./contact";
import { earthing } from "./earthing";
import { insulation } from "./insulation";
import type { RecordKind } from "./kind";
import { withstand } from "./withstand";

/** Every record kind, in the order in which the work is done. A new kind is added here. */
export const KINDS: readonly RecordKind[] = [earthing, contact, insulation, withstand];
