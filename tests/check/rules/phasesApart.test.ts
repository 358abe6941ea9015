import { CONTACT, cellOf, finds, keepsQuiet, rowOf, soundlyEquipped } from "../support";

const CABLES = "GearCable";
const VTS = "GearVoltageTransformers";
const CURRENT = "Current mA";
const INSULATION = "Insulation MΩ";
const CTS = "GearCurrentTransformers";
const WINDING = "Rct Ω";
const BURDEN = "Burden VA";

/** Three phases at so much. */
const phases = (
  book: ReturnType<typeof soundlyEquipped>,
  table: string,
  header: string,
  ...values: readonly number[]
) => {
  const row = rowOf(book, table, "=K0002");
  for (const [at, value] of values.entries()) book.set(table, row + at, header, value);
};
const rowAt = (table: string, at: number) => rowOf(soundlyEquipped(), table, "=K0002") + at;
/** A charging current as the cables of the sound workbook draw it. */
const usual = Number(cellOf(soundlyEquipped(), CABLES, 0, CURRENT).value);

finds("phases-apart", [
  {
    name: "a cable's phase that draws ten times what its others draw",
    spoil: (book) => phases(book, CABLES, CURRENT, usual, 10 * usual, usual),
    table: CABLES,
    row: rowAt(CABLES, 1),
    header: CURRENT,
    weight: "query",
    says: /and the middle of the other phases is .* mA/,
    book: soundlyEquipped,
  },
  {
    name: "a cable's phase whose insulation is a tenth of its others'",
    spoil: (book) => phases(book, CABLES, INSULATION, 2300, 30_000, 31_000),
    table: CABLES,
    row: rowAt(CABLES, 0),
    header: INSULATION,
    weight: "query",
    says: /and the middle of the other phases is .* MΩ/,
    book: soundlyEquipped,
  },
  {
    name: "a transformer's winding that resists half as much again",
    spoil: (book) => phases(book, CTS, WINDING, 4.6, 2.8, 2.9),
    table: CTS,
    row: rowAt(CTS, 0),
    header: WINDING,
    weight: "query",
    says: /"Rct Ω" is 4.6 Ω, and the middle of the other phases is 2.85 Ω/,
    book: () => soundlyEquipped(6),
  },
  {
    name: "a burden of a tenth",
    spoil: (book) => phases(book, VTS, BURDEN, 25.1, 23.9, 2.4),
    table: VTS,
    row: rowAt(VTS, 2),
    header: BURDEN,
    weight: "query",
    says: /"Burden VA" is 2.4 VA, and the middle of the other phases is 24.5 VA/,
    book: soundlyEquipped,
  },
  {
    name: "a pole that resists less than half of its others",
    spoil: (book) => phases(book, CONTACT, "R µΩ", 32.1, 14.2, 33),
    table: CONTACT,
    row: rowAt(CONTACT, 1),
    header: "R µΩ",
    weight: "query",
    says: /14\.2 µΩ, and the middle of the other phases is 32\.[56] µΩ/,
    book: soundlyEquipped,
  },
  {
    name: "a cable's phase that draws a ninth of what its others draw",
    spoil: (book) => phases(book, CABLES, CURRENT, usual, usual / 9, usual),
    table: CABLES,
    row: rowAt(CABLES, 1),
    header: CURRENT,
    weight: "query",
    says: /Was the lead on, and the whole phase in/,
    book: soundlyEquipped,
  },
]);

keepsQuiet("phases-apart", [
  [
    "insulation within a decade",
    (book) => phases(book, CABLES, INSULATION, 4000, 28_000, 24_000),
    soundlyEquipped,
  ],
  [
    "windings of 2.4, 2.6 and 2.9 Ω",
    (book) => phases(book, CTS, WINDING, 2.4, 2.6, 2.9),
    soundlyEquipped,
  ],
  ["burdens of 45, 78 and 60 VA", (book) => phases(book, VTS, BURDEN, 45, 78, 60), soundlyEquipped],
  [
    "currents of 0.56, 1.16 and 1.36 mA",
    (book) => phases(book, CABLES, CURRENT, 0.56, 1.16, 1.36),
    soundlyEquipped,
  ],
  [
    "a current of a quarter",
    (book) => phases(book, CABLES, CURRENT, usual, usual / 3.9, usual),
    soundlyEquipped,
  ],
  [
    "currents near the last digit",
    (book) => phases(book, CABLES, CURRENT, 0.1, 0.9, 0.1),
    soundlyEquipped,
  ],
  [
    "all phases of a longer cable",
    (book) => phases(book, CABLES, CURRENT, 8 * usual, 9 * usual, 8.5 * usual),
    soundlyEquipped,
  ],
]);
