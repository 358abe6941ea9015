import type { Rule } from "./context";
import { altitude } from "./rules/altitude";
import { dewPoint } from "./rules/dewPoint";
import { duplicatedRow } from "./rules/duplicatedRow";
import { exemptUnexplained } from "./rules/exemptUnexplained";
import { fallenAfter } from "./rules/fallenAfter";
import { future } from "./rules/future";
import { holdNotReleased } from "./rules/holdNotReleased";
import { implausible } from "./rules/implausible";
import { inconclusive } from "./rules/inconclusive";
import { instrument } from "./rules/instrument";
import { limitDiffers } from "./rules/limitDiffers";
import { missingColumn } from "./rules/missingColumn";
import { missingCondition } from "./rules/missingCondition";
import { missingReading } from "./rules/missingReading";
import { missingRow } from "./rules/missingRow";
import { missingTrail } from "./rules/missingTrail";
import { notCalculated } from "./rules/notCalculated";
import { afterBeforeWithstand, withstandBeforeInsulation } from "./rules/order";
import { outOfLimits } from "./rules/outOfLimits";
import { overVoltage } from "./rules/overVoltage";
import { resultDisagrees } from "./rules/resultDisagrees";
import { sheetsDiffer } from "./rules/sheetsDiffer";
import { standsOut } from "./rules/standsOut";
import { typedOver } from "./rules/typedOver";
import { unreadable } from "./rules/unreadable";

/** Every check rule, in the order in which an auditor reads: out, missing, does not add up, out of order. */
export const RULES: readonly Rule[] = [
  outOfLimits,
  holdNotReleased,
  withstandBeforeInsulation,
  dewPoint,
  resultDisagrees,
  limitDiffers,
  notCalculated,
  missingColumn,
  missingRow,
  missingReading,
  unreadable,
  implausible,
  missingCondition,
  inconclusive,
  instrument,
  missingTrail,
  exemptUnexplained,
  afterBeforeWithstand,
  fallenAfter,
  standsOut,
  overVoltage,
  typedOver,
  duplicatedRow,
  future,
  altitude,
  sheetsDiffer,
];
