import { CONTACT, finds, INSULATION, keepsQuiet, WITHSTAND } from "../support";

finds("condition-off-day", [
  {
    name: "a conductor far warmer than the others of its day",
    spoil: (book) => book.set(CONTACT, 2, "Conductor °C", 51),
    table: CONTACT,
    row: 2,
    header: "Conductor °C",
    weight: "query",
    says: /"Conductor °C" is 51 °C; the middle of the 14 other rows/,
  },
  {
    name: "a barometer read at another height",
    spoil: (book) => book.set(WITHSTAND, 2, "Pressure kPa", 84.1),
    table: WITHSTAND,
    row: 2,
    header: "Pressure kPa",
    weight: "query",
    says: /84.1 kPa/,
  },
  {
    name: "a surface hotter than gear out of service gets",
    spoil: (book) => book.set(WITHSTAND, 2, "Surface °C", 71),
    table: WITHSTAND,
    row: 2,
    header: "Surface °C",
    weight: "query",
    says: /71/,
  },
  {
    name: "saturated air",
    spoil: (book) => book.set(INSULATION, 7, "Humidity %", 100),
    table: INSULATION,
    row: 7,
    header: "Humidity %",
    weight: "query",
    says: /100 %/,
  },
]);

keepsQuiet("condition-off-day", [
  [
    "a row of another day",
    (book) => {
      book.set(CONTACT, 2, "Conductor °C", 41);
      book.set(CONTACT, 2, "Date", 46_336);
    },
  ],
  [
    "rows hours apart",
    (book) => {
      for (let row = 0; row < 15; row++) book.set(CONTACT, row, "Date", 46_338.4);
      book.set(CONTACT, 2, "Conductor °C", 41);
      book.set(CONTACT, 2, "Date", 46_338.8);
    },
  ],
  [
    "stated heating",
    (book) => {
      book.set(CONTACT, 2, "Conductor °C", 51);
      book.set(CONTACT, 2, "Remarks", "Raum geheizt");
    },
  ],
  [
    "a surface at the dew point, of which another rule speaks",
    (book) => book.set(WITHSTAND, 2, "Surface °C", 2),
  ],
  [
    "a pass that hangs on it, of which another rule speaks",
    (book) => {
      book.set(INSULATION, 4, "R 1 min MΩ", 3000);
      book.set(INSULATION, 4, "Temperature °C", 62);
    },
  ],
]);
