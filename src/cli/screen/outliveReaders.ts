/** A reader that has gone: of a pipe (`| head`), of a terminal that was closed. */
const GONE: ReadonlySet<string | undefined> = new Set(["EPIPE", "EIO", "ERR_STREAM_DESTROYED"]);

/**
 * Lets a command come to its end, files and exit code, where nobody reads what it says any longer.
 *
 * @param streams what it says things on
 */
export function outliveReaders(
  streams: readonly Pick<NodeJS.WriteStream, "on">[] = [process.stdout, process.stderr],
): void {
  for (const stream of streams)
    stream.on("error", (error: NodeJS.ErrnoException) => {
      if (!GONE.has(error.code)) throw error;
    });
}
