import Alert from "@mui/material/Alert";
import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import LinearProgress from "@mui/material/LinearProgress";
import List from "@mui/material/List";
import ListItem from "@mui/material/ListItem";
import ListItemText from "@mui/material/ListItemText";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useCallback, useEffect, useState } from "react";
import { check, type Report } from "../check/check";
import { readLineup } from "../lineup/readLineup";
import { toSerial } from "../quantities/dates";
import { planFor } from "../sheets/plan";
import { recordTables } from "../sheets/recordTable";
import type { Snapshot } from "../sheets/snapshot";
import { FileButton } from "./FileButton";
import { Findings } from "./Findings";
import type { Host } from "./host";
import { messages } from "./messages";
import { useWork } from "./useWork";

/** Today in local time, as a serial day number. */
const today = () => {
  const now = new Date();
  return Math.floor(toSerial(new Date(now.getTime() - now.getTimezoneOffset() * 60_000)));
};

/** Builds the record tables of a lineup, lists those that the workbook has, and runs the check on them. */
export function Pane({ host }: { host: Host }): ReactElement {
  const [tables, setTables] = useState<{ name: string; title: string; rows: number }[]>();
  const [report, setReport] = useState<Report>();
  const [told, setTold] = useState<string>();
  const { busy, progress, problem, setProblem, run, stop } = useWork();

  const show = useCallback((snapshot: Snapshot) => {
    setTables(
      recordTables(snapshot).map(({ kind, table, rows }) => ({
        name: table.name,
        title: kind.title,
        rows: rows.length,
      })),
    );
  }, []);

  const look = useCallback(
    () => run(async (watch) => show(await host.read(watch))),
    [run, host, show],
  );

  const build = (file: File) =>
    run(async (watch) => {
      setTold(undefined);
      const read = readLineup(await file.text());
      if (!read.ok) {
        const lines = read.errors.map(({ path, message }) => `${path}: ${message}`);
        setProblem([messages.lineupErrors(file.name, lines.length), ...lines].join("\n"));
        return;
      }
      const done = await host.build(planFor(read.value), watch);
      setReport(undefined);
      setTold(
        messages.built(
          done.create.length,
          done.change.reduce((sum, { added }) => sum + added, 0),
          done.change.reduce((sum, { aside }) => sum + aside.length, 0),
        ),
      );
      show(await host.read(watch));
    });

  const runCheck = () =>
    run(async (watch) => {
      setTold(undefined);
      const snapshot = await host.read(watch);
      show(snapshot);
      const checked = check(snapshot, today());
      setReport(checked.ok ? checked.report : undefined);
      if (!checked.ok) setProblem(messages.cannotCheck(checked.reason));
    });

  const mark = () =>
    run(async (watch) => {
      const { cells } = await host.mark(report?.findings ?? [], watch);
      setTold(messages.marked(cells));
    });
  const unmark = () =>
    run(async (watch) => {
      await host.clearMarks(watch);
      setTold(messages.unmarked);
    });

  useEffect(() => {
    look();
  }, [look]);

  return (
    <Stack component="main" spacing={2} sx={{ p: 1.5 }}>
      <Typography variant="h1">{messages.title}</Typography>
      <Box component="section" aria-labelledby="tables">
        <Typography id="tables" variant="h2">
          {messages.tables}
        </Typography>
        {tables?.length === 0 && <Typography>{messages.noTables}</Typography>}
        <List dense disablePadding>
          {tables?.map(({ name, title, rows }) => (
            <ListItem key={name} disableGutters>
              <ListItemText primary={title} secondary={messages.rows(rows)} />
            </ListItem>
          ))}
        </List>
        <FileButton
          id="lineup-file"
          label={messages.build}
          accept=".json"
          disabled={busy}
          onFile={build}
        />
        <Typography variant="body2" color="text.secondary" sx={{ mt: 0.5 }}>
          {messages.buildHelp}
        </Typography>
      </Box>
      <Stack spacing={1}>
        <Button variant="contained" onClick={runCheck} disabled={busy || !tables?.length}>
          {messages.check}
        </Button>
        {report && (
          <>
            <Button variant="outlined" onClick={mark} disabled={busy}>
              {messages.mark}
            </Button>
            <Button variant="outlined" onClick={unmark} disabled={busy}>
              {messages.unmark}
            </Button>
          </>
        )}
        <Button variant="text" onClick={look} disabled={busy}>
          {messages.look}
        </Button>
      </Stack>
      {busy && (
        <Stack spacing={1} role="status" aria-label={messages.working}>
          <LinearProgress
            aria-label={messages.working}
            variant={progress ? "determinate" : "indeterminate"}
            value={progress ? (100 * progress.done) / Math.max(1, progress.total) : 0}
          />
          <Stack direction="row" sx={{ alignItems: "center", justifyContent: "space-between" }}>
            <Typography variant="body2">
              {progress ? messages.progress(progress.done, progress.total) : messages.working}
            </Typography>
            <Button size="small" onClick={stop}>
              {messages.stop}
            </Button>
          </Stack>
        </Stack>
      )}
      <Box aria-live="polite">
        {told && <Alert severity="info">{told}</Alert>}
        {problem && (
          <Alert severity="warning" sx={{ whiteSpace: "pre-line", overflowWrap: "anywhere" }}>
            {problem}
          </Alert>
        )}
      </Box>
      {report && (
        <Findings report={report} go={(sheet, address) => run(() => host.goTo(sheet, address))} />
      )}
      <Typography variant="body2" color="text.secondary">
        {messages.caution}
      </Typography>
    </Stack>
  );
}
