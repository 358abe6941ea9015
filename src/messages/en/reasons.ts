import type { InputName } from "../inputName";
import { engineering } from "./reasons/engineering";
import { functions } from "./reasons/functions";
import { quantities } from "./reasons/quantities";
import { standards } from "./reasons/standards";

/** Why readings, calculations and standards refuse; what the worksheet functions say as well. */
export const reasons = {
  /** What was given, as a sentence begins with it. */
  name: (input: InputName): string => input,
  quantities,
  engineering,
  standards,
  functions,
};
