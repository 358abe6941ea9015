import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** The outside judges: LibreOffice computes, openpyxl reads. */

const found = (commands: readonly string[], args: readonly string[]): string => {
  const command = commands.find((name) => spawnSync(name, args).status === 0);
  if (!command)
    throw new Error(
      `none of ${commands.join(", ")} is here; install Debian's libreoffice-calc and python3-openpyxl`,
    );
  return command;
};

export const office = () => found(["soffice", "libreoffice"], ["--version"]);
export const python = () => found(["/usr/bin/python3", "python3"], ["-c", "import openpyxl"]);

export const scratch = () => mkdtempSync(join(tmpdir(), "gearproof-judge-"));

/** Opens a file in LibreOffice and saves it as another sort; gives the new file's path. */
export function convert(file: string, to: "xlsx" | "pdf" | "csv", folder: string): string {
  execFileSync(
    office(),
    [
      `-env:UserInstallation=file://${folder}/profile`,
      "--headless",
      "--convert-to",
      to === "xlsx" ? "xlsx:Calc MS Excel 2007 XML" : to,
      "--outdir",
      folder,
      file,
    ],
    { stdio: "pipe", timeout: 300_000 },
  );
  return join(folder, (file.split("/").pop() ?? "").replace(/\.[^.]+$/, `.${to}`));
}

/** Every sheet's cells as openpyxl reads them: values, cached ones where there is a formula. */
export function openpyxl(file: string): Record<string, (string | number | boolean | null)[][]> {
  const script = `
import json, sys, datetime, openpyxl
book = openpyxl.load_workbook(sys.argv[1], data_only=True)
def cell(v):
    if isinstance(v, datetime.datetime):
        return (v - datetime.datetime(1899, 12, 30)).total_seconds() / 86400
    return v
json.dump({s.title: [[cell(c) for c in row] for row in s.iter_rows(values_only=True)] for s in book}, sys.stdout)
`;
  const folder = scratch();
  const path = join(folder, "dump.py");
  writeFileSync(path, script);
  return JSON.parse(execFileSync(python(), [path, file], { maxBuffer: 1 << 30, encoding: "utf8" }));
}

export const readJson = <T>(file: string): T => JSON.parse(readFileSync(file, "utf8")) as T;
