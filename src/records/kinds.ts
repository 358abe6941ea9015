import { cable } from "./cable";
import { contact } from "./contact";
import { controlWiring } from "./controlWiring";
import { currentTransformer } from "./currentTransformer";
import { earthing } from "./earthing";
import { excitation } from "./excitation";
import { gas } from "./gas";
import { indexCurve } from "./indexCurve";
import { insulation } from "./insulation";
import type { RecordKind } from "./kind";
import { metering } from "./metering";
import { protection } from "./protection";
import { timing } from "./timing";
import { torque } from "./torque";
import { voltageTransformer } from "./voltageTransformer";
import { withstand } from "./withstand";

/** Every record kind, in the order in which the work is done. A new kind is added here. */
export const KINDS: readonly RecordKind[] = [
  torque,
  earthing,
  contact,
  insulation,
  indexCurve,
  withstand,
  controlWiring,
  timing,
  gas,
  currentTransformer,
  excitation,
  voltageTransformer,
  metering,
  protection,
  cable,
];
