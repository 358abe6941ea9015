import Box from "@mui/material/Box";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo, useState } from "react";
import type { Report } from "../../check/check";
import { concede } from "../../check/concessions/concede";
import { withdraw as withdrawal } from "../../check/concessions/withdraw";
import { byCause, filterFindings } from "../../check/findings/filterFindings";
import { type Concession, type Finding, isOpen, type Weight } from "../../check/findings/finding";
import { panelsOf } from "../../check/panelsOf";
import type { RepairSaid } from "../../intake/reopenRecord";
import { toldIn } from "../../messages/told";
import { verdictOf } from "../../records/kind";
import { useText } from "../../report/text";
import { editedRows } from "../../sheets/editedRows";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../../sheets/ours/concessionSheet";
import { appended } from "../../sheets/plan/appended";
import type { TableChange } from "../../sheets/plan/reconcile";
import { type TableSnapshot, tablesOf } from "../../sheets/snapshot";
import type { Rows } from "../host";
import type { OpenedWorkbook } from "../openedWorkbook";
import type { StepProps } from "../shared";
import { useKept } from "../useKept";
import { ALL, Filters } from "./Filters";
import { FindingCard } from "./FindingCard";
import { FindingList, identity, Mover } from "./FindingList";
import { reopen } from "./reopen";

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
  const [shown, setShown] = useKept("gearproof.findings", ALL);
  const [chosen, setChosen] = useState<string>();
  const { work, go } = shared;
  const groups = useMemo(
    () =>
      grouped(filterFindings(report, shown), ({ panel, rule }) =>
        shown.group === "panel" ? panel || text.noPanel : rule,
      ),
    [report, shown, text],
  );
  const inOrder = useMemo(() => groups.flatMap(([, causes]) => causes.flat()), [groups]);
  const place = inOrder.findIndex((finding) => identity(finding) === chosen);
  const finding = inOrder[place];
  const alike = useMemo(
    () =>
      groups.flatMap(([, causes]) => causes).find((cause) => finding && cause.includes(finding)),
    [groups, finding],
  );
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
      <Filters report={report} shown={shown} setShown={setShown} />
      {inOrder.length > 0 && <Mover place={place} count={inOrder.length} move={move} />}
      {finding && (
        <FindingCard
          finding={finding}
          alike={alike?.filter(isOpen) ?? []}
          busy={work.busy}
          goTo={() => go(finding.sheet, finding.address)}
          again={() => actions.again(finding)}
          accept={isOpen(finding) ? actions.accept : undefined}
          repair={actions.repair(finding)}
          withdraw={isOpen(finding) ? undefined : () => actions.withdraw(finding)}
        />
      )}
      {inOrder.length === 0 && (
        <Typography>{report.findings.length === 0 ? text.none : text.noneLikeThat}</Typography>
      )}
      <FindingList groups={groups} chosen={chosen} choose={choose} />
    </Box>
  );
}

/** Findings by what they are grouped by, and in each group by their cause. */
function grouped(
  findings: readonly Finding[],
  nameOf: (finding: Finding) => string,
): [string, Finding[][]][] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const name = nameOf(finding);
    const sofar = groups.get(name);
    if (sofar) sofar.push(finding);
    else groups.set(name, [finding]);
  }
  return [...groups].map(([name, found]) => [name, byCause(found)]);
}

/** What can be done with a finding: check it again, accept it. */
function useFindingActions(
  report: Report,
  { work, host, read }: StepProps,
  reread: (rows: readonly Rows[]) => Promise<OpenedWorkbook | undefined>,
) {
  const { check: text, language } = useText();
  const told = toldIn(language);
  const again = (finding: Finding) =>
    work.run(async () => {
      const { snapshot } = report.context;
      const sheet = snapshot.sheets.find(({ name }) => name === finding.sheet);
      const next = await reread(editedRows(snapshot, sheet?.id ?? "", finding.address) ?? []);
      const stands = next?.report?.findings.some((now) => identity(now) === identity(finding));
      if (next) work.setTold(stands ? text.stands : text.closed);
    });
  const table = tablesOf(report.context.snapshot).find(({ name }) => name === CONCESSION_TABLE);
  const change = (write: (table: TableSnapshot) => TableWrites, told: string) =>
    work.run(async (watch) => {
      if (!table) {
        work.setProblem(text.noConcessions);
        return;
      }
      await host.change({ change: [{ table, ...write(table) }] }, watch);
      await read(watch);
      work.setTold(told);
    });
  const accept = (findings: readonly Finding[], concession: Concession) =>
    change(
      (table) =>
        appended(
          CONCESSION_COLUMNS,
          findings.map((finding) => concede(finding, concession)),
          table,
        ),
      text.acceptedNow(findings.length),
    );
  const withdraw = (finding: Finding) =>
    change((table) => ({ added: 0, writes: withdrawal(finding, table) }), text.withdrawn);
  const repair = (finding: Finding) => {
    const place = failedRecord(report, finding);
    if (!place) return undefined;
    const reopenNow = (said: RepairSaid) =>
      work.run(async (watch) => {
        const { reopenRecord } = await import("../../intake/reopenRecord");
        const { book, today } = report.context;
        const reopened = reopenRecord(book, place.table, place.row, said, today);
        if (!reopened.ok) {
          work.setProblem(reopened.say(told));
          return;
        }
        const heldBack = await reopen(host, reopened.value, watch);
        await read(watch);
        if (heldBack > 0) work.setProblem(text.repair.heldBack(heldBack));
        else work.setTold(text.repair.reopened(finding.row ?? ""));
      });
    return { panels: place.panels, reopen: reopenNow };
  };
  return { again, accept, withdraw, repair };
}

/** The record of a finding where its test failed or proves nothing, and the panels of its bus section. */
function failedRecord({ context }: Report, { sheet, record, row }: Finding) {
  const table = context.tables.find(
    ({ kind, table }) => kind.id === record && table.sheet === sheet && !table.ownLayout,
  );
  const at = table?.keys.indexOf(row ?? "") ?? -1;
  const judged = table?.judged[at];
  if (!table || !judged || !REPAIRED.has(verdictOf(judged))) return undefined;
  const { panels } = context.lineup;
  const object = String(judged.object ?? "");
  return {
    ...{ table, row: at },
    panels: panels.some(({ designation }) => designation === object)
      ? []
      : panelsOf(context.lineup, object),
  };
}

const REPAIRED: ReadonlySet<string> = new Set(["Fail", "Inconclusive"]);

type TableWrites = Pick<TableChange, "added" | "writes">;
