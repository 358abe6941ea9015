import { commandLine } from "./commandLine";
import { pane } from "./pane";
import { report } from "./report";

/** English: every text that people read. */
export const messages = { ...pane, report, commandLine };
