import { contact } from "./contact";
import { controlWiring } from "./controlWiring";
import { dimensions } from "./dimensions";
import { documents } from "./documents";
import { earthing } from "./earthing";
import { functionTest } from "./function";
import { gas } from "./gas";
import { handling } from "./handling";
import { inspection } from "./inspection";
import { installation } from "./installation";
import { insulation } from "./insulation";
import type { RecordKind } from "./kind";
import { mechanism } from "./mechanism";
import { permits } from "./permits";
import { timing } from "./timing";
import { torque } from "./torque";
import { withstand } from "./withstand";

/** Every record kind, in the order in which the work is done. A new kind is added here. */
export const KINDS: readonly RecordKind[] = [
  documents,
  permits,
  handling,
  inspection,
  installation,
  dimensions,
  torque,
  earthing,
  contact,
  insulation,
  withstand,
  controlWiring,
  mechanism,
  timing,
  gas,
  functionTest,
];
