import { contact } from "./contact";
import { controlWiring } from "./controlWiring";
import { earthing } from "./earthing";
import { gas } from "./gas";
import { insulation } from "./insulation";
import type { RecordKind } from "./kind";
import { timing } from "./timing";
import { torque } from "./torque";
import { withstand } from "./withstand";

/** Every record kind, in the order in which the work is done. A new kind is added here. */
export const KINDS: readonly RecordKind[] = [
  torque,
  earthing,
  contact,
  insulation,
  withstand,
  controlWiring,
  timing,
  gas,
];
