import { beyondLimit } from "./rules/beyondLimit";
import { calibration } from "./rules/calibration";
import { classError } from "./rules/classError";
import { conditions } from "./rules/conditions";
import { correction } from "./rules/correction";
import { dates } from "./rules/dates";
import { drops } from "./rules/drops";
import { duplicates } from "./rules/duplicates";
import { formulas } from "./rules/formulas";
import { likeness } from "./rules/likeness";
import { missingEntry } from "./rules/missingEntry";
import { missingReading } from "./rules/missingReading";
import { missingRow } from "./rules/missingRow";
import { namedLimits } from "./rules/namedLimits";
import { names } from "./rules/names";
import { oddError } from "./rules/oddError";
import { oddVerdict } from "./rules/oddVerdict";
import { otherLimit } from "./rules/otherLimit";
import { quotients } from "./rules/quotients";
import type { SurveyRule } from "./rules/rule";
import { series } from "./rules/series";
import { statedBound } from "./rules/statedBound";
import { stress } from "./rules/stress";
import { unitSlip } from "./rules/unitSlip";
import { verdicts } from "./rules/verdicts";
import { workedOut } from "./rules/workedOut";

/** What is looked for in a workbook of somebody's own, the worst first. */
export const SURVEY_RULES: readonly SurveyRule[] = [
  beyondLimit,
  namedLimits,
  statedBound,
  classError,
  oddError,
  missingReading,
  verdicts,
  oddVerdict,
  stress,
  calibration,
  dates,
  conditions,
  correction,
  workedOut,
  quotients,
  formulas,
  otherLimit,
  unitSlip,
  duplicates,
  names,
  likeness,
  series,
  drops,
  missingEntry,
  missingRow,
];
