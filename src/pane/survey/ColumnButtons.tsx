import Button from "@mui/material/Button";
import type { ReactElement } from "react";
import { useText } from "../../report/text";
import type { SurveyAnswers } from "../../survey/checkSurvey";
import type { Watch } from "../host";
import type { StepProps } from "../shared";
import { columnsFor } from "./surveyed";

/** Puts result columns beside the user's own tables, and takes them off again. */
export function ColumnButtons({
  answers,
  host,
  work,
  first,
}: Pick<StepProps, "host" | "work"> & {
  answers: SurveyAnswers;
  first: (watch: Watch) => Promise<void>;
}): ReactElement {
  const messages = useText();
  const text = messages.asItStands;
  const add = () =>
    work.run(async (watch) => {
      const { beside, without } = await columnsFor(host, watch, answers, messages.survey);
      await first(watch);
      await host.addBeside(beside, watch);
      const left = without.map(({ sheet, range, why }) => text.columnsLeftOut(sheet, range, why));
      work.setTold(text.columnsAdded(beside.length, left));
    });
  const remove = () =>
    work.run(async (watch) => {
      work.setTold(text.columnsRemoved(await host.removeBeside(watch)));
    });
  return (
    <>
      <Button variant="outlined" onClick={add} disabled={work.busy}>
        {text.addColumns}
      </Button>
      <Button variant="outlined" onClick={remove} disabled={work.busy}>
        {text.removeColumns}
      </Button>
    </>
  );
}
