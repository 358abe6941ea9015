/** Where screenshots go, to be looked at. */
export const SHOTS = "out/screenshots";
