import * as z from "zod/mini";
import { type BoltSize, boltNamed, bolts, gradeNamed } from "../engineering/bolts";
import { type Curve, curves } from "../engineering/curves";
import { hasUnseen, mixesScripts } from "../quantities/shown";
import { CABLE_WAVES } from "../standards/cableTest";
import { measuringRange } from "./measuringRange";
import { must } from "./must";

/** Name of a part, or any other one line of text that is not blank. */
export const name = z.string().check(
  z.trim(),
  z.minLength(1, must("notBlank")),
  z.maxLength(80, must("short")),
  z.regex(/^[^\r\n\t]*$/, must("oneLine")),
  z.refine((text) => !hasUnseen(text), must("seenText")),
  z.refine((text) => !mixesScripts(text), must("oneAlphabet")),
);

/** The name that an entry had first, where it is called otherwise now: its readings are known by it. */
export const knownAs = z.optional(name);

export const positive = z.number().check(z.positive(must("aboveZero")));

/** A calendar day as ISO 8601 has it, e.g. 2026-11-25. */
export const day = z.iso.date(must("day"));

/** `main` and `tie` are what an incomer and a bus coupler are called in American practice. */
export const PANEL_TYPES = [
  "incomer",
  "main",
  "feeder",
  "bus coupler",
  "tie",
  "riser",
  "metering",
  "transformer feeder",
  "motor feeder",
] as const;

export const BREAKER_MEDIA = ["vacuum", "SF6"] as const;

/** The least and the most that the maker allows. */
const window = z
  .strictObject({ least: positive, most: positive })
  .check(z.refine(({ least, most }) => least < most, must("leastBelowMost")));

export const breaker = z.strictObject({
  designation: z._default(name, "Q0"),
  medium: z.enum(BREAKER_MEDIA),
  /** What stands in a breaker's place where that is no breaker: a contactor with fuses before it. */
  device: z.optional(z.literal("fused contactor")),
  ratedA: positive,
  /** Greatest contact resistance of a pole that the maker allows, µΩ. */
  contactLimit: z.optional(positive),
  document: z.optional(name),
  /** Operating times that the maker gives, ms. */
  closingMs: z.optional(window),
  openingMs: z.optional(window),
  /** Greatest time between the poles that the maker allows, ms; for one operation alone where it differs. */
  poleSpreadMs: z.optional(positive),
  closingSpreadMs: z.optional(positive),
  openingSpreadMs: z.optional(positive),
  /** Voltages at the coil that it must work between, V. */
  closingV: z.optional(window),
  openingV: z.optional(window),
  /** Control supply of this breaker, where it is another than the lineup's; and of its opening releases alone. */
  controlV: z.optional(positive),
  controlKind: z.optional(z.enum(["AC", "DC"])),
  openingControlV: z.optional(positive),
  openingControlKind: z.optional(z.enum(["AC", "DC"])),
  /** A second opening release with a circuit of its own. */
  secondTripCoil: z.optional(z.boolean()),
  /** Undervoltage release: it has to pick up by the one, and to drop out between the others, V. */
  undervoltageV: z.optional(
    z.strictObject({
      pickupMost: z.optional(positive),
      dropoutLeast: z.optional(positive),
      dropoutMost: z.optional(positive),
    }),
  ),
  /** Longest time that the motor takes to charge the spring, s. */
  chargingS: z.optional(positive),
  /** Vacuum: the maker's levels across the open contacts, kV; DC only where the maker allows it, and how far people keep, m. */
  interrupter: z.optional(
    z.strictObject({
      ackV: z.optional(positive),
      dckV: z.optional(positive),
      distanceM: z.optional(positive),
    }),
  ),
  /** SF6: pressures at 20 °C, MPa, as the maker's plate gives them. */
  gas: z.optional(
    z
      .strictObject({
        fillingMPa: positive.check(z.maximum(2)),
        /** Not given for a sealed compartment without a monitor. */
        alarmMPa: z.optional(positive.check(z.maximum(2))),
        lockoutMPa: z.optional(positive.check(z.maximum(2))),
        /** The most that it may be filled to. */
        maximumMPa: z.optional(positive.check(z.maximum(2))),
        /** How far a reading at 20 °C may lie below the filling pressure, and a contact from its point, kPa. */
        tolerancekPa: z.optional(positive),
        /** Accuracy class of the monitor, % of its span, and the span, MPa: its tolerance where none is given. */
        monitorClass: z.optional(positive),
        monitorSpanMPa: z.optional(positive),
        /** Sealed for life: it is not filled on site. */
        sealed: z.optional(z.boolean()),
        /** Whether these pressures, and the readings, are above the atmosphere or absolute. */
        pressure: z.enum(["gauge", "absolute"]),
      })
      .check(
        z.refine(
          ({ fillingMPa, alarmMPa = fillingMPa, lockoutMPa }) =>
            alarmMPa <= fillingMPa && (lockoutMPa ?? 0) < alarmMPa,
          must("gasOrder"),
        ),
      )
      .check(
        z.refine(
          ({ sealed, alarmMPa, lockoutMPa }) =>
            sealed || (alarmMPa !== undefined && lockoutMPa !== undefined),
          must("gasAlarms"),
        ),
      )
      .check(
        z.refine(
          ({ fillingMPa, maximumMPa }) => maximumMPa === undefined || fillingMPa <= maximumMPa,
          must("gasMaximum"),
        ),
      ),
  ),
});

/** One core of a current transformer, by its plate. */
export const currentCore = z.strictObject({
  knownAs,
  name,
  primaryA: positive,
  secondaryA: z.union([z.literal(1), z.literal(5)], must("oneOrFive")),
  /** Accuracy class as on the plate: 0.5, 0.2S, 5P, 10P, PX … */
  accuracy: name,
  burdenVA: z.optional(positive),
  /** Least burden that the class holds at, VA, where the plate gives one: 1 VA of small cores. */
  burdenLeastVA: z.optional(positive),
  /** Up to so many times rated current the class holds: rating factor, extended rating. */
  ratingFactor: z.optional(positive),
  accuracyLimitFactor: z.optional(positive),
  /** For class PX and the like: least knee-point voltage, V; greatest winding resistance at 75 °C, Ω. */
  kneeV: z.optional(positive),
  /** Greatest exciting current at the knee-point voltage, A. */
  excitingA: z.optional(positive),
  windingOhm: z.optional(positive),
  /** What the core encloses: one phase, or all three as a ground sensor does, which has one row. */
  encloses: z.optional(z.enum(["one phase", "all phases"])),
});

/** One winding of a voltage transformer, by its plate; phase-to-earth values for earthed ones. */
export const voltageWinding = z.strictObject({
  knownAs,
  name,
  primaryV: positive,
  secondaryV: positive,
  accuracy: name,
  burdenVA: z.optional(positive),
  burdenLeastVA: z.optional(positive),
  /** Rated voltage factor, up to which a protective class holds: 1.9. */
  voltageFactor: z.optional(positive),
  /** Resistance of its windings at 20 °C as the maker measured it, Ω. */
  primaryOhm: z.optional(positive),
  secondaryOhm: z.optional(positive),
});

/** A meter or transducer, and the points it is tested at. */
export const meter = z.strictObject({
  knownAs,
  designation: name,
  quantity: name,
  fullScale: positive,
  unit: name,
  /** Error allowed, in percent of what `accuracyOf` says; of full scale where nothing is said. */
  accuracy: positive,
  accuracyOf: z.optional(z.enum(["full scale", "reading"])),
  points: z._default(
    z.array(positive.check(z.maximum(120, must("percentage")))).check(z.minLength(1)),
    [25, 50, 100],
  ),
});

const CURVES = ["definite", ...(Object.keys(curves) as Curve[])] as const;
const BOLTS = Object.keys(bolts) as BoltSize[];

/** One element of a protection relay, as set. */
export const protectionElement = z.strictObject({
  knownAs,
  relay: name,
  element: name,
  /** Pick-up setting, in the unit given (A secondary, V secondary, …). */
  pickup: positive,
  unit: name,
  curve: z.enum(CURVES),
  /** Time multiplier or dial; for a definite time, the delay in s. */
  setting: z.number().check(z.nonnegative(must("notNegative"))),
  /** Ratio at which it resets, % of the pick-up: at least for what operates above its setting, at most for what operates below it. */
  resetPercent: z.optional(positive),
  /** Slope of a differential element, % of the restraining current. */
  slopePercent: z.optional(positive),
  /** Settings order with its revision. */
  document: z.optional(name),
  /** Multiples of pick-up that the operating time is tested at; below 1 for what operates below its setting. */
  multiples: z._default(
    z.array(z.number().check(z.positive(must("aboveZero")), z.maximum(20, must("atMost20")))),
    [2, 5, 10],
  ),
  /** Errors allowed: pick-up in %, time in % and in s, whichever is greater. */
  pickupPercent: z._default(positive, 5),
  timePercent: z._default(positive, 5),
  timeS: z._default(positive, 0.04),
});

export const cable = z.strictObject({
  knownAs,
  designation: name,
  /** Rated voltage U of the cable, or the highest voltage U_m of its system, phase to phase, kV. */
  ratedkV: positive,
  /** Its rated voltage to earth U0, kV, as on its sheath. */
  u0kV: z.optional(positive),
  /** Whether it is new, or in service and tested for maintenance. */
  purpose: z.optional(z.enum(["acceptance", "maintenance"])),
  /** Thickness of the oversheath, mm: its test voltage follows from it (IEC 60229). */
  sheathMm: z.optional(positive.check(z.maximum(20))),
  /** What it is insulated with: its dissipation factor is judged by that. */
  insulation: z.optional(z.enum(["XLPE", "filled PE", "EPR", "paper"])),
  /** Wave of the withstand test; without it the one that the basis gives a value for first. */
  wave: z.optional(z.enum(CABLE_WAVES)),
});

/** What is read off a breaker's travel curve, its contacts and its currents, by the name that its record has. */
export const MOTIONS = [
  "closing speed m/s",
  "opening speed m/s",
  "travel mm",
  "overtravel mm",
  "rebound mm",
  "contact wipe mm",
  "contact bounce ms",
  "close-open time ms",
  "closing coil current A",
  "opening coil current A",
  "motor current A",
] as const;

/** A quantity of a breaker's motion that the maker gives limits for. */
export const motion = z
  .strictObject({
    quantity: z.enum(MOTIONS),
    least: z.optional(positive),
    most: z.optional(positive),
    document: z.optional(name),
  })
  .check(
    z.refine(
      ({ least, most }) => least === undefined || most === undefined || least < most,
      must("leastBelowMost"),
    ),
  );

/** The main circuit of a panel from busbar to cable terminals, as the type test measured it, µΩ. */
export const circuit = z.strictObject({ typeTestMicroOhm: positive, document: z.optional(name) });

export const earthingSwitch = z.strictObject({
  designation: z._default(name, "Q8"),
  /** Greatest resistance of a pole that the maker allows, µΩ. */
  mostMicroOhm: z.optional(positive),
  document: z.optional(name),
});

/** Surge arresters of a panel, one a phase. */
export const arrester = z.strictObject({
  knownAs,
  designation: name,
  /** Least insulation resistance, MΩ, and greatest leakage current, mA, at the maker's test voltage, kV. */
  insulationMOhm: z.optional(positive),
  leakagekV: z.optional(positive),
  leakagemA: z.optional(positive),
  /** Whether it has a counter of discharges. */
  counter: z.optional(z.boolean()),
  document: z.optional(name),
});

/** A protection scheme that is proved from the primary side. */
export const scheme = z.strictObject({
  knownAs,
  designation: name,
  principle: z.enum(["differential", "restricted earth fault", "directional", "overcurrent"]),
  /** Greatest differential or spill current while a through current flows, % of that. */
  spillPercent: z.optional(positive),
  document: z.optional(name),
});

/** One parameter of a settings order. */
export const relaySetting = z.strictObject({
  knownAs,
  relay: name,
  parameter: name,
  /** As the order has it: a number, or a word. */
  value: name,
  unit: z.optional(name),
  /** How far a number may lie from it, %: for devices that set in steps. */
  tolerancePercent: z.optional(positive),
  document: z.optional(name),
});

/** A light sensor of an arc protection, the unit that it reports to and what that trips. */
export const arcSensor = z.strictObject({
  knownAs,
  designation: name,
  unit: name,
  trips: name,
  /** Longest time from light to the trip contact, ms. */
  mostMs: z.optional(positive),
  document: z.optional(name),
});

/** A battery that feeds control circuits. */
export const battery = z.strictObject({
  knownAs,
  designation: name,
  ratedV: positive,
  ratedAh: positive,
  /** Least capacity, % of rated, and least voltage at the end of the discharge, V. */
  capacityPercent: z.optional(positive.check(z.maximum(120))),
  endV: z.optional(positive),
  document: z.optional(name),
});

/** A space heater, by its plate. */
export const heater = z.strictObject({
  knownAs,
  designation: name,
  volts: positive,
  watts: positive,
});

/** Bolted joints of one sort in a panel. */
export const jointGroup = z.strictObject({
  knownAs,
  name,
  /** Size with coarse thread: M12, or 1/2 in inches. */
  bolt: z.pipe(z.pipe(z.string(), z.transform(boltNamed)), z.enum(BOLTS)),
  /** Property class or grade: 8.8, A2-70, SAE 5, silicon bronze … */
  grade: z._default(z.pipe(name, z.transform(gradeNamed)), "8.8"),
  /** The maker's torque, in N·m or lbf·ft; without it and without the project's nothing is accepted. */
  torqueNm: z.optional(positive),
  torqueLbfFt: z.optional(positive),
  document: z.optional(name),
});

export const instrument = z.strictObject({
  id: name,
  kind: name,
  serial: z.optional(name),
  calibrated: z.optional(day),
  due: z.optional(day),
  /** Greatest error of a reading, %: what the decision rule guards by. */
  accuracyPercent: z.optional(positive),
  /** What it measures within; a reading outside proves nothing. */
  ranges: z.optional(z.array(measuringRange).check(z.minLength(1))),
});
