/**
 * Error limits of current transformers, IEC 61869-2 (read in a published handbook and in an article):
 * percent of rated current, ratio ±%, phase ±min where the class gives one. Own copy of the tests.
 */
export const CT: Readonly<Record<string, readonly (readonly [number, number, number?])[]>> = {
  "0.1": [
    [5, 0.4, 15],
    [20, 0.2, 8],
    [100, 0.1, 5],
    [120, 0.1, 5],
  ],
  "0.2": [
    [5, 0.75, 30],
    [20, 0.35, 15],
    [100, 0.2, 10],
    [120, 0.2, 10],
  ],
  "0.5": [
    [5, 1.5, 90],
    [20, 0.75, 45],
    [100, 0.5, 30],
    [120, 0.5, 30],
  ],
  "1": [
    [5, 3, 180],
    [20, 1.5, 90],
    [100, 1, 60],
    [120, 1, 60],
  ],
  "0.2S": [
    [1, 0.75, 30],
    [5, 0.35, 15],
    [20, 0.2, 10],
    [100, 0.2, 10],
    [120, 0.2, 10],
  ],
  "0.5S": [
    [1, 1.5, 90],
    [5, 0.75, 45],
    [20, 0.5, 30],
    [100, 0.5, 30],
    [120, 0.5, 30],
  ],
  "3": [
    [50, 3],
    [120, 3],
  ],
  "5": [
    [50, 5],
    [120, 5],
  ],
  "5P": [[100, 1, 60]],
  "10P": [[100, 3]],
};

/** Composite error, %, at the accuracy limit current, IEC 61869-2 (read). */
export const COMPOSITE: Readonly<Record<string, number>> = { "5P": 5, "10P": 10 };

/**
 * Error limits of voltage transformers, IEC 61869-3: 0.2, 0.5, 1 memory; 3P, 6P read in a handbook that
 * cites IEC 60044-2: class, from and to percent of rated voltage, ratio ±%, phase ±min.
 */
export const VT: readonly (readonly [string, number, number, number, number])[] = [
  ["0.2", 80, 120, 0.2, 10],
  ["0.5", 80, 120, 0.5, 20],
  ["1", 80, 120, 1, 40],
  ["3P", 5, 190, 3, 120],
  ["6P", 5, 190, 6, 240],
];
