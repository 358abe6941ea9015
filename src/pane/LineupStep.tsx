import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { lazy, type ReactElement, startTransition, useState } from "react";
import type { Lineup } from "../lineup/lineup";
import { useText } from "../report/text";
import { type BuildResult, BuildTold } from "./BuildResult";
import { FileButton } from "./FileButton";
import type { RowChoice } from "./rowChoice";
import type { StepProps } from "./shared";
import type { Surveyed } from "./survey/surveyed";

const SurveyStep = lazy(() => import("./survey/SurveyStep"));
const Editor = lazy(() => import("./lineup/Editor"));
const FunctionsStep = lazy(() => import("./functions/FunctionsStep"));
const State = lazy(() => import("./State"));

/** Describes and builds the lineup; once that is done, shows how it stands. */
export function LineupStep({
  toRows,
  ...shared
}: StepProps & { toRows: (choice: RowChoice) => void }): ReactElement {
  const messages = useText();
  const text = messages.lineup;
  const { book, work } = shared;
  /** The lineup that is being described; `new` for a blank one. */
  const [draft, setDraft] = useState<Lineup | "new">();
  /** The workbook in layouts of its own that is being checked as it stands. */
  const [surveyed, setSurveyed] = useState<Surveyed>();
  /** Whether the worksheet functions are looked at. */
  const [functions, setFunctions] = useState(false);
  /** What the last build came to. */
  const [result, setResult] = useState<BuildResult>();
  const lineup = book?.report?.context.lineup ?? book?.snapshot.lineup;

  const open = (file: File) =>
    work.run(async () => {
      const [{ readLineup }, { toldIn }] = await Promise.all([
        import("../records/readLineup"),
        import("../messages/told"),
      ]);
      const read = readLineup(await file.text());
      if (read.ok) {
        setDraft(read.value);
        work.setTold(text.opened(file.name));
        return;
      }
      const told = toldIn(messages.language);
      const lines = read.errors.map(({ path, message }) => `${path}: ${message(told)}`);
      work.setProblem([text.fileErrors(file.name, lines.length), ...lines].join("\n"));
    });

  const survey = () =>
    work.run(async (watch) => {
      const { surveyWorkbook } = await import("./survey/surveyed");
      const found = await surveyWorkbook(shared.host, watch, messages.survey);
      startTransition(() => setSurveyed(found));
    });

  const done = (built?: BuildResult) => {
    setDraft(undefined);
    setResult(built);
  };
  if (draft !== undefined) return <Editor {...shared} lineup={draft} done={done} />;
  if (functions) return <FunctionsStep {...shared} done={() => setFunctions(false)} />;
  if (surveyed && !lineup)
    return <SurveyStep {...shared} surveyed={surveyed} done={() => setSurveyed(undefined)} />;
  if (!book) return <Typography>{work.busy ? messages.working : messages.notRead}</Typography>;
  return (
    <Stack spacing={2}>
      {result && <BuildTold {...shared} result={result} close={() => setResult(undefined)} />}
      <Standing book={book} toRows={toRows} hasLineup={lineup !== undefined} />
      <Stack spacing={1}>
        <Button
          variant={book.report ? "outlined" : "contained"}
          disabled={work.busy}
          onClick={() => {
            setResult(undefined);
            startTransition(() => setDraft(lineup ?? "new"));
          }}
        >
          {lineup ? text.edit : text.start}
        </Button>
        <FileButton
          id="lineup-file"
          label={text.open}
          accept=".json"
          disabled={work.busy}
          onFile={open}
        />
        {!lineup && (
          <Button variant="outlined" disabled={work.busy} onClick={survey}>
            {messages.asItStands.open}
          </Button>
        )}
        <Button variant="outlined" onClick={() => startTransition(() => setFunctions(true))}>
          {messages.functions.open}
        </Button>
        <Button
          variant="text"
          disabled={work.busy}
          onClick={() => work.run(async (watch) => void (await shared.read(watch)))}
        >
          {messages.read}
        </Button>
      </Stack>
    </Stack>
  );
}

/** How the workbook stands, or why it cannot be said. */
function Standing({
  book,
  toRows,
  hasLineup,
}: {
  book: NonNullable<StepProps["book"]>;
  toRows: (choice: RowChoice) => void;
  hasLineup: boolean;
}): ReactElement {
  const { check, lineup } = useText();
  if (book.report) return <State report={book.report} toRows={toRows} />;
  return <Typography>{hasLineup ? check.cannot(book.uncheckable ?? "") : lineup.none}</Typography>;
}
