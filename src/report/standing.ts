import type { Standing } from "../check/matrix";

/** How each standing is shown: its word carries the meaning, the colour only repeats it. */
export const STANDING: Readonly<Record<Standing, { word: string; fill: string; ink: string }>> = {
  pass: { word: "Pass", fill: "#1f6f5c", ink: "#ffffff" },
  fail: { word: "Fail", fill: "#8c1d18", ink: "#ffffff" },
  inconclusive: { word: "Inconclusive", fill: "#5b4b9a", ink: "#ffffff" },
  missing: { word: "Missing", fill: "#ffd98a", ink: "#1b2a33" },
  none: { word: "No records", fill: "#e4e9eb", ink: "#1b2a33" },
};
