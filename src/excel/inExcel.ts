/** A way to run work in a request context, as `Excel.run` is. */
export type Run = <T>(work: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

/**
 * Runs work that sends all that it queues itself. What fails once the work has come to its end is the
 * client's own tidying up, and no failure of the work: it is answered all the same.
 *
 * @example inExcel(Excel.run, (context) => readExcel(context))
 */
export async function inExcel<T>(
  run: Run,
  work: (context: Excel.RequestContext) => Promise<T>,
): Promise<T> {
  let done: { readonly value: T } | undefined;
  try {
    return await run(async (context) => {
      done = { value: await work(context) };
      return done.value;
    });
  } catch (error) {
    if (done) return done.value;
    throw error;
  }
}
