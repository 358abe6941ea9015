import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import { useText } from "../../report/text";
import type { Correction } from "../../sheets/kept/surveyAnswers";
import type { SurveyAnswers, SurveyReport } from "../../survey/checkSurvey";
import type { Watch } from "../host";
import { useLocale } from "../locale";
import type { StepProps } from "../shared";
import { type Asked, answersOf, askedBy, Questions } from "./Questions";
import { Recognised } from "./Recognised";
import { SurveyFindings } from "./SurveyFindings";
import { checkWorkbook, keepAnswers, type Surveyed, surveyWorkbook } from "./surveyed";

/** A workbook without a lineup: what was recognised, what has to be asked, and what the check found. */
export default function SurveyStep({
  surveyed,
  host,
  work,
  go,
  done,
}: Pick<StepProps, "host" | "work" | "go"> & {
  surveyed: Surveyed;
  done: () => void;
}): ReactElement {
  const messages = useText();
  const text = messages.asItStands;
  const locale = useLocale();
  const [found, setFound] = useState(surveyed);
  const { survey: kept } = found.remembered;
  const [corrections, setCorrections] = useState(kept?.corrections ?? []);
  const [asked, setAsked] = useState(() => askedBy(surveyed.guesses, kept, locale));
  const [report, setReport] = useState<SurveyReport>();
  const [listed, setListed] = useState(true);
  const answered = answersOf(asked, locale);
  const answers = answered && {
    ...answered,
    ...(corrections.length > 0 ? { corrections } : {}),
  };
  const { blocks } = found;

  /** Another answer asks for another check. */
  const answer = (next: Asked) => {
    setAsked(next);
    setReport(undefined);
  };
  const correct = (next: readonly Correction[]) =>
    work.run(async (watch) => {
      setFound(await surveyWorkbook(host, watch, messages.survey, next));
      setCorrections(next);
      setReport(undefined);
    });
  const keep = (watch: Watch) => keepAnswers(host, watch, found.remembered, answers ?? {});
  const check = (given: SurveyAnswers) =>
    work.run(async (watch) => {
      setReport(await checkWorkbook(host, watch, given, messages.survey));
      setListed(false);
    });
  return (
    <Stack component="section" spacing={1.5} aria-labelledby="as-it-stands">
      <Typography id="as-it-stands" variant="h2">
        {text.heading}
      </Typography>
      {blocks.length === 0 && <Typography>{text.nothing}</Typography>}
      {(blocks.length > 0 || corrections.length > 0) && (
        <>
          <Recognised
            blocks={blocks}
            open={listed}
            setOpen={setListed}
            go={go}
            host={host}
            work={work}
            corrections={corrections}
            correct={correct}
          />
          {kept && <Typography variant="body2">{messages.putRight.kept}</Typography>}
          <Questions asked={asked} guesses={found.guesses} onAnswer={answer} />
          <Button
            variant={report ? "outlined" : "contained"}
            disabled={work.busy || !answers}
            onClick={() => answers && check(answers)}
          >
            {report ? text.again : text.check}
          </Button>
        </>
      )}
      {report && answers && (
        <SurveyFindings
          report={report}
          answers={answers}
          keep={keep}
          host={host}
          work={work}
          go={go}
        />
      )}
      <Button variant="text" onClick={done}>
        {messages.lineup.back}
      </Button>
    </Stack>
  );
}
