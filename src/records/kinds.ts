import { contact } from "./contact";
import { insulation } from "./insulation";
import type { RecordKind } from "./kind";
import { withstand } from "./withstand";

/** Every record kind, in the order in which the work is done. A new kind is added here. */
export const KINDS: readonly RecordKind[] = [contact, insulation, withstand];
