import { finds, keepsQuiet } from "../support";

finds("exempt-unexplained", [
  {
    name: "what does not apply, without a reason",
    spoil: (book) => book.set("GearInstallation", 2, "State", "Not applicable"),
    table: "GearInstallation",
    row: 2,
    header: "Remarks",
    weight: "query",
    says: /say in the remarks why it does not apply/,
  },
]);

keepsQuiet("exempt-unexplained", [
  [
    "a reason in the remarks",
    (book) => {
      book.set("GearInstallation", 2, "State", "Not applicable");
      book.set("GearInstallation", 2, "Remarks", "Panel without a circuit.");
    },
  ],
]);
