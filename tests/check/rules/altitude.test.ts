import { expect, test } from "vitest";
import { longLineup } from "../../support/lineups";
import { ofRule, soundOf } from "../support";

const at = (altitudeM: number) => {
  const { ratings } = longLineup(2);
  return ofRule(soundOf(2, { ratings: { ...ratings, altitudeM } }).snapshot, "altitude");
};

test("a site above 1000 m is asked about once, with the factor of IEC 62271-1 (2000 m: 1.13, read)", () => {
  expect(at(2000)).toMatchObject([{ weight: "query", sheet: "Withstand", address: "A4" }]);
  expect(at(2000)[0]?.message).toMatch(/needs 1\.130\d* times .* Show from the maker's documents/);
});

test("nothing is said up to 1000 m, or where no withstand test is to be made", () => {
  expect(at(1000)).toEqual([]);
  const { ratings } = longLineup(2);
  const without = soundOf(2, {
    ratings: { ...ratings, altitudeM: 2000 },
    leaveOut: [{ kind: "withstand", reason: "Invented", document: "INV-7" }],
  });
  expect(ofRule(without.snapshot, "altitude")).toEqual([]);
});
