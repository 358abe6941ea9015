import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { refuseOverwriting } from "../../../src/cli/files/refuseOverwriting";

const folder = mkdtempSync(join(tmpdir(), "gearproof-outputs-"));
const at = (name: string) => join(folder, name);
writeFileSync(at("book.xlsx"), "read");
writeFileSync(at("page.html"), "there");
symlinkSync(at("book.xlsx"), at("link.xlsx"));
symlinkSync(at("page.html"), at("page-link.html"));
symlinkSync(folder, at("linked"));
mkdirSync(at("in"));

test.each<[string, string[], string[], boolean, string | undefined]>([
  ["new files", ["a.html", "b.xlsx"], ["book.xlsx"], false, undefined],
  ["a file that is there", ["page.html"], ["book.xlsx"], false, "page.html: already exists"],
  ["a file that is there, asked for", ["page.html"], ["book.xlsx"], true, undefined],
  ["what is read", ["book.xlsx"], ["book.xlsx"], false, "book.xlsx: is read by this command"],
  ["what is read, asked for", ["book.xlsx"], ["book.xlsx"], true, "is read by this command"],
  ["what is read, by another name", ["link.xlsx"], ["book.xlsx"], true, "is read by this command"],
  ["one file twice", ["a.html", "a.html"], [], true, "a.html: would be written twice"],
  ["one file, spelled twice", ["a.html", "in/../a.html"], [], true, "would be written twice"],
  ["one file, by a linked folder", ["a.html", "linked/a.html"], [], true, "would be written twice"],
  ["one file, by a link", ["page.html", "page-link.html"], [], true, "would be written twice"],
])("%s", (_what, outputs, inputs, overwrite, refused) => {
  const run = () => refuseOverwriting(outputs.map(at), inputs.map(at), overwrite);
  if (refused === undefined) expect(run).not.toThrow();
  else expect(run).toThrow(refused);
});
