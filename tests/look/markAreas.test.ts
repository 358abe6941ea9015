import { expect, test } from "vitest";
import type { Finding } from "../../src/check/findings/finding";
import { marksOn } from "../../src/look/markAreas";

const at = (address: string, more: Partial<Finding> = {}): Finding => ({
  rule: "out-of-limits",
  weight: "stop",
  sheet: "Contacts",
  address,
  message: "invented",
  ...more,
});

test("what is conceded is marked no longer; what else is open in its row still is", () => {
  const concession = { reason: "INV-1 (invented)", name: "A. N. Other", date: "2026-11-20" };
  const table = { top: 3, left: 0, rows: 10, columns: 4 };
  const cells = (findings: readonly Finding[]) =>
    marksOn(findings, [table]).flatMap(({ whole, areas }) => (whole ? [] : areas));
  expect(cells([at("B6"), at("C6")])).toEqual(["B6", "C6"]);
  expect(cells([at("B6", { concession }), at("C6")])).toEqual(["C6"]);
  expect(marksOn([at("B6", { concession })], [table])).toEqual([]);
});
