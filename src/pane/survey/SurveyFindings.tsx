import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo, useState } from "react";
import type { Finding, Weight } from "../../check/findings/finding";
import { useText } from "../../report/text";
import type { SurveyAnswers, SurveyReport } from "../../survey/checkSurvey";
import { CountChips } from "../CountChips";
import { FindingList, identity, Mover } from "../check/FindingList";
import { MarkButtons } from "../check/MarkButtons";
import type { Watch } from "../host";
import type { StepProps } from "../shared";
import { ColumnButtons } from "./ColumnButtons";

const WEIGHTS: readonly Weight[] = ["stop", "query", "note"];

/** What the check found, by weight; each finding leads to its cell, and all can be marked in the sheets. */
export function SurveyFindings({
  report: { counts, findings },
  answers,
  keep,
  host,
  work,
  go,
}: Pick<StepProps, "host" | "work" | "go"> & {
  report: SurveyReport;
  answers: SurveyAnswers;
  /** Keeps the answers in the workbook. */
  keep: (watch: Watch) => Promise<void>;
}): ReactElement {
  const { check: text, asItStands } = useText();
  const [chosen, setChosen] = useState<string>();
  const groups = useMemo(
    () =>
      WEIGHTS.map(
        (weight) =>
          [text.weights[weight], findings.filter((finding) => finding.weight === weight)] as const,
      ),
    [findings, text],
  );
  const inOrder = groups.flatMap(([, listed]) => listed);
  const place = inOrder.findIndex((finding) => identity(finding) === chosen);
  const choose = (next: Finding | undefined) => {
    if (!next) return;
    setChosen(identity(next));
    go(next.sheet, next.address);
  };
  const move = (step: number) =>
    choose(inOrder[place < 0 ? 0 : (place + step + inOrder.length) % inOrder.length]);
  const [stop = 0, query = 0, note = 0] = groups.map(([, listed]) => listed.length);
  return (
    <Stack component="section" spacing={1} aria-labelledby="survey-findings">
      <Typography id="survey-findings" variant="h2">
        {text.heading}
      </Typography>
      <CountChips counts={counts} label={asItStands.counts} all />
      <Typography variant="body2">
        {text.count(stop, query, note)}. {asItStands.asOf}
      </Typography>
      <MarkButtons findings={findings} host={host} work={work} first={keep} />
      <ColumnButtons answers={answers} host={host} work={work} first={keep} />
      {inOrder.length > 0 ? (
        <Mover place={place} count={inOrder.length} move={move} />
      ) : (
        <Typography>{text.none}</Typography>
      )}
      <FindingList
        groups={groups.map(([name, listed]) => [name, listed.map((finding) => [finding])])}
        chosen={chosen}
        choose={choose}
      />
    </Stack>
  );
}
