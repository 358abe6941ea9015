import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import List from "@mui/material/List";
import ListItem from "@mui/material/ListItem";
import ListItemButton from "@mui/material/ListItemButton";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useCallback, useMemo, useState } from "react";
import type { Report } from "../check/check";
import { countWords, type Matrix, matrix, standing, standings } from "../check/progress/matrix";
import { firstSteps, nextSteps } from "../check/progress/next";
import { Elevation } from "../report/Elevation";
import { STANDING } from "../report/standing";
import { useText } from "../report/text";
import { CountChips } from "./CountChips";
import type { RowChoice } from "./rowChoice";

/** Least width of a panel in the drawing, px. */
const LEAST = 60;
/** So many next steps are listed, the others counted. */
const NEXT = 6;

/** How the lineup stands at a glance: drawing, counts by record, what is next and what blocks it. */
export default function State({
  report,
  toRows,
}: {
  report: Report;
  toRows: (choice: RowChoice) => void;
}): ReactElement {
  const text = useText().state;
  const [object, setObject] = useState<string>();
  const table = useMemo(() => matrix(report.context), [report]);
  const standingOf = useMemo(() => standings(report, table), [report, table]);
  const choose = useCallback(
    (next: string) => setObject((before) => (next === before ? undefined : next)),
    [],
  );
  const shown = object !== undefined && table.objects.includes(object) ? object : undefined;
  return (
    <Stack component="section" spacing={1.5} aria-labelledby="state">
      <Typography id="state" variant="h2">
        {text.heading}
      </Typography>
      <CountChips counts={report.counts} label={text.counts} all />
      <Box sx={{ overflowX: "auto", pb: 0.5 }} role="group" aria-label={text.elevation} dir="ltr">
        <Elevation
          lineup={report.context.lineup}
          standingOf={standingOf}
          least={LEAST}
          onChoose={choose}
          {...(shown === undefined ? {} : { chosen: shown })}
        />
      </Box>
      <ByRecord table={table} object={shown} toRows={toRows} />
      {shown !== undefined && (
        <Button variant="text" onClick={() => setObject(undefined)}>
          {text.all}
        </Button>
      )}
      <Next report={report} object={shown} toRows={toRows} />
      <Whole table={table} toRows={toRows} />
    </Stack>
  );
}

/** The records of one panel, or of all together, each with its counts; each leads to its rows. */
function ByRecord({
  table,
  object,
  toRows,
}: {
  table: Matrix;
  object: string | undefined;
  toRows: (choice: RowChoice) => void;
}): ReactElement {
  const { state: text, findings } = useText();
  const heading = object === undefined ? text.wholeLineup : text.chosen(object);
  return (
    <Box>
      <Typography variant="h3">{heading}</Typography>
      <List dense disablePadding aria-label={heading}>
        {table.kinds.map(({ id, title }) => {
          const counts = object === undefined ? table.total(id) : table.cell(object, id);
          return counts ? (
            <ListItem key={id} disablePadding divider>
              <ListItemButton
                onClick={() => toRows({ kind: id, object })}
                sx={{ px: 0.5, minHeight: 44, flexWrap: "wrap", columnGap: 1 }}
              >
                <Typography component="span" sx={{ flexGrow: 1 }}>
                  {title}
                </Typography>
                <CountChips counts={counts} label={countWords(counts, findings)} />
              </ListItemButton>
            </ListItem>
          ) : undefined;
        })}
      </List>
    </Box>
  );
}

function Next({
  report,
  object,
  toRows,
}: {
  report: Report;
  object: string | undefined;
  toRows: (choice: RowChoice) => void;
}): ReactElement {
  const text = useText().state;
  const steps = useMemo(() => {
    const all = nextSteps(report.context);
    return object === undefined ? firstSteps(all) : all.filter((step) => step.object === object);
  }, [report, object]);
  return (
    <Box>
      <Typography variant="h3">{text.next}</Typography>
      {steps.length === 0 && <Typography>{text.nothingNext}</Typography>}
      <List dense disablePadding aria-label={text.next}>
        {steps.slice(0, NEXT).map((step) => (
          <ListItem key={`${step.kind.id} ${step.object} ${step.stage}`} disablePadding divider>
            <ListItemButton
              onClick={() => toRows({ kind: step.kind.id, object: step.object })}
              sx={{ px: 0.5, minHeight: 44, display: "block" }}
            >
              <Typography component="span" sx={{ display: "block", fontWeight: 700 }}>
                {step.object}: {step.kind.sheet}
                {step.stage && ` (${step.stage})`}
              </Typography>
              <Typography component="span" variant="body2">
                {text.missing(step.missing)}
                {step.blockedBy.length > 0 &&
                  `; ${text.blocked(step.blockedBy.map(({ kind }) => kind.sheet).join(", "))}`}
              </Typography>
            </ListItemButton>
          </ListItem>
        ))}
      </List>
      {steps.length > NEXT && <Typography>{text.more(steps.length - NEXT)}</Typography>}
    </Box>
  );
}

/** Panel by record, with counts in each cell. */
function Whole({
  table,
  toRows,
}: {
  table: Matrix;
  toRows: (choice: RowChoice) => void;
}): ReactElement {
  const { state: text, findings } = useText();
  // Thousands of cells are made only to be looked at.
  const [open, setOpen] = useState(false);
  return (
    <Box
      component="details"
      onToggle={({ currentTarget }) => setOpen((currentTarget as HTMLDetailsElement).open)}
      sx={{
        "& summary": { cursor: "pointer", fontWeight: 700, py: 1.25 },
        "& table": { borderCollapse: "collapse", fontSize: "0.8125rem" },
        "& th, & td": {
          border: "1px solid",
          borderColor: "divider",
          p: 0.25,
          verticalAlign: "top",
        },
        "& th": { textAlign: "start", p: 0.75, bgcolor: "background.paper" },
        "& tbody th": { position: "sticky", insetInlineStart: 0 },
      }}
    >
      <summary>{text.matrix}</summary>
      {open && (
        <Box sx={{ overflowX: "auto" }} role="region" aria-label={text.matrix} tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">{text.object}</th>
                {table.kinds.map(({ id, title }) => (
                  <th key={id} scope="col">
                    {title}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.objects.map((object) => (
                <tr key={object}>
                  <th scope="row">{object}</th>
                  {table.kinds.map(({ id, title }) => {
                    const counts = table.cell(object, id);
                    const words = countWords(counts, findings);
                    return (
                      <td key={id}>
                        {counts && (
                          <Button
                            size="small"
                            onClick={() => toRows({ kind: id, object })}
                            aria-label={text.toRows(title, object, words)}
                            sx={{
                              minWidth: 76,
                              p: 0.5,
                              color: "text.primary",
                              display: "block",
                              textAlign: "start",
                              fontWeight: 400,
                              lineHeight: 1.3,
                              borderInlineStart: `6px solid ${STANDING[standing([counts])].fill}`,
                            }}
                          >
                            {words.split(", ").map((word) => (
                              <span key={word} style={{ display: "block" }}>
                                {word}
                              </span>
                            ))}
                          </Button>
                        )}
                      </td>
                    );
                  })}
                </tr>
              ))}
            </tbody>
          </table>
        </Box>
      )}
    </Box>
  );
}
