import { CT_CLASSES, type CtClassName } from "./transformerClasses";

/** Classes that are told by turns ratio and knee point, and give no limit of ratio error (IEC 61869-2, memory). */
export const CLASSES_BY_KNEE = ["PX", "PXR"] as const;

/** Class of a core as its plate writes it, without the accuracy limit factor. */
const PROTECTIVE = /^(?:5P|10P|PXR?|TP[XYZ]|[CKTX]\d*)$/;

/**
 * The accuracy class that a plate names: the class alone of `5P20`, in the standard's spelling.
 *
 * @example ctClassNamed("5p20") // "5P"
 * @example ctClassNamed(" px ") // "PX"
 */
export const ctClassNamed = (accuracy: string): string => {
  const text = accuracy.trim().toUpperCase();
  return text.replace(/^(5P|10P)R?\d+$/, "$1");
};

/** The class where it is one whose limits of ratio error are known here. */
export const knownCtClass = (accuracy: string): CtClassName | undefined =>
  CT_CLASSES.find((name) => name.toUpperCase() === ctClassNamed(accuracy));

/**
 * Whether a class is for protection, so that its core has an excitation curve to be measured.
 *
 * @example isProtective("5P20") // true
 * @example isProtective("0.5S") // false
 */
export const isProtective = (accuracy: string): boolean => PROTECTIVE.test(ctClassNamed(accuracy));
