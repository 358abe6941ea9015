import Stack from "@mui/material/Stack";
import { type ReactElement, useMemo } from "react";
import type { Report } from "../../check/check";
import { type FindingFilter, NO_FILTER } from "../../check/findings/filterFindings";
import type { Weight } from "../../check/findings/finding";
import { KINDS } from "../../records/kinds";
import { useText } from "../../report/text";
import { Choice } from "../Choice";
import { Entry } from "../Entry";

const WEIGHTS: readonly Weight[] = ["stop", "query", "note"];
const STATES = ["Fail", "Missing", "Inconclusive", "today"] as const;
const GROUPS = ["panel", "rule"] as const;

/** What of the findings is listed, and how. */
export interface Shown extends FindingFilter {
  readonly group: (typeof GROUPS)[number];
}

export const ALL: Shown = { ...NO_FILTER, group: "panel" };

/** What of the findings is to be listed; of panels and records those alone that have any. */
export function Filters({
  report,
  shown,
  setShown,
}: {
  report: Report;
  shown: Shown;
  setShown: (shown: Shown) => void;
}): ReactElement {
  const text = useText().check;
  const { panels, records } = useMemo(() => found(report), [report]);
  const any = { value: "", label: text.any };
  const set = (change: Partial<Shown>) => setShown({ ...shown, ...change });
  return (
    <Stack spacing={1} sx={{ my: 1 }}>
      <Stack direction="row" spacing={1}>
        <Choice
          label={text.state}
          value={shown.state}
          choices={[any, ...STATES.map((value) => ({ value, label: text.states[value] }))]}
          onChoose={(state) => set({ state: state as Shown["state"] })}
        />
        <Choice
          label={text.weight}
          value={shown.weight}
          choices={[any, ...WEIGHTS.map((value) => ({ value, label: text.weights[value] }))]}
          onChoose={(weight) => set({ weight: weight as Shown["weight"] })}
        />
        <Choice
          label={text.group}
          value={shown.group}
          choices={GROUPS.map((value) => ({ value, label: text.groups[value] }))}
          onChoose={(group) => set({ group: group as Shown["group"] })}
        />
      </Stack>
      {shown.state === "today" && (
        <Entry
          label={text.tester}
          value={shown.tester}
          hint={text.testerHelp}
          onEnter={(tester) => set({ tester })}
        />
      )}
      <Stack direction="row" spacing={1}>
        <Choice
          label={text.panel}
          value={panels.includes(shown.panel) ? shown.panel : ""}
          choices={[any, ...panels.map((value) => ({ value, label: value }))]}
          onChoose={(panel) => set({ panel })}
        />
        <Choice
          label={text.record}
          value={shown.record}
          choices={[
            any,
            ...KINDS.filter(({ id }) => records.has(id) || id === shown.record).map(
              ({ id, sheet }) => ({ value: id, label: sheet }),
            ),
          ]}
          onChoose={(record) => set({ record })}
        />
      </Stack>
    </Stack>
  );
}

/** The panels and record kinds that findings are of. */
function found({ findings, context }: Report) {
  const named = new Set(findings.map(({ panel }) => panel));
  const objects = new Set(
    context.tables.flatMap(({ rows }) => rows.map(({ object }) => String(object))),
  );
  return {
    panels: [...objects].filter((object) => named.has(object)),
    records: new Set(findings.map(({ record }) => record)),
  };
}
