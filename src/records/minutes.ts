/** The discharge that the cautions ask for takes four times as long as the test (common practice, no source). */
const DISCHARGE = 4;

/** How long insulation keeps its instrument that was held at direct voltage for so many minutes, its discharge included. */
export const chargedMinutes = (held: number): number => held * (1 + DISCHARGE);

/** Minutes of a duration in seconds that was recorded. */
export const secondsHeld = (cell: unknown): number => (typeof cell === "number" ? cell / 60 : 0);
