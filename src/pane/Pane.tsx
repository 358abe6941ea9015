import Alert from "@mui/material/Alert";
import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import LinearProgress from "@mui/material/LinearProgress";
import Stack from "@mui/material/Stack";
import Tab from "@mui/material/Tab";
import Tabs from "@mui/material/Tabs";
import Typography from "@mui/material/Typography";
import {
  Activity,
  lazy,
  type ReactElement,
  Suspense,
  startTransition,
  useCallback,
  useEffect,
  useRef,
  useState,
} from "react";
import { useText } from "../report/text";
import type { WorkbookHost } from "./host";
import { LineupStep } from "./LineupStep";
import type { RowChoice } from "./rowChoice";
import { useBook } from "./useBook";
import { useWork } from "./useWork";

const ReadingsStep = lazy(() => import("./readings/ReadingsStep"));
const CheckStep = lazy(() => import("./check/CheckStep"));
const HandOverStep = lazy(() => import("./handOver/HandOverStep"));

const STEPS = ["lineup", "readings", "check", "handOver"] as const;
type StepName = (typeof STEPS)[number];
const FIRST: StepName = "lineup";

/** The pane: its four steps, and what goes on in each. */
export function Pane({ host }: { host: WorkbookHost }): ReactElement {
  const messages = useText();
  const [step, setStep] = useState<StepName>(FIRST);
  /** Steps that were looked at: they keep what was begun in them, and are there at once again. */
  const [opened, setOpened] = useState<ReadonlySet<StepName>>(new Set([FIRST]));
  const [choice, setChoice] = useState<RowChoice>({ kind: undefined, object: undefined });
  const work = useWork(step);
  const { run, busy } = work;
  const working = useRef(false);
  working.current = busy;
  const { book, stale, selected, edited, setEdited, read, readFilled, reread } = useBook(
    host,
    useCallback(() => working.current, []),
  );

  const readAll = useCallback(() => run(async (watch) => void (await read(watch))), [run, read]);
  useEffect(() => {
    void readAll();
  }, [readAll]);

  const go = useCallback(
    (sheet: string, address: string) => void run(() => host.goTo(sheet, address)),
    [run, host],
  );
  const show = useCallback(
    (next: StepName) =>
      startTransition(() => {
        setStep(next);
        setOpened((before) => (before.has(next) ? before : new Set([...before, next])));
      }),
    [],
  );
  const toRows = useCallback(
    (next: RowChoice) => {
      startTransition(() => setChoice(next));
      show("readings");
    },
    [show],
  );
  // A row that is selected in the workbook is the one to look at.
  useEffect(() => {
    if (selected) startTransition(() => setChoice(selected));
  }, [selected]);
  const shared = { host, book, work, read, readFilled, go };
  const steps: Readonly<Record<StepName, () => ReactElement>> = {
    lineup: () => <LineupStep {...shared} toRows={toRows} />,
    readings: () => (
      <ReadingsStep
        {...shared}
        choice={choice}
        setChoice={setChoice}
        edited={edited}
        setEdited={setEdited}
        reread={reread}
      />
    ),
    check: () => <CheckStep {...shared} reread={reread} readAll={readAll} />,
    handOver: () => <HandOverStep {...shared} />,
  };

  return (
    <Stack component="main" sx={{ minHeight: "100vh" }}>
      <Box sx={{ px: 1.5, pt: 1 }}>
        <Typography variant="h1">{messages.title}</Typography>
      </Box>
      <Box sx={{ position: "sticky", top: 0, zIndex: 2, bgcolor: "background.default", pb: 0.5 }}>
        <Tabs
          value={step}
          onChange={(_event, next: StepName) => show(next)}
          variant="fullWidth"
          aria-label={messages.stepsLabel}
          sx={{ borderBottom: 1, borderColor: "divider" }}
        >
          {STEPS.map((name) => (
            <Tab
              key={name}
              value={name}
              label={messages.steps[name]}
              id={`step-${name}`}
              aria-controls={`panel-${name}`}
              // As wide as its word asks, so that the longest does not stand at the edge of a narrow pane.
              sx={{ px: 0.5, minWidth: 0, flexBasis: "auto" }}
            />
          ))}
        </Tabs>
        <Told work={work} stale={stale} isPartly={book?.isPartly === true} readAll={readAll} />
      </Box>
      {STEPS.filter((name) => opened.has(name)).map((name) => (
        <Activity key={name} mode={name === step ? "visible" : "hidden"}>
          <Box
            role="tabpanel"
            id={`panel-${name}`}
            aria-labelledby={`step-${name}`}
            sx={{ p: 1.5, flexGrow: 1 }}
          >
            <Suspense fallback={<Typography>{messages.working}</Typography>}>
              {steps[name]()}
            </Suspense>
          </Box>
        </Activity>
      ))}
      <Typography variant="body2" color="text.secondary" sx={{ p: 1.5 }}>
        {messages.caution}
      </Typography>
    </Stack>
  );
}

/** What goes on, what came of it, and whether the workbook has to be read again. */
function Told({
  work: { busy, progress, problem, told, hush, stop },
  stale,
  isPartly,
  readAll,
}: {
  work: ReturnType<typeof useWork>;
  stale: boolean;
  isPartly: boolean;
  readAll: () => void;
}): ReactElement {
  const messages = useText();
  return (
    <Box sx={{ px: 1.5 }}>
      {busy && (
        <Stack spacing={0.5} role="status" aria-label={messages.working} sx={{ pt: 1 }}>
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
      <Stack aria-live="polite" spacing={1} sx={{ "&:not(:empty)": { pt: 1 } }}>
        {isPartly && <Alert severity="info">{messages.formulasToCome}</Alert>}
        {told && (
          <Alert severity="info" onClose={hush} closeText={messages.closeMessage}>
            {told}
          </Alert>
        )}
        {problem && (
          <Alert
            severity="warning"
            onClose={hush}
            closeText={messages.closeMessage}
            sx={{
              whiteSpace: "pre-line",
              overflowWrap: "anywhere",
              maxHeight: "50vh",
              overflowY: "auto",
            }}
          >
            {problem}
          </Alert>
        )}
        {stale && !busy && (
          <Alert
            severity="info"
            action={
              <Button size="small" onClick={readAll}>
                {messages.read}
              </Button>
            }
          >
            {messages.stale}
          </Alert>
        )}
      </Stack>
    </Box>
  );
}
