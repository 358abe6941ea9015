import type { Source } from "./criterion";

/** Least and greatest voltage that a coil must work at. */
export interface CoilRange {
  readonly least: number;
  readonly most: number;
  /** A lower least voltage that another published table prints for the same coil. */
  readonly lowest?: number;
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
 * Volts at rated control voltages, as breaker makers' tables give them under ANSI/IEEE C37.06 (read). For closing
 * at 48 V one maker has 36 V, the others 38 V; 90 V and 180 V for closing at 125 V and 250 V stand in some
 * (memory). Between the two nothing is proved; the maker's plate decides.
 */
export const ansiCoils: Readonly<
  Record<"closing" | "opening", Record<"AC" | "DC", ReadonlyMap<number, CoilRange>>>
> = {
  closing: {
    DC: new Map([
      [24, { least: 19, most: 28 }],
      [48, { least: 38, most: 56, lowest: 36 }],
      [125, { least: 100, most: 140, lowest: 90 }],
      [250, { least: 200, most: 280, lowest: 180 }],
    ]),
    AC: new Map([
      [120, { least: 104, most: 127 }],
      [240, { least: 208, most: 254 }],
    ]),
  },
  opening: {
    DC: new Map([
      [24, { least: 14, most: 28 }],
      [48, { least: 28, most: 56 }],
      [125, { least: 70, most: 140 }],
      [250, { least: 140, most: 280 }],
    ]),
    AC: new Map([
      [120, { least: 104, most: 127 }],
      [240, { least: 208, most: 254 }],
    ]),
  },
};

export const ansiCoilSource: Source = {
  document: "ANSI/IEEE C37.06",
  edition: "2000",
  place: "rated control voltages and their ranges",
  certainty: "read",
  note: "in three breaker makers' tables, edition from memory; 90 V and 180 V for closing from memory; the maker's plate decides",
};

/** Undervoltage release: highest voltage to pick up at, and the range to drop out in. */
export interface UndervoltageRange {
  readonly pickupMost: number;
  readonly dropoutLeast: number;
  readonly dropoutMost: number;
}

/** Parts of the rated supply voltage, IEC 62271-1 (memory). */
export const iecUndervoltage: UndervoltageRange = {
  pickupMost: 0.85,
  dropoutLeast: 0.35,
  dropoutMost: 0.7,
};

/** Volts at rated control voltages, as one breaker maker prints them (read). */
export const ansiUndervoltage: Readonly<
  Record<"AC" | "DC", ReadonlyMap<number, UndervoltageRange>>
> = {
  DC: new Map([
    [24, { pickupMost: 19, dropoutLeast: 7, dropoutMost: 14 }],
    [48, { pickupMost: 38, dropoutLeast: 15, dropoutMost: 29 }],
    [125, { pickupMost: 100, dropoutLeast: 38, dropoutMost: 75 }],
    [250, { pickupMost: 200, dropoutLeast: 75, dropoutMost: 150 }],
  ]),
  AC: new Map([
    [120, { pickupMost: 92, dropoutLeast: 35, dropoutMost: 69 }],
    [240, { pickupMost: 180, dropoutLeast: 69, dropoutMost: 140 }],
  ]),
};

export const ansiUndervoltageSource: Source = {
  document: "ANSI/IEEE C37.06",
  edition: "2000",
  place: "undervoltage devices, as one breaker maker prints them",
  certainty: "read",
  note: "edition from memory; the maker's plate decides",
};

export const iecUndervoltageSource: Source = {
  document: "IEC 62271-1",
  edition: "2017",
  place: "undervoltage release: drops out from 70 % to 35 %, picks up at 85 %",
  certainty: "memory",
};
