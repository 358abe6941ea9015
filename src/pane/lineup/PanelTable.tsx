import Box from "@mui/material/Box";
import Typography from "@mui/material/Typography";
import {
  type ClipboardEvent,
  type CSSProperties,
  type KeyboardEvent,
  memo,
  type ReactElement,
} from "react";
import { get, useController, useFormContext, useFormState, useWatch } from "react-hook-form";
import { BREAKER_MEDIA, PANEL_TYPES } from "../../lineup/equipment";
import { useText } from "../../report/text";
import { messageOf, useFieldText } from "./fieldText";

/** The columns, by their path in a panel, and how wide they are. */
const COLUMNS = [
  { path: "designation", column: "designation", width: 84 },
  { path: "name", column: "name", width: 132 },
  { path: "type", column: "type", width: 124, words: PANEL_TYPES },
  { path: "section", column: "section", width: 72 },
  { path: "breaker.medium", column: "medium", width: 84, words: BREAKER_MEDIA },
  { path: "breaker.ratedA", column: "ratedA", width: 76, holds: "number" },
  { path: "breaker.designation", column: "breaker", width: 84 },
] as const;
type Column = (typeof COLUMNS)[number];

const WIDTH = COLUMNS.reduce((sum, { width }) => sum + width, 0);
/** The designation stays in sight beside what is scrolled to. */
const STAYS: CSSProperties = {
  position: "sticky",
  insetInlineStart: 0,
  zIndex: 1,
  background: "var(--paper)",
};

const CELL: CSSProperties = {
  width: "100%",
  minHeight: 36,
  boxSizing: "border-box",
  padding: "0 6px",
  border: "1px solid currentColor",
  font: "inherit",
  color: "inherit",
  background: "transparent",
};

/** The panels as a table to type in: a panel a line, and a line more for the next one. */
export function PanelTable({
  panels,
  breaker,
  start,
  paste,
}: {
  /** How many there are. */
  panels: number;
  /** What a breaker is called that is not named. */
  breaker: string;
  /** Begins a panel by its designation. */
  start: (designation: string) => void;
  /** Takes what was pasted and is more than one cell. */
  paste: (text: string) => void;
}): ReactElement {
  const text = useText().lineup;
  const pasted = (event: ClipboardEvent) => {
    const copied = event.clipboardData.getData("text");
    if (!/[\t\n]/.test(copied.trim())) return;
    event.preventDefault();
    paste(copied);
  };
  return (
    <Box sx={{ overflowX: "auto" }} onPaste={pasted} onKeyDown={down}>
      <table
        aria-label={text.table}
        style={{ borderCollapse: "collapse", tableLayout: "fixed", width: WIDTH }}
      >
        <thead>
          <tr>
            {COLUMNS.map(({ column, width }) => (
              <th
                key={column}
                scope="col"
                style={{ width, textAlign: "start", ...(column === "designation" ? STAYS : {}) }}
              >
                <Typography variant="body2" component="span">
                  {text.columnTitles[column]}
                </Typography>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: panels }, (_, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place, so that the one being typed in keeps the cursor
            <Line key={at} at={at} breaker={breaker} />
          ))}
          <NextLine key={panels} at={panels} start={start} />
        </tbody>
      </table>
    </Box>
  );
}

/** Enter goes to the cell below. */
function down(event: KeyboardEvent<HTMLElement>) {
  const { target } = event;
  if (event.key !== "Enter" || !(target instanceof HTMLElement)) return;
  const [at, column] = (target.dataset.cell ?? "").split(":");
  const below = event.currentTarget.querySelector<HTMLElement>(
    `[data-cell="${Number(at) + 1}:${column}"]`,
  );
  below?.focus();
}

const labelOf = (titles: Readonly<Record<string, string>>, { column }: Column, at: number) =>
  `${titles[column] ?? ""} ${at + 1}`;

/** One panel; what is wrong with it stands below it. */
const Line = memo(function Line({ at, breaker }: { at: number; breaker: string }) {
  const { errors } = useFormState();
  const hasBreaker = useWatch({ name: `panels.${at}.breaker` }) !== undefined;
  const titles = useText().lineup.columnTitles;
  const wrong = COLUMNS.flatMap(({ path, column }) => {
    const message = messageOf(get(errors, `panels.${at}.${path}`));
    return message === undefined ? [] : [`${titles[column]}: ${message}`];
  });
  return (
    <>
      <tr>
        {COLUMNS.map((column) => (
          <td
            key={column.path}
            style={{ padding: 1, ...(column.path === "designation" ? STAYS : {}) }}
          >
            <Cell at={at} column={column} breaker={breaker} hasBreaker={hasBreaker} />
          </td>
        ))}
      </tr>
      {wrong.length > 0 && (
        <tr>
          <td colSpan={COLUMNS.length}>
            <Typography variant="body2" color="error">
              {wrong.join(" · ")}
            </Typography>
          </td>
        </tr>
      )}
    </>
  );
});

function Cell({
  at,
  column,
  breaker,
  hasBreaker,
}: {
  at: number;
  column: Column;
  breaker: string;
  hasBreaker: boolean;
}): ReactElement {
  const titles = useText().lineup.columnTitles;
  if (column.path === "breaker.medium") return <MediumCell at={at} breaker={breaker} />;
  if (column.path.startsWith("breaker.") && !hasBreaker)
    return <input disabled aria-label={labelOf(titles, column, at)} style={CELL} />;
  return "words" in column ? (
    <WordCell at={at} column={column} words={column.words} />
  ) : (
    <TextCell at={at} column={column} />
  );
}

function TextCell({ at, column }: { at: number; column: Column }): ReactElement {
  const titles = useText().lineup.columnTitles;
  const holds = "holds" in column ? column.holds : "text";
  const { error, input } = useFieldText(`panels.${at}.${column.path}`, holds);
  return (
    <input
      {...input}
      inputMode={holds === "number" ? "decimal" : "text"}
      data-cell={`${at}:${column.path}`}
      aria-label={labelOf(titles, column, at)}
      aria-invalid={error !== undefined}
      style={{ ...CELL, ...(error === undefined ? {} : { borderWidth: 3 }) }}
    />
  );
}

function WordCell({
  at,
  column,
  words,
}: {
  at: number;
  column: Column;
  words: readonly string[];
}): ReactElement {
  const titles = useText().lineup.columnTitles;
  const { field } = useController({ name: `panels.${at}.${column.path}` });
  return (
    <select
      {...field}
      value={String(field.value ?? "")}
      data-cell={`${at}:${column.path}`}
      aria-label={labelOf(titles, column, at)}
      style={CELL}
    >
      {words.map((word) => (
        <option key={word}>{word}</option>
      ))}
    </select>
  );
}

/** The medium of a breaker: chosen, there is one; taken off, there is none. */
function MediumCell({ at, breaker }: { at: number; breaker: string }): ReactElement {
  const text = useText().lineup;
  const { setValue } = useFormContext();
  const path = `panels.${at}.breaker`;
  const now = useWatch({ name: path }) as { readonly medium?: string } | undefined;
  return (
    <select
      value={now?.medium ?? ""}
      data-cell={`${at}:breaker.medium`}
      aria-label={labelOf(text.columnTitles, COLUMNS[4], at)}
      style={CELL}
      onChange={({ target }) =>
        setValue(
          path,
          target.value === "" ? undefined : { designation: breaker, ...now, medium: target.value },
          { shouldDirty: true, shouldValidate: true },
        )
      }
    >
      <option value="">{text.notSet}</option>
      {BREAKER_MEDIA.map((medium) => (
        <option key={medium}>{medium}</option>
      ))}
    </select>
  );
}

/** The line after the last: a designation typed there begins a panel. */
function NextLine({
  at,
  start,
}: {
  at: number;
  start: (designation: string) => void;
}): ReactElement {
  const titles = useText().lineup.columnTitles;
  return (
    <tr>
      <td style={{ padding: 1 }}>
        <input
          value=""
          data-cell={`${at}:designation`}
          aria-label={labelOf(titles, COLUMNS[0], at)}
          style={CELL}
          onChange={({ target }) => start(target.value)}
        />
      </td>
    </tr>
  );
}
