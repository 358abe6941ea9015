import type { Standing } from "../check/progress/matrix";
import type { Verdict } from "../standards/judge";

/** The colours of each standing; its word carries the meaning, the colour only repeats it. */
export const STANDING: Readonly<Record<Standing, { fill: string; ink: string }>> = {
  pass: { fill: "#1f6f5c", ink: "#ffffff" },
  fail: { fill: "#8c1d18", ink: "#ffffff" },
  inconclusive: { fill: "#5b4b9a", ink: "#ffffff" },
  missing: { fill: "#ffd98a", ink: "#1b2a33" },
  open: { fill: "#ffffff", ink: "#1b2a33" },
  none: { fill: "#e4e9eb", ink: "#1b2a33" },
};

/** The standing that a verdict is shown as. */
export const standingKey = (verdict: Verdict): Standing =>
  verdict === "Not required" ? "none" : (verdict.toLowerCase() as Standing);
