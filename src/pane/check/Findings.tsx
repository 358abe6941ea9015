import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import List from "@mui/material/List";
import ListItem from "@mui/material/ListItem";
import ListItemButton from "@mui/material/ListItemButton";
import ListItemText from "@mui/material/ListItemText";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo, useState } from "react";
import type { Report } from "../../check/check";
import { concede } from "../../check/concede";
import { type Concession, type Finding, isOpen, type Weight } from "../../check/finding";
import { messages } from "../../messages/en/pane";
import { KINDS } from "../../records/kinds";
import { appended } from "../../sheets/appended";
import { editedRows } from "../../sheets/editedRows";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../../sheets/ours/concessionSheet";
import { tablesOf } from "../../sheets/snapshot";
import { Choice } from "../Choice";
import type { Rows } from "../host";
import type { StepProps } from "../shared";
import type { Book } from "../useBook";
import { FindingCard } from "./FindingCard";

const text = messages.check;
/** So many findings are listed at first, and more at a time. */
const LISTED = 100;
const WEIGHTS: readonly Weight[] = ["stop", "query", "note"];

/** What a finding is known by from one check to the next. */
const identity = ({ rule, sheet, address, message }: Finding) =>
  `${rule}\u0000${sheet}\u0000${address}\u0000${message}`;

/** The findings, filtered and grouped, one of them looked at. */
export function Findings({
  report,
  shared,
  reread,
}: {
  report: Report;
  shared: StepProps;
  reread: (rows: readonly Rows[]) => Promise<Book | undefined>;
}): ReactElement {
  const [weight, setWeight] = useState("");
  const [record, setRecord] = useState("");
  const [group, setGroup] = useState<"panel" | "rule">("panel");
  const [most, setMost] = useState(LISTED);
  const [chosen, setChosen] = useState<string>();
  const { work, go } = shared;

  const groups = useMemo(() => {
    const found = new Map<string, Finding[]>();
    for (const finding of [...report.findings].sort(
      (one, other) => WEIGHTS.indexOf(one.weight) - WEIGHTS.indexOf(other.weight),
    )) {
      if (weight !== "" && finding.weight !== weight) continue;
      if (record !== "" && finding.record !== record) continue;
      const name = group === "panel" ? finding.panel || text.noPanel : finding.rule;
      const sofar = found.get(name);
      if (sofar) sofar.push(finding);
      else found.set(name, [finding]);
    }
    return [...found];
  }, [report, weight, record, group]);
  const inOrder = useMemo(() => groups.flatMap(([, findings]) => findings), [groups]);
  const at = inOrder.findIndex((finding) => identity(finding) === chosen);
  const finding = inOrder[at];

  const move = (step: number) => {
    const next = inOrder[at < 0 ? 0 : (at + step + inOrder.length) % inOrder.length];
    if (!next) return;
    setChosen(identity(next));
    go(next.sheet, next.address);
  };
  const again = (one: Finding) =>
    work.run(async () => {
      const { snapshot } = report.context;
      const sheet = snapshot.sheets.find(({ name }) => name === one.sheet);
      const next = await reread(editedRows(snapshot, sheet?.id ?? "", one.address) ?? []);
      const stands = next?.report?.findings.some((other) => identity(other) === identity(one));
      if (next) work.setTold(stands ? text.stands : text.closed);
    });

  const accept = (one: Finding, concession: Concession) =>
    work.run(async (watch) => {
      const table = tablesOf(report.context.snapshot).find(({ name }) => name === CONCESSION_TABLE);
      if (!table) {
        work.setProblem(text.noConcessions);
        return;
      }
      const rows = appended(CONCESSION_COLUMNS, [concede(one, concession)], table);
      await shared.host.change({ change: [{ table, ...rows }] }, watch);
      await shared.read(watch);
      work.setTold(text.acceptedNow);
    });

  const count = (of: Weight) =>
    report.findings.filter((one) => one.weight === of && isOpen(one)).length;
  const any = { value: "", label: text.any };
  return (
    <Box component="section" aria-labelledby="findings">
      <Typography id="findings" variant="h2">
        {text.heading}
      </Typography>
      <Typography variant="body2">
        {text.count(count("stop"), count("query"), count("note"))}
      </Typography>
      <Stack direction="row" spacing={1} sx={{ my: 1 }}>
        <Choice
          label={text.weight}
          value={weight}
          choices={[any, ...WEIGHTS.map((value) => ({ value, label: text.weights[value] }))]}
          onChoose={setWeight}
        />
        <Choice
          label={text.record}
          value={record}
          choices={[any, ...KINDS.map(({ id, sheet }) => ({ value: id, label: sheet }))]}
          onChoose={setRecord}
        />
        <Choice
          label={text.group}
          value={group}
          choices={(["panel", "rule"] as const).map((value) => ({
            value,
            label: text.groups[value],
          }))}
          onChoose={(value) => setGroup(value as "panel" | "rule")}
        />
      </Stack>
      {inOrder.length > 0 && (
        <Stack direction="row" spacing={1} sx={{ alignItems: "center", mb: 1 }}>
          <Button variant="outlined" size="small" onClick={() => move(-1)}>
            {text.previous}
          </Button>
          <Typography variant="body2" sx={{ flexGrow: 1, textAlign: "center" }}>
            {text.at(at + 1, inOrder.length)}
          </Typography>
          <Button variant="outlined" size="small" onClick={() => move(1)}>
            {text.next}
          </Button>
        </Stack>
      )}
      {finding && (
        <FindingCard
          finding={finding}
          busy={work.busy}
          goTo={() => go(finding.sheet, finding.address)}
          again={() => again(finding)}
          accept={isOpen(finding) ? (given) => accept(finding, given) : undefined}
        />
      )}
      {report.findings.length === 0 && <Typography>{text.none}</Typography>}
      {report.findings.length > 0 && inOrder.length === 0 && (
        <Typography>{text.noneLikeThat}</Typography>
      )}
      <Listed
        groups={groups}
        most={most}
        chosen={chosen}
        choose={(one) => {
          setChosen(identity(one));
          go(one.sheet, one.address);
        }}
      />
      {inOrder.length > most && (
        <Button fullWidth onClick={() => setMost(most + LISTED)}>
          {text.more(inOrder.length - most)}
        </Button>
      )}
    </Box>
  );
}

/** The groups with their findings, as many as are to be listed. */
function Listed({
  groups,
  most,
  chosen,
  choose,
}: {
  groups: readonly (readonly [string, readonly Finding[]])[];
  most: number;
  chosen: string | undefined;
  choose: (finding: Finding) => void;
}): ReactElement {
  let left = most;
  return (
    <>
      {groups.map(([name, findings]) => {
        const shown = findings.slice(0, left);
        left -= shown.length;
        return shown.length === 0 ? undefined : (
          <Box key={name} sx={{ mt: 1 }}>
            <Typography variant="h3">
              {name} ({findings.length})
            </Typography>
            <List dense disablePadding aria-label={name}>
              {shown.map((finding) => (
                <ListItem key={identity(finding)} disablePadding divider>
                  <ListItemButton
                    selected={identity(finding) === chosen}
                    onClick={() => choose(finding)}
                    sx={{ px: 0.5, alignItems: "flex-start", minHeight: 44 }}
                  >
                    <ListItemText
                      primary={finding.message}
                      secondary={`${finding.concession ? text.accepted : text.weights[finding.weight]} · ${finding.sheet}!${finding.address}`}
                      slotProps={{ primary: { sx: { overflowWrap: "anywhere" } } }}
                    />
                  </ListItemButton>
                </ListItem>
              ))}
            </List>
          </Box>
        );
      })}
    </>
  );
}
