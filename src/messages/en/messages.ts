import { fields, lists } from "./fields";
import { findings } from "./findings";
import { pane } from "./pane";
import { report } from "./report";
import { survey } from "./survey";

/** English: every text that people read. */
export const messages = { ...pane, fields, lists, findings, report, survey };
