import Box from "@mui/material/Box";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo } from "react";
import type { Messages } from "../../messages/messages";
import { isBlank } from "../../records/kind";
import { useText } from "../../report/text";
import type { Plan } from "../../sheets/plan/plan";
import { planOnto } from "../../sheets/plan/planOnto";
import { reconcile } from "../../sheets/plan/reconcile";
import { recordTables } from "../../sheets/recordTable";
import type { Snapshot } from "../../sheets/snapshot";

/** So many rows set aside are named. */
const NAMED = 6;

/** What building will add, keep and leave alone. */
export function Preview({
  plan,
  snapshot,
}: {
  plan: Plan;
  snapshot: Snapshot | undefined;
}): ReactElement {
  const text = useText().lineup;
  const lines = useMemo(() => linesOf(plan, snapshot, text), [plan, snapshot, text]);
  return (
    <Box
      component="section"
      aria-labelledby="preview"
      sx={{ border: 1, borderColor: "divider", p: 1 }}
    >
      <Typography id="preview" variant="h3">
        {text.previewHeading}
      </Typography>
      <Box component="ul" sx={{ m: 0, paddingInlineStart: 2.5 }}>
        {lines.map((line) => (
          <li key={line}>
            <Typography variant="body2">{line}</Typography>
          </li>
        ))}
      </Box>
    </Box>
  );
}

function linesOf(plan: Plan, snapshot: Snapshot | undefined, text: Messages["lineup"]): string[] {
  const { create, change } = reconcile(planOnto(plan, snapshot), snapshot);
  const readings = (snapshot ? recordTables(snapshot) : []).reduce((sum, { kind, rows }) => {
    const entries = kind.columns.filter(({ role }) => role === "entry").map(({ id }) => id);
    return (
      sum + rows.reduce((own, row) => own + entries.filter((id) => !isBlank(row[id])).length, 0)
    );
  }, 0);
  const changes = change.flatMap(({ table, added, writes, aside, renamed }) => {
    const updated = writes.filter(({ row }) => row < table.rowCount).length;
    return [
      ...(added > 0 ? [text.adds(table.sheet, added)] : []),
      ...(renamed > 0 ? [text.renames(table.sheet, renamed)] : []),
      ...(updated > 0 ? [text.updates(table.sheet, updated)] : []),
      ...(aside.length > 0
        ? [text.asides(table.sheet, aside.slice(0, NAMED), Math.max(0, aside.length - NAMED))]
        : []),
    ];
  });
  return [
    ...create.map(({ planned }) => text.creates(planned.sheet, planned.rows.length)),
    ...changes,
    ...(create.length + changes.length === 0 ? [text.nothing] : []),
    text.keeps(readings),
  ];
}
