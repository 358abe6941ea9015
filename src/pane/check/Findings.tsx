import Box from "@mui/material/Box";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo, useState } from "react";
import { byWeight } from "../../check/byWeight";
import type { Report } from "../../check/check";
import { concede } from "../../check/concede";
import { type Concession, type Finding, isOpen, type Weight } from "../../check/finding";
import { KINDS } from "../../records/kinds";
import { useText } from "../../report/text";
import { appended } from "../../sheets/appended";
import { editedRows } from "../../sheets/editedRows";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../../sheets/ours/concessionSheet";
import { tablesOf } from "../../sheets/snapshot";
import { Choice } from "../Choice";
import type { Rows } from "../host";
import type { StepProps } from "../shared";
import type { OpenedWorkbook } from "../useBook";
import { FindingCard } from "./FindingCard";
import { FindingList, identity, Mover } from "./FindingList";

const WEIGHTS: readonly Weight[] = ["stop", "query", "note"];

/** What of the findings is listed, and how. */
interface Filter {
  readonly weight: string;
  readonly record: string;
  readonly group: "panel" | "rule";
}

/** The findings, filtered and grouped, one of them looked at. */
export function Findings({
  report,
  shared,
  reread,
}: {
  report: Report;
  shared: StepProps;
  reread: (rows: readonly Rows[]) => Promise<OpenedWorkbook | undefined>;
}): ReactElement {
  const text = useText().check;
  const [filter, setFilter] = useState<Filter>({ weight: "", record: "", group: "panel" });
  const [chosen, setChosen] = useState<string>();
  const { work, go } = shared;
  const groups = useMemo(
    () => grouped(report.findings, filter, text.noPanel),
    [report, filter, text],
  );
  const inOrder = useMemo(() => groups.flatMap(([, findings]) => findings), [groups]);
  const place = inOrder.findIndex((finding) => identity(finding) === chosen);
  const finding = inOrder[place];
  const actions = useFindingActions(report, shared, reread);

  const choose = (next: Finding | undefined) => {
    if (!next) return;
    setChosen(identity(next));
    go(next.sheet, next.address);
  };
  const move = (step: number) =>
    choose(inOrder[place < 0 ? 0 : (place + step + inOrder.length) % inOrder.length]);
  const count = (weight: Weight) =>
    report.findings.filter((one) => one.weight === weight && isOpen(one)).length;
  return (
    <Box component="section" aria-labelledby="findings">
      <Typography id="findings" variant="h2">
        {text.heading}
      </Typography>
      <Typography variant="body2">
        {text.count(count("stop"), count("query"), count("note"))}
      </Typography>
      <Filters filter={filter} setFilter={setFilter} />
      {inOrder.length > 0 && <Mover place={place} count={inOrder.length} move={move} />}
      {finding && (
        <FindingCard
          finding={finding}
          busy={work.busy}
          goTo={() => go(finding.sheet, finding.address)}
          again={() => actions.again(finding)}
          accept={isOpen(finding) ? (given) => actions.accept(finding, given) : undefined}
        />
      )}
      {inOrder.length === 0 && (
        <Typography>{report.findings.length === 0 ? text.none : text.noneLikeThat}</Typography>
      )}
      <FindingList groups={groups} chosen={chosen} choose={choose} />
    </Box>
  );
}

/** The findings that a filter lets through, heaviest first, by panel or rule. */
function grouped(
  findings: readonly Finding[],
  { weight, record, group }: Filter,
  noPanel: string,
): [string, Finding[]][] {
  const groups = new Map<string, Finding[]>();
  for (const finding of byWeight(findings)) {
    if (weight !== "" && finding.weight !== weight) continue;
    if (record !== "" && finding.record !== record) continue;
    const name = group === "panel" ? finding.panel || noPanel : finding.rule;
    const sofar = groups.get(name);
    if (sofar) sofar.push(finding);
    else groups.set(name, [finding]);
  }
  return [...groups];
}

/** What can be done with a finding: check it again, accept it. */
function useFindingActions(
  report: Report,
  { work, host, read }: StepProps,
  reread: (rows: readonly Rows[]) => Promise<OpenedWorkbook | undefined>,
) {
  const text = useText().check;
  const again = (finding: Finding) =>
    work.run(async () => {
      const { snapshot } = report.context;
      const sheet = snapshot.sheets.find(({ name }) => name === finding.sheet);
      const next = await reread(editedRows(snapshot, sheet?.id ?? "", finding.address) ?? []);
      const stands = next?.report?.findings.some((now) => identity(now) === identity(finding));
      if (next) work.setTold(stands ? text.stands : text.closed);
    });
  const accept = (finding: Finding, concession: Concession) =>
    work.run(async (watch) => {
      const table = tablesOf(report.context.snapshot).find(({ name }) => name === CONCESSION_TABLE);
      if (!table) {
        work.setProblem(text.noConcessions);
        return;
      }
      const rows = appended(CONCESSION_COLUMNS, [concede(finding, concession)], table);
      await host.change({ change: [{ table, ...rows }] }, watch);
      await read(watch);
      work.setTold(text.acceptedNow);
    });
  return { again, accept };
}

function Filters({
  filter,
  setFilter,
}: {
  filter: Filter;
  setFilter: (filter: Filter) => void;
}): ReactElement {
  const text = useText().check;
  const any = { value: "", label: text.any };
  const groups = ["panel", "rule"] as const;
  return (
    <Stack direction="row" spacing={1} sx={{ my: 1 }}>
      <Choice
        label={text.weight}
        value={filter.weight}
        choices={[any, ...WEIGHTS.map((value) => ({ value, label: text.weights[value] }))]}
        onChoose={(weight) => setFilter({ ...filter, weight })}
      />
      <Choice
        label={text.record}
        value={filter.record}
        choices={[any, ...KINDS.map(({ id, sheet }) => ({ value: id, label: sheet }))]}
        onChoose={(record) => setFilter({ ...filter, record })}
      />
      <Choice
        label={text.group}
        value={filter.group}
        choices={groups.map((value) => ({ value, label: text.groups[value] }))}
        onChoose={(group) => setFilter({ ...filter, group: group as Filter["group"] })}
      />
    </Stack>
  );
}
