import { execFileSync, spawn } from "node:child_process";
import { once } from "node:events";
import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeEach, expect, test } from "vitest";
import { readBytes, writeWhole } from "../../src/cli/files/files";

let folder = "";
const at = (...names: string[]) => join(folder, ...names);
const text = (name: string) => readFileSync(at(name), "utf8");

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "gearproof-whole-"));
});

test("a file is there as it was given, and nothing beside it", () => {
  writeWhole(at("book.xlsx"), "first");
  writeWhole(at("book.xlsx"), Uint8Array.of(50, 110, 100));
  expect(text("book.xlsx")).toBe("2nd");
  expect(readdirSync(folder)).toEqual(["book.xlsx"]);
});

test("a file keeps its mode", () => {
  writeFileSync(at("book.xlsx"), "old");
  chmodSync(at("book.xlsx"), 0o640);
  writeWhole(at("book.xlsx"), "new");
  expect(statSync(at("book.xlsx")).mode & 0o7777).toBe(0o640);
});

test("a link stays a link, and what it leads to is written; also where that is not there yet", () => {
  mkdirSync(at("shelf"));
  writeFileSync(at("shelf", "book.xlsx"), "old");
  symlinkSync(join("shelf", "book.xlsx"), at("link.xlsx"));
  symlinkSync(join("shelf", "new.xlsx"), at("ahead.xlsx"));
  for (const name of ["link.xlsx", "ahead.xlsx"]) {
    writeWhole(at(name), `through ${name}`);
    expect(lstatSync(at(name)).isSymbolicLink()).toBe(true);
  }
  expect(text("shelf/book.xlsx")).toBe("through link.xlsx");
  expect(text("shelf/new.xlsx")).toBe("through ahead.xlsx");
});

test("what is no ordinary file is neither written over nor read", () => {
  execFileSync("mkfifo", [at("pipe")]);
  expect(() => writeWhole(at("pipe"), "x")).toThrow(
    /pipe: is no ordinary file, and is not written/,
  );
  expect(() => writeWhole(folder, "x")).toThrow(/is no ordinary file/);
  expect(() => readBytes(at("pipe"))).toThrow(/pipe: is no ordinary file; give one/);
  expect(() => readBytes("/dev/zero")).toThrow(/is no ordinary file/);
  expect(() => writeWhole(at("nowhere", "book.xlsx"), "x")).toThrow(/there is no folder/);
});

test("whenever the program is killed, the old file or the new one is there, whole", async () => {
  writeFileSync(at("book.xlsx"), "o".repeat(3_000_000));
  const files = JSON.stringify(join(process.cwd(), "src/cli/files/files.ts"));
  writeFileSync(
    at("write.mts"),
    `import { writeWhole } from ${files};
    for (let turn = 0; turn < 1000; turn++) {
      writeWhole(process.argv[2], String(turn % 10).repeat(3_000_000));
      if (turn === 0) process.stdout.write("writing");
    }`,
  );
  for (const wait of [1, 7, 23, 60]) {
    const writer = spawn(process.execPath, ["--import", "tsx", at("write.mts"), at("book.xlsx")]);
    await once(writer.stdout, "data");
    await new Promise((waited) => setTimeout(waited, wait));
    writer.kill("SIGKILL");
    await once(writer, "exit");
    const found = text("book.xlsx");
    expect(found).toHaveLength(3_000_000);
    expect([...new Set(found)].join("")).toMatch(/^\d$/);
  }
}, 60_000);
