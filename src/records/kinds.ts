import { cable } from "./cable";
import { contact } from "./contact";
import { controlWiring } from "./controlWiring";
import { currentTransformer } from "./currentTransformer";
import { dimensions } from "./dimensions";
import { documents } from "./documents";
import { earthing } from "./earthing";
import { excitation } from "./excitation";
import { functionTest } from "./function";
import { gas } from "./gas";
import { handling } from "./handling";
import { indexCurve } from "./indexCurve";
import { inspection } from "./inspection";
import { installation } from "./installation";
import { insulation } from "./insulation";
import type { RecordKind } from "./kind";
import { mechanism } from "./mechanism";
import { metering } from "./metering";
import { permits } from "./permits";
import { protection } from "./protection";
import { timing } from "./timing";
import { torque } from "./torque";
import { voltageTransformer } from "./voltageTransformer";
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
  indexCurve,
  withstand,
  controlWiring,
  mechanism,
  timing,
  gas,
  currentTransformer,
  excitation,
  voltageTransformer,
  metering,
  protection,
  cable,
  functionTest,
];
