import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import type { Report } from "../../check/check";
import { useText } from "../../report/text";
import { writesOf } from "../../sheets/plan/appended";
import { papersOf } from "../../sheets/plan/plannedSheet";
import { CountChips } from "../CountChips";
import type { Rows } from "../host";
import type { OpenedWorkbook } from "../openedWorkbook";
import type { StepProps } from "../shared";
import { Findings } from "./Findings";
import { MarkButtons } from "./MarkButtons";

/** What the check found, and the marks in the sheets. */
export default function CheckStep({
  readAll,
  reread,
  ...shared
}: StepProps & {
  readAll: () => void;
  reread: (rows: readonly Rows[]) => Promise<OpenedWorkbook | undefined>;
}): ReactElement {
  const messages = useText();
  const text = messages.check;
  const { host, book, work } = shared;
  const report = book?.report;
  const list = ({ findings, context }: Report) =>
    work.run(async (watch) => {
      const { findingsSheet } = await import("../../check/findings/findingsSheet");
      const planned = findingsSheet({ findings }, messages.findings, papersOf(context.lineup));
      await host.change({ renew: [{ planned, writes: writesOf(planned) }] }, watch);
      work.setTold(text.onSheet(planned.sheet, findings.length));
    });
  return (
    <Stack spacing={1.5}>
      {!report && (
        <Typography>{book ? text.cannot(book.uncheckable ?? "") : messages.notRead}</Typography>
      )}
      {report && (
        <>
          <CountChips counts={report.counts} label={messages.state.counts} all />
          <Findings report={report} shared={shared} reread={reread} />
          <Stack spacing={1}>
            <MarkButtons findings={report.findings} host={host} work={work} />
            <Button variant="outlined" onClick={() => list(report)} disabled={work.busy}>
              {text.list}
            </Button>
          </Stack>
        </>
      )}
      <Button variant="text" onClick={readAll} disabled={work.busy}>
        {messages.read}
      </Button>
    </Stack>
  );
}
