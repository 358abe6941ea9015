/**
 * A curve from its lower end up: one that was taken from its upper end down, as a core is demagnetized on the way
 * (common practice), is turned round. Any other is as it was.
 *
 * @param volts rms, V
 * @param amps A, one for each voltage
 * @example upwards([200, 100], [0.02, 0.01]) // [[100, 200], [0.01, 0.02]]
 */
export const upwards = (
  volts: readonly number[],
  amps: readonly number[],
): readonly [volts: readonly number[], amps: readonly number[]] => {
  const falls =
    volts.length > 1 && volts.every((volt, at) => at === 0 || volt < (volts[at - 1] ?? 0));
  return falls ? [volts.toReversed(), amps.toReversed()] : [volts, amps];
};
