import type { Criterion, Source } from "./criterion";
import type { Rated, RatedTable } from "./table";

const practice = (place: string, note?: string): Source => ({
  document: "Common practice",
  edition: "",
  place,
  certainty: "practice",
  note,
});

/** DC test voltages up to a rated voltage, kV: 500 V, 1 kV, and 5 kV on medium-voltage circuits. */
export const testVoltagesByHabit: RatedTable<Rated & { readonly testV: number }, "least"> = {
  title: "Insulation resistance: test voltage beside IEC",
  acts: "least",
  source: practice("DC insulation test beside IEC 62271, one minute"),
  columns: { testV: "test V DC" },
  rows: [
    { ratedkV: 0.5, testV: 500 },
    { ratedkV: 1, testV: 1000 },
    { ratedkV: 72.5, testV: 5000 },
  ],
};

/** What a new polymer cable shows at least, MΩ, where no standard gives a value: less is looked into. */
export const cableTypical: Criterion = {
  value: 1000,
  source: practice("insulation resistance of a new polymer cable", "gigaohms are usual"),
};

/** Below this a cable is not fit to be connected, MΩ (a guide specification: 1000 V DC, 1 min, read). */
export const cableFloor: Criterion = {
  value: 2,
  source: {
    document: "A published guide specification for the site test of cables before connection",
    edition: "",
    place: "1000 V DC, 1 min",
    certainty: "read",
  },
};

/** What a secondary winding of an instrument transformer shows at least, MΩ: less is looked into. */
export const secondaryTypical: Criterion = {
  value: 10,
  source: practice("insulation resistance of a secondary winding, disconnected"),
};

/** The share of its required voltage that a cable test may exceed: above it the cable was overstressed. */
export const cableOverstress: Criterion = {
  value: 0.1,
  source: practice("a cable test above its required voltage"),
};

/** Resistance of a main contact or joint below which a figure was not read, or was read in another unit, µΩ. */
export const leastContact: Criterion = {
  value: 0.3,
  source: practice("poles have tens of microohms, joints some; a figure in milliohms lies below"),
};

/** A spot may read so much colder than what it is compared with, K: more, and the two were mixed up. */
export const coldest: Criterion = {
  value: -2,
  source: practice("how closely two spots are read by a camera"),
};

/** The drop in a current transformer's secondary winding at 20 times rated current, where its resistance is not known, as a fraction of the class voltage. */
export const unknownDrop: Criterion = {
  value: 0.2,
  source: practice(
    "the windings of relaying cores drop up to a fifth of the class voltage at 20 times rated current",
  ),
};

/** Share of the insulation before the withstand test below which the one after it is not passed without an explanation. */
export const fallenInsulation: Criterion = {
  value: 0.1,
  source: practice("insulation after the withstand test against the one before it"),
};

/** From so many times its minimum on, insulation swings by itself and a fall says nothing. */
export const farAboveMinimum: Criterion = {
  value: 10,
  source: practice("readings of insulation far above its minimum"),
};

/** Below how many K between air and dew point the temperature of the surface has to be recorded. */
export const nearSaturation: Criterion = {
  value: 5,
  source: practice("surfaces in a building are up to 5 K colder than its air"),
};

/** Least margin of a surface above the dew point for a test to be one on dry insulation, K. */
export const dryMargin: Criterion = {
  value: 1,
  source: practice(
    "a surface less than 1 K above the dew point is not told from a wet one: thermometers read to some 0.3 K, hygrometers to some 2 %",
  ),
};

/** How far below its filling pressure a compartment may read at 20 °C, as a fraction of the absolute pressure: what gauge, monitor and thermometer are uncertain by. */
export const gasShortfall: Criterion = {
  value: 0.02,
  source: practice("reading below filling pressure, of the absolute pressure"),
};

/** How far above its filling pressure a compartment may read at 20 °C, as a fraction of the absolute pressure; makers print one to five per cent. */
export const gasExcess: Criterion = {
  value: 0.05,
  source: practice("reading above filling pressure, of the absolute pressure"),
};

/** How far from the plate's pressures a monitor's contacts may work, as a fraction of the absolute pressure. */
export const gasContacts: Criterion = {
  value: 0.02,
  source: practice("contact points of a density monitor, of the absolute pressure"),
};

/** Least margin of an insulation's surface above the dew point, K; at 0 K or below the surface is wet. */
export const dewLimit: Criterion = { value: 3, source: practice("surface above dew point") };

/** How far from its point, in percent of full scale, what is applied to a meter may lie and still test that point. */
export const nearPoint: Criterion = {
  value: 5,
  source: practice("value applied to a meter, % of full scale from its point"),
};

/** How far from its rated current, in percent of it, a current transformer may be injected and count as injected at rated current: no set holds a current to the ampere. */
export const nearRated: Criterion = {
  value: 10,
  source: practice("injection near rated current, % of rated"),
};

/** How far the control voltage may stand from the rated one while operating times are measured, %: the maker's times are given at rated voltage. */
export const timingVoltage: Criterion = {
  value: 5,
  source: practice("control voltage while timing, ± of rated"),
};

/** How far an applied torque may stand from the required one, %, where the maker gives a single value and no range; the wrench's own error comes out of it. */
export const torqueTolerance: Criterion = {
  value: 10,
  source: practice("applied against required torque, ±"),
};

/** Ratio error beyond which an instrument transformer has another ratio than its plate says, whatever its class and whatever is applied, ±%: taps and wrong units lie further off, errors of a sound one nearer. */
export const grossRatio: Criterion = {
  value: 10,
  source: practice("ratio error of a wrong tap or a wrong transformer"),
};

/** Shortest time across open vacuum contacts, s: makers print one minute. */
export const interrupterSeconds: Criterion = {
  value: 60,
  source: practice("voltage across open vacuum contacts, one minute"),
};

/** Up to what part of the maker's level a vacuum interrupter may be tested: above it the maker is asked, and X-rays grow. */
export const interrupterOver: Criterion = {
  value: 1.05,
  source: practice("voltage across open vacuum contacts, part of the maker's level"),
};

/** The least direct voltage at which megohms of a medium-voltage transformer's primary prove anything, V. */
export const primaryTestVoltage: Criterion = {
  value: 1000,
  source: practice("insulation of a voltage transformer's primary, where the maker says no more"),
};

/** How far a winding's resistance may lie from what its maker measured, %, before it is looked into. */
export const windingSpread: Criterion = {
  value: 10,
  source: practice("winding resistance against the maker's, at 20 °C"),
};

/** How far what a relay or meter shows may lie from an injected primary current, %: set, transformer and relay together. */
export const injectionReading: Criterion = {
  value: 5,
  source: practice("current shown against current injected"),
};

/** Greatest voltage between like phases of two sources, % of that between unlike ones: a shift of 7° makes 7 %. */
export const phasingRatio: Criterion = {
  value: 20,
  source: practice("voltage between like phases, of that between unlike ones"),
};

/** From what part of the rated secondary voltage two unlike phases count as alive. */
export const phasingLive: Criterion = {
  value: 0.8,
  source: practice("voltage between unlike phases, part of the rated secondary voltage"),
};

/** How far a space heater's current may lie from its plate's, %. */
export const heaterCurrent: Criterion = {
  value: 15,
  source: practice("current of a space heater against its plate"),
};

/** Capacity of a battery, % of rated, that no sound one gives: above it current or hours were misread. */
export const capacityMost: Criterion = {
  value: 150,
  source: practice("capacity of a battery, % of rated"),
};

/** Up to how many times its end voltage a battery counts as discharged to the end. */
export const dischargedTo: Criterion = {
  value: 1.02,
  source: practice("battery at the end of its discharge, times the end voltage"),
};

/** Resistance up to which a breaker's pole is accepted by likeness alone, µΩ: makers print some tens. */
export const likePole: Criterion = {
  value: 200,
  source: practice("poles that are accepted by likeness alone, makers print 30 to 60 µΩ at 1200 A"),
};

/** The same of a busbar joint, µΩ: sound ones have some microohms. */
export const likeJoint: Criterion = {
  value: 100,
  source: practice("busbar joints that are accepted by likeness alone"),
};

/** A reading that falls below this share of the one before it while the voltage is held waits for an explanation. */
export const fallingIndex: Criterion = {
  value: 0.9,
  source: practice("insulation that falls while the voltage is held"),
};

/** Insulation up to which an index tells anything, MΩ: above it currents are too small to be compared. */
export const indexUpTo: Criterion = {
  value: 5000,
  source: practice("insulation above which absorption ratio and polarization index say nothing"),
};

/** Accuracy that an instrument is taken to have where nobody says it, %: what guarded acceptance then keeps from a limit. */
export const unknownAccuracy: Criterion = {
  value: 10,
  source: practice("an instrument of which no accuracy is given, ±"),
};

/** Current of low-resistance ohmmeters on bolted joints, A, where no standard prescribes one. */
export const ohmmeterCurrent: Criterion = {
  value: 10,
  source: practice("low-resistance ohmmeter on bolted joints, 10 A"),
};

/** Spread of contact resistance among poles or similar joints above which to investigate, as a fraction of the lowest: above it is a query, not a failure. */
export const contactSpread: Criterion = {
  value: 0.5,
  source: {
    document: "Breaker maker's bulletin",
    edition: "",
    place: "contact resistance among poles",
    certainty: "read",
    note: "asks for investigation, is not by itself a failure",
  },
};

/** How many times the lowest of its like an earthed part may resist before an explanation is asked for. */
export const bondSpread: Criterion = {
  value: 5,
  source: practice("earthed parts against their like, times the lowest"),
};

/** Resistance of an earthed part up to which its like says nothing of it, mΩ: straps and hinges of sound doors lie anywhere below. */
export const soundBond: Criterion = {
  value: 10,
  source: practice("an earthed part that needs no comparison with its like"),
};
