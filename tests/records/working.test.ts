import { expect, test } from "vitest";
import { evaluate } from "../../src/records/evaluate";
import { figure } from "../../src/records/figure";
import { KINDS } from "../../src/records/kinds";
import { contact } from "../../src/records/kinds/contact";
import { earthing } from "../../src/records/kinds/earthing";
import { insulation } from "../../src/records/kinds/insulation";
import { torque } from "../../src/records/kinds/torque";
import { withstand } from "../../src/records/kinds/withstand";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";
import { rowOf, workingOf } from "../support/rowOf";

const lineup = longLineup(2, { withstand: { wave: "AC", seconds: 60, gapM: 0.16 } });
const plan = filledPlan(lineup, 21);

test.each(KINDS.map((kind) => [kind.id, kind] as const))(
  "%s: every computed number ends its own working",
  (_id, kind) => {
    const rows = plan.sheets.find(({ table }) => table === kind.table)?.rows ?? [];
    const computed = kind.columns.filter(({ role }) => role === "computed");
    for (const row of evaluate(kind, rows, lineup))
      for (const { id, working, header } of computed) {
        const value = row[id];
        // A reading in its own unit, and a factor that the project does not ask for, are not worked out.
        if (typeof value !== "number" || header === "R MΩ") continue;
        const shown = header === "Above lowest" ? value * 100 : value;
        expect(working?.(row, lineup), `${kind.id} ${id}`).toContain(`${figure(shown)}`);
      }
  },
);

// 1200 MΩ at 35 °C, oil: × 2.80 = 3360 MΩ at 20 °C (worked example to ANSI/NETA table 100.14, read).
test("insulation: the published example, written out", () => {
  const oil = longLineup(1, { insulation: { correction: "oil", baseC: 20 } });
  const row = rowOf(insulation, oil, {
    reading: "1.2 GΩ",
    temperature: 35,
    r30s: 1000,
    r10min: 3000,
  });
  expect(workingOf(insulation, "corrected", row, oil)).toBe(
    "1200 MΩ × 2.8 (oil, 35 °C to 20 °C) = 3360 MΩ",
  );
  expect(workingOf(insulation, "absorption", row, oil)).toBe("1200 MΩ ÷ 1000 MΩ = 1.2");
  expect(workingOf(insulation, "polarization", row, oil)).toBe("3000 MΩ ÷ 1200 MΩ = 2.5");
});

test("an over-range reading stays a bound in the working; what cannot be worked out says nothing", () => {
  const of = (reading: string) =>
    workingOf(
      insulation,
      "corrected",
      rowOf(insulation, lineup, { reading, temperature: 20 }),
      lineup,
    );
  expect(of("> 2 TΩ")).toBe("> 2000000 MΩ × 1 (solid, 20 °C to 20 °C) = > 2000000 MΩ");
  expect(of("OL")).toBe("");
});

// 1.21 at 20 °C is 1.472 at 75 °C, copper (published example, read).
test("contact, earthing, torque, withstand", () => {
  const pole = rowOf(contact, lineup, { reading: 1.472, temperature: 75 });
  expect(workingOf(contact, "corrected", pole, lineup)).toMatch(
    /^1\.472 µΩ × \(234\.5 \+ 20\) ÷ \(234\.5 \+ 75\) = 1\.210\d+ µΩ$/,
  );
  const part = rowOf(earthing, lineup, { testCurrent: 30, reading: 3 });
  expect(workingOf(earthing, "resistance", part, lineup)).toBe("3 V ÷ 30 A × 1000 = 100 mΩ");
  const joint = rowOf(torque, lineup, { applied: 63 });
  expect(workingOf(torque, "deviation", joint, lineup)).toBe("(63 N·m ÷ 60 N·m − 1) × 100 = 5 %");
  const plain = longLineup(1);
  const tested = rowOf(withstand, plain, {});
  expect(workingOf(withstand, "required", tested, plain)).toBe("27 kV × 1 = 27 kV");
});
