import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import List from "@mui/material/List";
import ListItem from "@mui/material/ListItem";
import ListItemButton from "@mui/material/ListItemButton";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { lazy, type ReactElement, Suspense, useMemo, useState } from "react";
import type { JudgedTable } from "../../check/context";
import { verdictOf } from "../../records/kind";
import { kindWords } from "../../records/kindWords";
import { useText } from "../../report/text";
import type { Verdict } from "../../standards/judge";
import { Choice } from "../Choice";
import type { Rows } from "../host";
import { Fold } from "../lineup/Fold";
import type { OpenedWorkbook } from "../openedWorkbook";
import type { RowChoice } from "../rowChoice";
import type { StepProps } from "../shared";
import { Cautions } from "./Cautions";
import { Intake } from "./Intake";
import { LastTyped } from "./LastTyped";
import { OneRow } from "./OneRow";

const OwnLayouts = lazy(() => import("./OwnLayouts"));
/** Height of the row of steps that stays at the top, px. */
const STEPS_HEIGHT = 56;
/** So many rows are listed at first, and more at a time. */
const LISTED = 60;
const VERDICTS: readonly Verdict[] = ["Fail", "Inconclusive", "Missing", "Pass", "Not required"];

/** The rows of a record with their results, one row's evidence, and the way in for exports. */
export default function ReadingsStep({
  choice,
  setChoice,
  edited,
  setEdited,
  reread,
  ...shared
}: StepProps & {
  choice: RowChoice;
  setChoice: (choice: RowChoice) => void;
  /** The row that was typed in last, in the workbook or here. */
  edited: RowChoice | undefined;
  setEdited: (row: RowChoice) => void;
  reread: (rows: readonly Rows[]) => Promise<OpenedWorkbook | undefined>;
}): ReactElement {
  const text = useText().readings;
  const { book } = shared;
  const tables = book?.report?.context.tables ?? [];
  const table = tables.find(({ kind }) => kind.id === choice.kind) ?? tables[0];

  if (!table || !book?.report)
    return (
      <Stack spacing={2}>
        <Typography>{text.none}</Typography>
        {book && <Layouts {...shared} />}
      </Stack>
    );
  const row = choice.row !== undefined && choice.row < table.rows.length ? choice.row : undefined;
  return (
    <Stack spacing={2}>
      <Typography variant="h2">{text.heading}</Typography>
      {edited && (
        <Box sx={{ position: "sticky", top: STEPS_HEIGHT, zIndex: 1 }}>
          <LastTyped report={book.report} edited={edited} look={setChoice} />
        </Box>
      )}
      {row === undefined ? (
        <>
          <Filters tables={tables} table={table} choice={choice} setChoice={setChoice} />
          <Intake {...shared} granted={choice.kind === undefined ? {} : { test: table.kind.id }} />
          <Layouts {...shared} />
        </>
      ) : (
        <OneRow
          {...shared}
          report={book.report}
          table={table}
          row={row}
          choice={choice}
          setChoice={setChoice}
          edited={edited}
          setEdited={setEdited}
          reread={reread}
        />
      )}
    </Stack>
  );
}

/** The way to records in sheets of somebody's own, loaded when it is asked for. */
function Layouts(shared: StepProps): ReactElement {
  const messages = useText();
  const [open, setOpen] = useState(false);
  return (
    <Fold title={messages.layouts.heading} open={open} onOpen={() => setOpen(!open)}>
      <Suspense fallback={<Typography>{messages.working}</Typography>}>
        <OwnLayouts {...shared} />
      </Suspense>
    </Fold>
  );
}

function Filters({
  tables,
  table,
  choice,
  setChoice,
}: {
  tables: readonly JudgedTable[];
  table: JudgedTable;
  choice: RowChoice;
  setChoice: (choice: RowChoice) => void;
}): ReactElement {
  const messages = useText();
  const text = messages.readings;
  const [result, setResult] = useState("");
  const [most, setMost] = useState(LISTED);
  const objects = useMemo(
    () => [...new Set(table.rows.map((row) => String(row.object ?? "")))],
    [table],
  );
  const object = objects.includes(choice.object ?? "") ? choice.object : undefined;
  const rows = useMemo(
    () =>
      table.judged.flatMap((row, index) =>
        (object === undefined || String(row.object) === object) &&
        (result === "" || verdictOf(row) === result)
          ? [index]
          : [],
      ),
    [table, object, result],
  );
  const any = { value: "", label: text.any };
  return (
    <>
      <Stack spacing={1}>
        <Choice
          label={text.kind}
          value={table.kind.id}
          choices={tables.map(({ kind }) => ({
            value: kind.id,
            label: kindWords(messages, kind.id).title,
          }))}
          onChoose={(kind) => {
            setMost(LISTED);
            setChoice({ kind, object: choice.object });
          }}
        />
        <Stack direction="row" spacing={1}>
          <Choice
            label={text.object}
            value={object ?? ""}
            choices={[any, ...objects.map((value) => ({ value, label: value }))]}
            onChoose={(value) => setChoice({ kind: table.kind.id, object: value || undefined })}
          />
          <Choice
            label={text.result}
            value={result}
            choices={[any, ...VERDICTS.map((value) => ({ value, label: value }))]}
            onChoose={setResult}
          />
        </Stack>
      </Stack>
      <Cautions kind={table.kind} />
      <Box>
        <Typography variant="h3">{text.rows}</Typography>
        {rows.length === 0 && <Typography>{text.noRows}</Typography>}
        <List dense disablePadding aria-label={text.rows}>
          {rows.slice(0, most).map((index) => (
            <ListItem key={`${table.keys[index]} ${index}`} disablePadding divider>
              <ListItemButton
                onClick={() => setChoice({ kind: table.kind.id, object, row: index })}
                sx={{ px: 0.5, minHeight: 44, gap: 1, justifyContent: "space-between" }}
              >
                <span>{table.keys[index]}</span>
                <strong>{verdictOf(table.judged[index] ?? {})}</strong>
              </ListItemButton>
            </ListItem>
          ))}
        </List>
        {rows.length > most && (
          <Button fullWidth onClick={() => setMost(most + LISTED)}>
            {text.more(rows.length - most)}
          </Button>
        )}
      </Box>
    </>
  );
}
