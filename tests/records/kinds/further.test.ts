import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/records/evaluate";
import { FURTHER_KINDS, KINDS } from "../../../src/records/kinds";
import { checkLineup } from "../../../src/records/readLineup";
import { rowsOf } from "../../../src/records/rowsOf";
import { filledPlan, STRAYING } from "../../support/fill";
import { english } from "../../support/inWords";
import { equippedInFull, longLineup } from "../../support/lineups";

/** Kinds whose rows follow from what a lineup describes beside its usual equipment. */
const DESCRIBED = [
  "undervoltage",
  "motion",
  "arrester",
  "stability",
  "settings",
  "arcProtection",
  "battery",
  "heater",
];
const kindOf = (id: string) => {
  const kind = KINDS.find((one) => one.id === id);
  if (!kind) throw new Error(`no kind ${id}`);
  return kind;
};
const plain = longLineup(6);
const full = equippedInFull(longLineup(6));
const asked = { ...full, furtherRecords: FURTHER_KINDS.map((kind) => ({ kind })) };

describe.each(DESCRIBED)("%s", (id) => {
  test("has rows only where the lineup describes what it is about", () => {
    expect(rowsOf(kindOf(id), plain)).toEqual([]);
    expect(rowsOf(kindOf(id), full)).not.toEqual([]);
  });
});

describe.each(FURTHER_KINDS)("%s", (id) => {
  test("has rows only where the lineup asks for it", () => {
    expect(rowsOf(kindOf(id), full)).toEqual([]);
    expect(rowsOf(kindOf(id), asked)).not.toEqual([]);
  });
});

test.each(STRAYING)("sound rows of %s pass", (table) => {
  const kind = KINDS.find((one) => one.table === table);
  const sheet = filledPlan(asked, 1).sheets.find((one) => one.table === table);
  const rows = kind ? evaluate(kind, sheet?.rows ?? [], asked) : [];
  expect(rows.filter(({ result }) => result === "Pass").length).toBeGreaterThan(0);
});

// A case is the judgement of the trade; six of each at least, with more than one outcome and both bases.
test.each([...DESCRIBED, ...FURTHER_KINDS].filter((id) => id !== "undervoltage"))(
  "%s has six signed cases or more, on both bases",
  (id) => {
    const cases: { kind: string; expect: string; lineup: { basis: string } }[] = JSON.parse(
      readFileSync("tests/verdicts/cases/records.json", "utf8"),
    );
    const ours = cases.filter(({ kind }) => kind === id);
    expect(ours.length).toBeGreaterThanOrEqual(6);
    expect(new Set(ours.map(({ lineup }) => lineup.basis))).toEqual(new Set(["IEC", "NETA"]));
    for (const verdict of ["Fail", "Missing"])
      expect(ours.map((one) => one.expect)).toContain(verdict);
  },
);

test("a further record is one that there is, asked for once and not left out as well", () => {
  const errors = (more: object) => {
    const { instruments: _all, ...lineup } = longLineup(1);
    const read = checkLineup({ ...lineup, ...more });
    return read.ok ? [] : read.errors.map(({ path, message }) => `${path}: ${message(english)}`);
  };
  const phasing = { kind: "phasing" };
  expect(errors({ furtherRecords: [phasing] })).toEqual([]);
  expect(errors({ furtherRecords: [{ kind: "contact" }] })).toEqual([
    expect.stringMatching(/^furtherRecords\[0\]\.kind: must be one of mainCircuit, /),
  ]);
  expect(errors({ furtherRecords: [phasing, phasing] })).toEqual([
    expect.stringMatching(/^furtherRecords\[1\]\.kind: "phasing" is asked for twice/),
  ]);
  expect(
    errors({ furtherRecords: [phasing], leaveOut: [{ kind: "phasing", reason: "not ours" }] }),
  ).toEqual([expect.stringMatching(/^furtherRecords\[0\]\.kind: "phasing" is left out as well/)]);
});
