import Alert from "@mui/material/Alert";
import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import List from "@mui/material/List";
import ListItem from "@mui/material/ListItem";
import ListItemButton from "@mui/material/ListItemButton";
import ListItemText from "@mui/material/ListItemText";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useCallback, useEffect, useState } from "react";
import { check, type Report } from "../check/check";
import type { Finding, Weight } from "../check/finding";
import { toSerial } from "../sheets/dates";
import { recordTables } from "../sheets/recordTable";
import type { Snapshot } from "../sheets/snapshot";
import { messages } from "./messages";
import { STANDING } from "./standing";

/** What the pane needs of the workbook that it stands beside. */
export interface Host {
  read(): Promise<Snapshot>;
  goTo(sheet: string, address: string): Promise<void>;
}

/** More findings than this are counted, not listed. */
const LISTED = 200;
const ORDER: Record<Weight, number> = { stop: 0, query: 1, note: 2 };

/** Lists the workbook's record tables and runs the check on them. */
export function Pane({ host }: { host: Host }): ReactElement {
  const [tables, setTables] = useState<{ name: string; title: string; rows: number }[]>();
  const [report, setReport] = useState<Report>();
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);

  const doing = useCallback(async (work: () => Promise<void>) => {
    setBusy(true);
    setProblem(undefined);
    try {
      await work();
    } catch (error) {
      setProblem(messages.failed((error as Error).message));
    } finally {
      setBusy(false);
    }
  }, []);

  const show = useCallback((snapshot: Snapshot) => {
    setTables(
      recordTables(snapshot).map(({ kind, table, rows }) => ({
        name: table.name,
        title: kind.title,
        rows: rows.length,
      })),
    );
  }, []);

  const look = useCallback(() => doing(async () => show(await host.read())), [doing, host, show]);
  const runCheck = () =>
    doing(async () => {
      const snapshot = await host.read();
      show(snapshot);
      const now = new Date();
      const day = toSerial(new Date(now.getTime() - now.getTimezoneOffset() * 60_000));
      const checked = check(snapshot, Math.floor(day));
      setReport(checked.ok ? checked.report : undefined);
      if (!checked.ok) setProblem(messages.cannotCheck(checked.reason));
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
      </Box>
      <Stack spacing={1}>
        <Button variant="contained" onClick={runCheck} disabled={busy || !tables?.length}>
          {busy ? messages.checking : messages.check}
        </Button>
        <Button variant="outlined" onClick={look} disabled={busy}>
          {messages.look}
        </Button>
      </Stack>
      <Box aria-live="polite">
        {problem && <Alert severity="warning">{problem}</Alert>}
        {report && (
          <Findings
            report={report}
            go={(sheet, address) => doing(() => host.goTo(sheet, address))}
          />
        )}
      </Box>
      <Typography variant="body2" color="text.secondary">
        {messages.caution}
      </Typography>
    </Stack>
  );
}

function Findings({
  report,
  go,
}: {
  report: Report;
  go: (sheet: string, address: string) => void;
}): ReactElement {
  const findings = [...report.findings].sort(
    (one, other) => ORDER[one.weight] - ORDER[other.weight],
  );
  return (
    <Box component="section" aria-labelledby="findings">
      <Stack direction="row" sx={{ flexWrap: "wrap", gap: 0.75, mb: 1.5 }}>
        {(["fail", "inconclusive", "missing", "pass"] as const).map((key) => (
          <Box
            key={key}
            sx={{
              px: 1,
              py: 0.5,
              fontWeight: 700,
              bgcolor: STANDING[key].fill,
              color: STANDING[key].ink,
            }}
          >
            {report.counts[key]} {messages.counts[key]}
          </Box>
        ))}
      </Stack>
      <Typography id="findings" variant="h2">
        {messages.findings}
      </Typography>
      {findings.length === 0 && <Typography>{messages.noFindings}</Typography>}
      <List dense disablePadding>
        {findings.slice(0, LISTED).map((finding) => (
          <FindingItem
            key={`${finding.rule}${finding.sheet}${finding.address}`}
            finding={finding}
            go={go}
          />
        ))}
      </List>
      {findings.length > LISTED && (
        <Typography>{messages.more(findings.length - LISTED)}</Typography>
      )}
    </Box>
  );
}

function FindingItem({
  finding,
  go,
}: {
  finding: Finding;
  go: (sheet: string, address: string) => void;
}): ReactElement {
  const cell = `${finding.sheet}!${finding.address}`;
  return (
    <ListItem disablePadding divider>
      <ListItemButton
        onClick={() => go(finding.sheet, finding.address)}
        sx={{ px: 0.5, alignItems: "flex-start", minHeight: 44 }}
        aria-label={`${finding.weight}: ${finding.message} ${messages.goTo(cell)}`}
      >
        <ListItemText
          primary={finding.message}
          secondary={`${finding.weight} · ${cell}`}
          slotProps={{ primary: { sx: { overflowWrap: "anywhere" } } }}
        />
      </ListItemButton>
    </ListItem>
  );
}
