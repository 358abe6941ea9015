import { readLineup } from "../../records/readLineup";
import { BookError } from "../../sheets/bookError";
import type { Area } from "../../sheets/cells/area";
import { planFor } from "../../sheets/plan/plan";
import { addSheet, newBook, type StandInBook } from "../book";
import { bookOfPlan } from "../bookOfPlan";
import { standIn } from "../host";
import { bookOfFile, fileOfBook } from "./bookFile";
import { type BenchGrid, makeGrid } from "./grid";
import { installCustomFunctions, installOffice } from "./office";

/**
 * The bench: a grid with a workbook, and beside it the add-in's own pane, both through the genuine client
 * and the stand-in. A development and trial tool; nothing of it is in the add-in.
 */

let pending = false;
const host = standIn(emptyBook(), () => {
  pending = true;
});
const say = (text: string) => {
  const line = document.getElementById("said");
  if (line) line.textContent = text;
};

const counted = () => {
  const bytes = host.batches.reduce((sum, { up, down }) => sum + up + down, 0);
  const line = document.getElementById("batches");
  if (line)
    line.textContent = `${host.batches.length} batches, ${(bytes / 1e6).toFixed(2)} MB since the page was opened`;
};

let selection: { sheet: string; area: Area } | undefined;
const isAtActive = (sheet: string, { top, left }: Area): boolean => {
  const { active } = host.book;
  return active?.sheet === sheet && active.area.top === top && active.area.left === left;
};

const grid: BenchGrid = makeGrid("grid", {
  edited: (cells) => {
    counted();
    for (const { sheet, area } of cells) host.tell("changed", sheet, area);
  },
  selected: ({ sheet, area }) => {
    // What a batch selected comes back as its first cell.
    if (!isAtActive(sheet, area)) {
      selection = { sheet, area };
      host.book.active = selection;
    }
    host.tell("selectionChanged", sheet, area);
  },
});

/** What batches changed is shown and computed. */
const settled = async () => {
  if (pending) {
    pending = false;
    grid.show();
  }
  await grid.idle;
  counted();
};
const follow = () => {
  const { active } = host.book;
  if (active && active !== selection) {
    selection = active;
    grid.select(active.sheet, active.area.top, active.area.left);
  }
};

/** What is drawn besides the cells: marks, looks, tables. */
const drawn = () =>
  JSON.stringify(
    host.book.sheets.map(({ name, formats, looks, merges, tables }) => [
      name,
      formats.map(({ id, areas }) => [id, areas]),
      looks.length,
      merges.length,
      tables.map(({ area }) => area),
    ]),
  );
let lastDrawn = "";

/** So long after a batch what it changed is shown, unless another one comes or asks for it, ms. */
const SHOWN_AFTER = 50;
let timer = 0;

/** After each batch: what it changed is shown, and where it selected a cell, the grid goes there. */
const after = () => {
  const now = drawn();
  if (now !== lastDrawn) pending = true;
  lastDrawn = now;
  window.clearTimeout(timer);
  timer = window.setTimeout(() => void settled().then(follow), SHOWN_AFTER);
};

function emptyBook(): StandInBook {
  const book = newBook();
  addSheet(book, "Sheet1");
  return book;
}

/** Puts another workbook under the stand-in. */
async function open(book: StandInBook) {
  Object.assign(host.book, book, { listening: host.book.listening });
  if (!book.active) delete host.book.active;
  lastDrawn = drawn();
  pending = false;
  grid.open(host.book);
  await grid.idle;
}

async function openFile(file: File) {
  try {
    await open(await bookOfFile(new Uint8Array(await file.arrayBuffer())));
    say(`${file.name} is open. Read the workbook again in the pane.`);
  } catch (error) {
    if (!(error instanceof BookError)) throw error;
    say(`${file.name} ${error.message}`);
  }
}

async function save() {
  await settled();
  const bytes = fileOfBook(host.book);
  const link = document.createElement("a");
  link.href = URL.createObjectURL(
    new Blob([bytes as BlobPart], {
      type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    }),
  );
  link.download = "bench.xlsx";
  link.click();
  URL.revokeObjectURL(link.href);
  say("Saved as bench.xlsx.");
}

async function sample() {
  const response = await fetch("harbour-substation.xlsx");
  if (response.ok) return bookOfFile(new Uint8Array(await response.arrayBuffer()));
  const lineup = readLineup(await (await fetch("harbour-substation.lineup.json")).text());
  if (!lineup.ok) throw new Error("the sample lineup is not sound");
  return bookOfPlan(planFor(lineup.value));
}

const wire = (id: string, act: () => void) =>
  document.getElementById(id)?.addEventListener("click", act);
wire("open", () => document.getElementById("file")?.click());
wire("save", () => void save());
wire(
  "sample",
  () =>
    void sample()
      .then(open)
      .then(() => say("The invented sample is open.")),
);
wire("empty", () => void open(emptyBook()).then(() => say("An empty workbook is open.")));
document.getElementById("file")?.addEventListener("change", ({ target }) => {
  const input = target as HTMLInputElement;
  const file = input.files?.[0];
  input.value = "";
  if (file) void openFile(file);
});
for (const width of ["320", "450"])
  wire(`wide-${width}`, () => {
    document.documentElement.style.setProperty("--pane", `${width}px`);
  });

installCustomFunctions(grid.register);
const ready = (async () => {
  await new Promise((go) => setTimeout(go, 0));
  await open(await sample());
})();
installOffice(host, ready, settled, after, () => fileOfBook(host.book));
Object.assign(window, { bench: { grid, host, settled } });
