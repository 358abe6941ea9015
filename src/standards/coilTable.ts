import type { Source } from "./criterion";

/** Least and greatest voltage that a coil must work at. */
export interface CoilRange {
  readonly least: number;
  readonly most: number;
}

/** Parts of the rated supply voltage, IEC 62271-1 (memory). */
export const iecCoils: Readonly<Record<"closing" | "opening", Record<"AC" | "DC", CoilRange>>> = {
  closing: { AC: { least: 0.85, most: 1.1 }, DC: { least: 0.85, most: 1.1 } },
  opening: { AC: { least: 0.85, most: 1.1 }, DC: { least: 0.7, most: 1.1 } },
};

export const iecCoilSource: Source = {
  document: "IEC 62271-1",
  edition: "2017",
  place: "operating range of closing coils and shunt releases",
  certainty: "memory",
};

/**
 * Volts at rated DC control voltages, as three breaker makers' tables give them under ANSI/IEEE C37.06
 * (read). For closing at 48 V one maker has 36 V, the others 38 V; other editions differ, so that the
 * maker's plate decides.
 */
export const ansiCoils: Readonly<Record<"closing" | "opening", ReadonlyMap<number, CoilRange>>> = {
  closing: new Map([
    [48, { least: 38, most: 56 }],
    [125, { least: 100, most: 140 }],
    [250, { least: 200, most: 280 }],
  ]),
  opening: new Map([
    [48, { least: 28, most: 56 }],
    [125, { least: 70, most: 140 }],
    [250, { least: 140, most: 280 }],
  ]),
};

export const ansiCoilSource: Source = {
  document: "ANSI/IEEE C37.06",
  edition: "2000",
  place: "rated control voltages and their ranges",
  certainty: "read",
  note: "in three breaker makers' tables, edition from memory; the maker's plate decides",
};
