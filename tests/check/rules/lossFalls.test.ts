import { filledPlan, SOUND } from "../../support/fill";
import { equipped, longLineup } from "../../support/lineups";
import { memoryBook } from "../../support/memoryBook";
import { finds, keepsQuiet } from "../support";

const TABLE = "GearDissipation";
const book = () =>
  memoryBook(
    filledPlan(
      { ...equipped(longLineup(2, { basis: "IEC" })), furtherRecords: [{ kind: "dissipation" }] },
      11,
      SOUND,
    ),
  );

finds("loss-falls", [
  {
    name: "a loss that is lower at the rated voltage than below it",
    book,
    spoil: (one) => {
      one.set(TABLE, 0, "At 0.5 U0 e-3", 1.75);
      one.set(TABLE, 0, "At U0 e-3", 1.32);
      one.set(TABLE, 0, "At 1.5 U0 e-3", 1.58);
    },
    table: TABLE,
    row: 0,
    header: "At U0 e-3",
    weight: "query",
    says: /"At U0 e-3" is 1\.32, and "At 0\.5 U0 e-3" at the lower voltage 1\.75/,
  },
]);

keepsQuiet("loss-falls", [
  [
    "a fall of less than a twentieth and 0.1e-3",
    (one) => {
      one.set(TABLE, 0, "At 0.5 U0 e-3", 1.4);
      one.set(TABLE, 0, "At U0 e-3", 1.32);
      one.set(TABLE, 0, "At 1.5 U0 e-3", 1.45);
    },
    book,
  ],
]);
