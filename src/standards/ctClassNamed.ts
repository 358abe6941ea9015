import { plateClass } from "./plateClass";
import { CT_CLASSES, type CtClassName, ctClasses } from "./transformerClasses";

/** Class of a core for protection, without its limit factor. */
const PROTECTIVE = /^(?:5PR?|10PR?|PXR?|TP[SXYZ]|[CKT]\d*|X)$/;

/**
 * The accuracy class that a plate names, in the standard's spelling, without limit factor, security factor and
 * burden; two that hold for one core are joined by a stroke.
 *
 * @example ctClassNamed("5p20 15 VA") // "5P"
 * @example ctClassNamed("0.5 FS10") // "0.5"
 * @example ctClassNamed("0.5/5P20") // "0.5/5P"
 */
export const ctClassNamed = (accuracy: string): string => plateClass(accuracy).names.join("/");

/** The classes of a plate, each with limits known here; undefined where one of them is not known. */
export const knownCtClasses = (accuracy: string): readonly CtClassName[] | undefined => {
  const names = plateClass(accuracy).names.map((name) => {
    const family = /^[CKT]\d+$/.test(name) ? name.slice(0, 1) : name;
    return CT_CLASSES.find((one) => one === family);
  });
  return names.length > 0 && names.every((name) => name !== undefined) ? names : undefined;
};

/**
 * Whether the class is one of the turns ratio, which the exciting current has no part in (PX, PXR, TPS).
 *
 * @example isOfTurns("PX") // true
 */
export const isOfTurns = (accuracy: string): boolean =>
  knownCtClasses(accuracy)?.some((name) => "turns" in ctClasses[name]) ?? false;

/** Voltage of a relaying class of IEEE C57.13: 200 of C200; undefined for other classes. */
export const relayingVolts = (accuracy: string): number | undefined => {
  const [, volts] = /^[CKT](\d+)$/.exec(ctClassNamed(accuracy)) ?? [];
  return volts === undefined ? undefined : Number(volts);
};

/**
 * Whether a class is for protection, so that its core has an excitation curve to be measured.
 *
 * @example isProtective("5P20") // true
 * @example isProtective("0.5S") // false
 */
export const isProtective = (accuracy: string): boolean =>
  plateClass(accuracy).names.some((name) => PROTECTIVE.test(name));
