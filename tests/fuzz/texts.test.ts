import { runTargets } from "./runTargets";

runTargets(["an export", "a lineup", "a map file", "a file of words", "custom XML"]);
