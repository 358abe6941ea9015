import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useEffect, useMemo, useRef, useState } from "react";
import type { JudgedTable } from "../../check/context";
import type { Lineup } from "../../lineup/lineup";
import { toldIn } from "../../messages/told";
import type { Column } from "../../records/kind";
import { useText } from "../../report/text";
import { Choice } from "../Choice";
import { Entry } from "../Entry";
import { useLocale } from "../locale";
import { carriedOver, entriesToFill, type Typed, typedCells } from "./typedCells";

/**
 * The entries of a row that are still blank, to be typed one after the other; Enter writes them and goes
 * to the next row. What cannot be read says so at its field, and nothing is written.
 */
export function RowForm({
  table,
  row,
  lineup,
  from,
  focus,
  busy,
  write,
}: {
  table: JudgedTable;
  row: number;
  lineup: Lineup;
  /** The row that was typed before this one, of which conditions and names carry over. */
  from: number | undefined;
  /** Whether the first field takes the keyboard. */
  focus: boolean;
  busy: boolean;
  write: (cells: ReturnType<typeof typedCells>["cells"]) => void;
}): ReactElement | undefined {
  const { readings: text, language } = useText();
  const told = toldIn(language);
  const { decimal } = useLocale();
  const columns = useMemo(() => entriesToFill(table, row, lineup), [table, row, lineup]);
  const [typed, setTyped] = useState<Typed>(() => carriedOver(table, from, columns));
  const [wrong, setWrong] = useState<Readonly<Record<string, string>>>({});
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (focus) form.current?.querySelector<HTMLElement>("input, select")?.focus();
  }, [focus]);
  if (columns.length === 0) return undefined;
  const enter = () => {
    const read = typedCells(table, row, columns, typed, decimal, told);
    setWrong(read.wrong);
    const [first] = Object.keys(read.wrong);
    if (first) form.current?.querySelector<HTMLElement>(`[data-column="${first}"] input`)?.focus();
    else if (read.cells.length > 0) write(read.cells);
  };
  return (
    <Stack
      component="form"
      ref={form}
      noValidate
      spacing={1}
      aria-label={text.typeHere}
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) enter();
      }}
      sx={{ border: 1, borderColor: "divider", p: 1 }}
    >
      <Typography variant="h3">{text.typeHere}</Typography>
      {columns.map((column) => (
        <Box key={column.id} data-column={column.id}>
          <Field
            column={column}
            value={typed[column.id] ?? ""}
            wrong={wrong[column.id]}
            onEnter={(value) => setTyped({ ...typed, [column.id]: value })}
          />
        </Box>
      ))}
      <Button type="submit" variant="contained" disabled={busy}>
        {text.writeRow}
      </Button>
    </Stack>
  );
}

function Field({
  column: { header, help, accepts },
  value,
  wrong,
  onEnter,
}: {
  column: Column;
  value: string;
  wrong: string | undefined;
  onEnter: (value: string) => void;
}): ReactElement {
  return accepts?.type === "list" ? (
    <Choice
      label={header}
      value={value}
      choices={["", ...accepts.values].map((one) => ({ value: one, label: one || "–" }))}
      onChoose={onEnter}
    />
  ) : (
    <Entry
      label={header}
      type={accepts?.type === "date" ? "date" : "text"}
      value={value}
      hint={wrong ?? help}
      wrong={wrong !== undefined}
      onEnter={onEnter}
    />
  );
}
