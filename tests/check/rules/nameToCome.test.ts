import { finds, keepsQuiet } from "../support";

const PERMITS = "GearPermits";

finds("name-to-come", [
  ...["TBA", "t.b.c.", "pending", "-", "xxx", "to follow", "N/A"].map(
    (word) =>
      ({
        name: `a permit numbered ${word}`,
        spoil: (book) => book.set(PERMITS, 1, "Permit number", word),
        table: PERMITS,
        row: 1,
        header: "Permit number",
        weight: "query" as const,
        says: /which identifies nothing/,
      }) satisfies Parameters<typeof finds>[1][number],
  ),
  ...["various", "ditto", '"', "verschiedene"].map(
    (word) =>
      ({
        name: `a permit held by ${word}`,
        spoil: (book) => book.set(PERMITS, 0, "Holder", word),
        table: PERMITS,
        row: 0,
        header: "Holder",
        weight: "query" as const,
        says: /which identifies nothing/,
      }) satisfies Parameters<typeof finds>[1][number],
  ),
  {
    name: "a permit held by somebody to be advised",
    spoil: (book) => book.set(PERMITS, 0, "Holder", "to be advised"),
    table: PERMITS,
    row: 0,
    header: "Holder",
    weight: "query",
    says: /"Holder" says "to be advised"/,
  },
]);

keepsQuiet("name-to-come", [
  ["a number", (book) => book.set(PERMITS, 1, "Permit number", "TBA-7")],
  ["a remark", (book) => book.set(PERMITS, 1, "Remarks", "pending")],
  ["nothing at all: said by another rule", (book) => book.set(PERMITS, 1, "Permit number", null)],
]);
