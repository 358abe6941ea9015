import { finds, keepsQuiet, rowOf, soundOf } from "../support";

const ENERGIZATION = "GearEnergization";
const RELEASE = "Release: by whom, on what permit or switching order, in the remarks";
const OWN = "Valve 7 locked, its key's holder in the remarks";
const book = () =>
  soundOf(2, {
    furtherRecords: [{ kind: "energization" }],
    checkItems: [{ kind: "function", item: OWN, document: "INV-7" }],
  });
const release = (one: ReturnType<typeof book>) => rowOf(one, ENERGIZATION, RELEASE);
const locked = (one: ReturnType<typeof book>) => rowOf(one, "GearFunction", "=K0002", OWN);
const named = () => {
  const one = book();
  for (const panel of ["=K0001", "=K0002"])
    one.set("GearFunction", rowOf(one, "GearFunction", panel, OWN), "Remarks", "shift engineer");
  return one;
};

finds("remark-asked", [
  {
    name: "a release without who released it",
    spoil: (one) => one.set(ENERGIZATION, release(one), "Remarks", null),
    table: ENERGIZATION,
    row: release(book()),
    header: "Remarks",
    weight: "query",
    says: /answered without the remark it requires/,
    book: named,
  },
  {
    name: "an item of the project's own that asks for it",
    spoil: (one) => one.set("GearFunction", locked(one), "Remarks", " "),
    table: "GearFunction",
    row: locked(book()),
    header: "Remarks",
    weight: "query",
    says: /Valve 7 locked/,
    book: named,
  },
]);

keepsQuiet("remark-asked", [
  [
    "an item that is not OK: said by another rule",
    (one) => {
      one.set(ENERGIZATION, release(one), "Remarks", null);
      one.set(ENERGIZATION, release(one), "State", "Not OK");
    },
    named,
  ],
  [
    "an item that was not answered",
    (one) => {
      for (const header of ["State", "Date", "Checked by", "Remarks"])
        one.set(ENERGIZATION, release(one), header, null);
    },
    named,
  ],
]);
