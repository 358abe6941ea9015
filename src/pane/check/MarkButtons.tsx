import Button from "@mui/material/Button";
import type { ReactElement } from "react";
import type { Finding } from "../../check/findings/finding";
import { useText } from "../../report/text";
import type { Watch } from "../host";
import type { StepProps } from "../shared";

/** Marks findings in the sheets, and takes the marks off again. */
export function MarkButtons({
  findings,
  host,
  work,
  first,
}: Pick<StepProps, "host" | "work"> & {
  findings: readonly Finding[];
  /** What is to be written into the workbook besides, before the marks. */
  first?: (watch: Watch) => Promise<void>;
}): ReactElement {
  const text = useText().check;
  const mark = () =>
    work.run(async (watch) => {
      await first?.(watch);
      const { cells } = await host.mark(findings, watch);
      work.setTold(text.marked(cells));
    });
  const unmark = () =>
    work.run(async (watch) => {
      await host.clearMarks(watch);
      work.setTold(text.unmarked);
    });
  return (
    <>
      <Button variant="outlined" onClick={mark} disabled={work.busy}>
        {text.mark}
      </Button>
      <Button variant="outlined" onClick={unmark} disabled={work.busy}>
        {text.unmark}
      </Button>
    </>
  );
}
