import { expect, test } from "vitest";
import { columnFor } from "../../../src/intake/words/columnFor";
import { contact } from "../../../src/records/kinds/contact";
import { insulation } from "../../../src/records/kinds/insulation";
import { withstand } from "../../../src/records/kinds/withstand";

test.each([
  [contact, "current", "testCurrent"],
  [withstand, "current", "current"],
  [withstand, "voltage", "applied"],
  [insulation, "voltage", "testVoltage"],
  [insulation, "reading", "reading"],
  [withstand, "reading", "applied"],
  [contact, "resistance", "reading"],
  [withstand, "resistance", undefined],
  [insulation, "serial", "instrument"],
  [insulation, "air", "temperature"],
  [contact, "remarks", "remarks"],
  [contact, "maximum", undefined],
  [contact, "corrected", undefined],
  [contact, "object", undefined],
  [contact, "origin", undefined],
])("%o takes %s", (kind, field, id) => {
  expect(columnFor(kind, field)?.id).toBe(id);
});
