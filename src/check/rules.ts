import type { RuleId } from "../messages/messages";
import { CONCESSION_RULES } from "./concessions/concessions";
import type { Rule } from "./context";
import { afterAsBefore } from "./rules/afterAsBefore";
import { afterBeforeWithstand } from "./rules/afterBeforeWithstand";
import { againstSiblings } from "./rules/againstSiblings";
import { altitude } from "./rules/altitude";
import { beforePredecessor } from "./rules/beforePredecessor";
import { belowBackground } from "./rules/belowBackground";
import { builtEarlier } from "./rules/builtEarlier";
import { changedSinceIntake } from "./rules/changedSinceIntake";
import { checkedLate } from "./rules/checkedLate";
import { conditionOffDay } from "./rules/conditionOffDay";
import { curveTurns } from "./rules/curveTurns";
import { dateSwapped } from "./rules/dateSwapped";
import { dayOverfull } from "./rules/dayOverfull";
import { dewPoint } from "./rules/dewPoint";
import { digitPattern } from "./rules/digitPattern";
import { duplicatedRow } from "./rules/duplicatedRow";
import { energizedUnproven } from "./rules/energizedUnproven";
import { errorValue } from "./rules/errorValue";
import { evenSteps } from "./rules/evenSteps";
import { exemptUnexplained } from "./rules/exemptUnexplained";
import { fallenAfter } from "./rules/fallenAfter";
import { firstReadingGone } from "./rules/firstReadingGone";
import { future } from "./rules/future";
import { givenDiffers } from "./rules/givenDiffers";
import { halfTurn } from "./rules/halfTurn";
import { hiddenCell } from "./rules/hiddenCell";
import { hiddenList } from "./rules/hiddenList";
import { hiddenRow } from "./rules/hiddenRow";
import { holdNotReleased } from "./rules/holdNotReleased";
import { implausible } from "./rules/implausible";
import { inconclusive } from "./rules/inconclusive";
import { indexBelowOne } from "./rules/indexBelowOne";
import { inspectionOff } from "./rules/inspectionOff";
import { instrumentLapsed } from "./rules/instrumentLapsed";
import { instrumentMisfit } from "./rules/instrumentMisfit";
import { instrumentUnknown } from "./rules/instrumentUnknown";
import { keyChanged } from "./rules/keyChanged";
import { leftForTest } from "./rules/leftForTest";
import { limitDiffers } from "./rules/limitDiffers";
import { listOdd } from "./rules/listOdd";
import { lossFalls } from "./rules/lossFalls";
import { missingColumn } from "./rules/missingColumn";
import { missingCondition } from "./rules/missingCondition";
import { missingReading } from "./rules/missingReading";
import { missingRow } from "./rules/missingRow";
import { missingTrail } from "./rules/missingTrail";
import { namesDiffer } from "./rules/namesDiffer";
import { nameToCome } from "./rules/nameToCome";
import { nearCopy } from "./rules/nearCopy";
import { notAliveYet } from "./rules/notAliveYet";
import { notCalculated } from "./rules/notCalculated";
import { numberAsText } from "./rules/numberAsText";
import { offGroup } from "./rules/offGroup";
import { operationsUncounted } from "./rules/operationsUncounted";
import { outOfLimits } from "./rules/outOfLimits";
import { outOfOrder } from "./rules/outOfOrder";
import { outsideRange } from "./rules/outsideRange";
import { overVoltage } from "./rules/overVoltage";
import { ownFormula } from "./rules/ownFormula";
import { permitHolder } from "./rules/permitHolder";
import { permitLacking } from "./rules/permitLacking";
import { phasesApart } from "./rules/phasesApart";
import { pointsNowhere } from "./rules/pointsNowhere";
import { punchOpen } from "./rules/punchOpen";
import { readingFormula } from "./rules/readingFormula";
import { recordsContradict } from "./rules/recordsContradict";
import { registerOdd } from "./rules/registerOdd";
import { remarkAsked } from "./rules/remarkAsked";
import { remarkContradicts } from "./rules/remarkContradicts";
import { repairIncomplete } from "./rules/repairIncomplete";
import { repeatUnexplained } from "./rules/repeatUnexplained";
import { resultDisagrees } from "./rules/resultDisagrees";
import { risenAfter } from "./rules/risenAfter";
import { sameFile } from "./rules/sameFile";
import { samePhases } from "./rules/samePhases";
import { sameRun } from "./rules/sameRun";
import { setAside } from "./rules/setAside";
import { sheetsDiffer } from "./rules/sheetsDiffer";
import { sourcesDiffer } from "./rules/sourcesDiffer";
import { standsOut } from "./rules/standsOut";
import { statedDiffers } from "./rules/statedDiffers";
import { stepSkipped } from "./rules/stepSkipped";
import { stillOpen } from "./rules/stillOpen";
import { struckButThere } from "./rules/struckButThere";
import { thousandFold } from "./rules/thousandFold";
import { tooGood } from "./rules/tooGood";
import { twoPlaces } from "./rules/twoPlaces";
import { typedOver } from "./rules/typedOver";
import { unknownRuleWeight } from "./rules/unknownRuleWeight";
import { unknownWord } from "./rules/unknownWord";
import { unreadable } from "./rules/unreadable";
import { verdictByCondition } from "./rules/verdictByCondition";
import { versionsDiffer } from "./rules/versionsDiffer";
import { voidAfterRepair } from "./rules/voidAfterRepair";
import { withoutError } from "./rules/withoutError";
import { withstandBeforeInsulation } from "./rules/withstandBeforeInsulation";
import { withstandOnFailed } from "./rules/withstandOnFailed";
import { workUntold } from "./rules/workUntold";

/** Every check rule, in the order in which an auditor reads: out, missing, does not add up, out of order. */
export const RULES: readonly Rule[] = [
  outOfLimits,
  holdNotReleased,
  permitLacking,
  permitHolder,
  withstandBeforeInsulation,
  withstandOnFailed,
  voidAfterRepair,
  dewPoint,
  indexBelowOne,
  remarkContradicts,
  workUntold,
  leftForTest,
  pointsNowhere,
  changedSinceIntake,
  repeatUnexplained,
  firstReadingGone,
  resultDisagrees,
  limitDiffers,
  statedDiffers,
  givenDiffers,
  sourcesDiffer,
  builtEarlier,
  ownFormula,
  readingFormula,
  errorValue,
  notCalculated,
  missingColumn,
  missingRow,
  keyChanged,
  missingReading,
  stillOpen,
  unreadable,
  numberAsText,
  unknownWord,
  implausible,
  curveTurns,
  lossFalls,
  thousandFold,
  missingCondition,
  verdictByCondition,
  conditionOffDay,
  inconclusive,
  instrumentUnknown,
  instrumentLapsed,
  instrumentMisfit,
  registerOdd,
  outsideRange,
  missingTrail,
  nameToCome,
  exemptUnexplained,
  remarkAsked,
  afterBeforeWithstand,
  beforePredecessor,
  outOfOrder,
  inspectionOff,
  checkedLate,
  stepSkipped,
  energizedUnproven,
  notAliveYet,
  twoPlaces,
  dayOverfull,
  operationsUncounted,
  recordsContradict,
  struckButThere,
  fallenAfter,
  risenAfter,
  standsOut,
  offGroup,
  phasesApart,
  againstSiblings,
  halfTurn,
  versionsDiffer,
  belowBackground,
  sameRun,
  nearCopy,
  samePhases,
  afterAsBefore,
  tooGood,
  evenSteps,
  withoutError,
  sameFile,
  digitPattern,
  overVoltage,
  typedOver,
  duplicatedRow,
  hiddenList,
  hiddenRow,
  hiddenCell,
  setAside,
  future,
  dateSwapped,
  altitude,
  sheetsDiffer,
  namesDiffer,
  repairIncomplete,
  punchOpen,
  listOdd,
  unknownRuleWeight(() => RULE_IDS),
];

/** Every rule's name, by which concessions and the project's settings know it, in the order of the reference. */
export const RULE_IDS: ReadonlySet<RuleId> = new Set([
  ...RULES.map(({ id }) => id),
  ...CONCESSION_RULES,
]);
