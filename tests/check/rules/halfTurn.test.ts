import { filledPlan, SOUND } from "../../support/fill";
import { longLineup } from "../../support/lineups";
import { type MemoryBook, memoryBook } from "../../support/memoryBook";
import { finds, keepsQuiet } from "../support";

const STABILITY = "GearStability";
const ANGLE = "Angle °";
const PRINCIPLES = ["differential", "differential", "directional"] as const;

/** Six points tried of three schemes: two differential, one directional. */
const book = () => {
  const lineup = longLineup(3);
  return memoryBook(
    filledPlan(
      {
        ...lineup,
        panels: lineup.panels.map((panel, at) => ({
          ...panel,
          schemes: [{ designation: "F1", principle: PRINCIPLES[at] ?? "differential" }],
        })),
      },
      11,
      SOUND,
    ),
  );
};
const angles = (one: MemoryBook, ...degrees: readonly number[]) => {
  for (const [row, angle] of degrees.entries()) one.set(STABILITY, row, ANGLE, angle);
};

finds(
  "half-turn",
  [
    [0.5, 180, 0.3, 0.6, 0.4, 180],
    [-2, 171, 357, 1, 3, -179],
  ].map((degrees) => ({
    name: `one reversed among ${degrees.join("°, ")}°`,
    book,
    spoil: (one: MemoryBook) => angles(one, ...degrees),
    table: STABILITY,
    row: 1,
    header: ANGLE,
    weight: "query" as const,
    says: /4 other rows have about -?\d/,
  })),
);

keepsQuiet("half-turn", [
  ["a current tried in reverse", (one) => angles(one, 0.5, 0.4, 0.3, 0.6, 0.4, 180), book],
  ["angles that agree across zero", (one) => angles(one, 359, 0.4, -3, 2, 358, 180), book],
  [
    "a word of why it is so",
    (one) => {
      angles(one, 0.5, 180, 0.3, 0.6, 0.4, 180);
      one.set(STABILITY, 1, "Remarks", "relay counts the second end the other way");
    },
    book,
  ],
  ["angles that lie anywhere", (one) => angles(one, 30, 210, 120, 300, 80, 10), book],
]);
