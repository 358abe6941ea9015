import { fields, lists } from "./fields";
import { findings } from "./findings";
import { handover } from "./handover";
import { hints } from "./hints";
import { pane } from "./pane";
import { report } from "./report";
import { survey } from "./survey";

/** English: every text that people read. */
export const messages = {
  language: "en",
  ...pane,
  fields,
  lists,
  findings,
  handover,
  hints,
  report,
  survey,
};
