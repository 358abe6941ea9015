import { execFile } from "node:child_process";

/** What a command came to. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line as a person does: a process of its own, real files, exit codes. */
export const run = (...args: string[]): Promise<Ran> =>
  new Promise((done) => {
    execFile(
      process.execPath,
      ["src/cli/gearproof.mjs", ...args],
      { maxBuffer: 1 << 28 },
      (error, out, err) => done({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
