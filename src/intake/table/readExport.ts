import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { type Result, refuse } from "../../quantities/result";
import type { TextRow } from "../text/delimited";
import { formRows } from "../text/formRows";
import { latinDigits } from "../text/latinDigits";
import { partedCells } from "../text/partedCells";
import { countFilled } from "../text/textCells";
import { turnedRows } from "../text/turnedRows";
import { type ExportOptions, layoutOptions } from "./exportOptions";
import type { ExportTable } from "./exportTable";
import { findDelimiter, partedBy, take } from "./findDelimiter";
import { firstHead, LOOK_ROWS } from "./head";
import { heldInLog } from "./heldInLog";
import { readRows } from "./readRows";

/**
 * Reads an instrument's export: finds the delimiter, the tables with the facts above them, their titles
 * and units, whether phases lie across, the decimal mark and the order of day and month, and the lines
 * that are no readings.
 *
 * @param content delimited text: comma, semicolon, tab or vertical bar
 * @returns `wrong` for what is no text, has no table, or a table without a recognisable column
 * @example readExport("Panel;Pole;R (µΩ)\n=H01;L1;31,5", { name: "crm.csv" }) // delimiter ";", decimal comma, three columns
 */
export const readExport = (content: string, options: ExportOptions): Result<ExportTable, Told> => {
  const text = latinDigits(content);
  const unreadable = unreadableAt(text);
  if (unreadable)
    return refuse("wrong", (words) =>
      words.intake.file.of(quoted(options.name, 80), unreadable(words)),
    );
  const delimiter = findDelimiter(text, options, layoutOptions(options));
  const written = () => partedBy(text, delimiter.value);
  const parted = partedCells(take(written(), LOOK_ROWS));
  const apart = parted ? () => parted(written()) : written;
  const form = formOf(apart, options);
  const rows = form ? apart : withHeld(apart, options);
  return form ? readRows(() => form, delimiter, options) : readRows(rows, delimiter, options);
};

/** Rows of a log with the names that are written once above several tests. */
const withHeld = (rows: () => Iterable<TextRow>, options: ExportOptions) => {
  const first = take(rows(), LOOK_ROWS);
  const how = layoutOptions(options);
  const hold = options.knows && heldInLog(first, firstHead(first, how), how);
  return hold ? () => hold(rows()) : rows;
};

/** Forms are no longer than this; whatever is, is a table. */
const LONGEST_FORM = 400;
const WIDEST_FORM = 60;

/** A short text whose labels stand before their values as a table: a form, or quantities down with phases or panels across. */
const formOf = (rows: () => Iterable<TextRow>, options: ExportOptions): TextRow[] | undefined => {
  if (isForm(rows, options)) return formRows([...rows()]);
  const first = take(rows(), LONGEST_FORM + 1);
  return options.titles !== undefined || first.length > LONGEST_FORM
    ? undefined
    : turnedRows(first, options.knows?.objectOf ?? (() => undefined));
};

/** Whether a short text has no table, so that it may be a form. */
const isForm = (rows: () => Iterable<TextRow>, options: ExportOptions): boolean => {
  const first = take(rows(), LONGEST_FORM + 1);
  if (options.titles !== undefined || first.length > LONGEST_FORM) return false;
  if (first.some(({ cells }) => cells.length > WIDEST_FORM)) return false;
  const head = firstHead(first.slice(0, LOOK_ROWS), layoutOptions(options));
  return head === undefined || head.recognised < 2 || areLabels(first);
};

/** Whether nearly all lines are a label before a colon or an equals sign: no titles then, whatever words stand over them. */
const areLabels = (rows: readonly TextRow[]): boolean => {
  const filled = rows.filter(({ cells }) => countFilled(cells) > 0);
  const labelled = filled.filter(({ cells, text }) => LABEL.test(text ?? cells.join(" ")));
  return labelled.length >= LEAST_LABELS && labelled.length >= MOST_LABELS * filled.length;
};
const LABEL = /^\s{0,20}[^\s:=,;|\t][^:=,;|\t]{0,40}?(?::| =)\s{1,20}\S/u;
const LEAST_LABELS = 6;
const MOST_LABELS = 0.85;

const unreadableAt = (text: string): Said<Told> | undefined => {
  if (text.trim() === "") return ({ intake }) => intake.file.empty;
  const [strange] = /[\0\ufffd]/.exec(text) ?? [];
  if (strange === undefined) return undefined;
  const line = text.slice(0, text.indexOf(strange)).split(/\r\n|\r|\n/).length;
  return ({ intake: { file } }) => (strange === "\0" ? file.nul(line) : file.notUtf8(line));
};
