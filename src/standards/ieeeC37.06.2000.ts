import type { CoilRange, UndervoltageRange } from "./coil";
import type { NamedTable } from "./table";

const AC = {
  "120 AC": { least: 104, most: 127 },
  "240 AC": { least: 208, most: 254 },
} as const;
const named = <T>(operation: string, rows: Readonly<Record<string, T>>) =>
  Object.fromEntries(Object.entries(rows).map(([rated, row]) => [`${operation} ${rated}`, row]));

/**
 * Volts at rated control voltages, as breaker makers' tables give them under ANSI/IEEE C37.06 (read). For closing
 * at 48 V one maker has 36 V, the others 38 V; 90 V and 180 V for closing at 125 V and 250 V stand in some
 * (memory). Between the two nothing is proved; the maker's plate decides.
 */
export const coils: NamedTable<CoilRange> = {
  title: "Coils: operating range, V",
  source: {
    document: "ANSI/IEEE C37.06",
    edition: "2000",
    place: "rated control voltages and their ranges",
    certainty: "read",
    note: "in three breaker makers' tables, edition from memory; 90 V and 180 V for closing from memory; the maker's plate decides",
  },
  of: "coil, rated V",
  columns: { least: "least V", most: "most V", lowest: "least V in some" },
  rows: {
    ...named("closing", {
      "24 DC": { least: 19, most: 28 },
      "48 DC": { least: 38, most: 56, lowest: 36 },
      "125 DC": { least: 100, most: 140, lowest: 90 },
      "250 DC": { least: 200, most: 280, lowest: 180 },
      ...AC,
    }),
    ...named("opening", {
      "24 DC": { least: 14, most: 28 },
      "48 DC": { least: 28, most: 56 },
      "125 DC": { least: 70, most: 140 },
      "250 DC": { least: 140, most: 280 },
      ...AC,
    }),
  },
};

/** Volts at rated control voltages, as one breaker maker prints them (read). */
export const undervoltage: NamedTable<UndervoltageRange> = {
  title: "Undervoltage releases: operating range, V",
  source: {
    document: "ANSI/IEEE C37.06",
    edition: "2000",
    place: "undervoltage devices, as one breaker maker prints them",
    certainty: "read",
    note: "edition from memory; the maker's plate decides",
  },
  of: "rated V",
  columns: {
    pickupMost: "picks up by V",
    dropoutLeast: "drops out from V",
    dropoutMost: "drops out by V",
  },
  rows: {
    "24 DC": { pickupMost: 19, dropoutLeast: 7, dropoutMost: 14 },
    "48 DC": { pickupMost: 38, dropoutLeast: 15, dropoutMost: 29 },
    "125 DC": { pickupMost: 100, dropoutLeast: 38, dropoutMost: 75 },
    "250 DC": { pickupMost: 200, dropoutLeast: 75, dropoutMost: 150 },
    "120 AC": { pickupMost: 92, dropoutLeast: 35, dropoutMost: 69 },
    "240 AC": { pickupMost: 180, dropoutLeast: 69, dropoutMost: 140 },
  },
};
