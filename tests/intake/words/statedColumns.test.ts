import { expect, test } from "vitest";
import { statedField } from "../../../src/intake/words/statedColumns";
import { contact } from "../../../src/records/kinds/contact";
import { torque } from "../../../src/records/kinds/torque";

test.each([
  [torque, "Specified (N·m)", undefined, "limit"],
  [torque, "Specified torque [N·m]", undefined, "limit"],
  [torque, "Specified (mm)", undefined, undefined],
  [contact, "Limit", "µΩ", "limit"],
  [contact, "Limit", undefined, undefined],
  [contact, "Limit (V)", "µΩ", undefined],
] as const)("$0.id: $1 in a block in $2", (kind, title, around, field) => {
  expect(statedField(kind, title, around)).toBe(field);
});
