import Box from "@mui/material/Box";
import ButtonBase from "@mui/material/ButtonBase";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import type { Report } from "../../check/check";
import { isOpen } from "../../check/findings/finding";
import { verdictOf } from "../../records/kind";
import { STANDING, standingKey } from "../../report/standing";
import { useText } from "../../report/text";
import type { RowChoice } from "../rowChoice";

/** So many findings of a row are shown. */
const SHOWN = 3;

/** The row that was typed in last, with its result and what the check finds of it, in sight while one types on. */
export function LastTyped({
  report,
  edited,
  look,
}: {
  report: Report;
  edited: RowChoice;
  look: (choice: RowChoice) => void;
}): ReactElement | undefined {
  const text = useText().readings;
  const { row } = edited;
  const table = report.context.tables.find(({ kind }) => kind.id === edited.kind);
  const judged = row === undefined ? undefined : table?.judged[row];
  if (!table || row === undefined || !judged) return undefined;
  const verdict = verdictOf(judged);
  const { fill, ink } = STANDING[standingKey(verdict)];
  const findings = report.findings.filter(
    (finding) =>
      finding.record === table.kind.id && finding.row === table.keys[row] && isOpen(finding),
  );
  return (
    <Box
      component="section"
      aria-label={text.lastTyped}
      aria-live="polite"
      sx={{ border: 1, borderColor: "divider", p: 1, bgcolor: "background.paper" }}
    >
      <ButtonBase
        onClick={() => look(edited)}
        sx={{ width: "100%", justifyContent: "space-between", gap: 1, textAlign: "start" }}
      >
        <span>
          <Typography component="span" variant="body2" color="text.secondary">
            {text.lastTyped}:{" "}
          </Typography>
          {table.keys[row]}
        </span>
        <Box
          component="strong"
          sx={{ px: 0.75, border: "1px solid var(--ink)", bgcolor: fill, color: ink }}
        >
          {verdict}
        </Box>
      </ButtonBase>
      {findings.slice(0, SHOWN).map(({ address, message }) => (
        <Typography key={`${address} ${message}`} variant="body2" sx={{ overflowWrap: "anywhere" }}>
          {address}: {message}
        </Typography>
      ))}
    </Box>
  );
}
