import Box from "@mui/material/Box";
import List from "@mui/material/List";
import ListItem from "@mui/material/ListItem";
import ListItemButton from "@mui/material/ListItemButton";
import ListItemText from "@mui/material/ListItemText";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import type { Report } from "../check/check";
import type { Finding, Weight } from "../check/finding";
import { messages } from "./messages";
import { STANDING } from "./standing";

/** More findings than this are counted, not listed. */
const LISTED = 500;
const ORDER: Record<Weight, number> = { stop: 0, query: 1, note: 2 };

type Go = (sheet: string, address: string) => void;

/** What the check came to: rows by result, and the findings, heaviest first; each leads to its cell. */
export function Findings({ report, go }: { report: Report; go: Go }): ReactElement {
  const findings = [...report.findings].sort(
    (one, other) => ORDER[one.weight] - ORDER[other.weight],
  );
  return (
    <Box component="section" aria-labelledby="findings">
      <Stack direction="row" sx={{ flexWrap: "wrap", gap: 0.75, mb: 1.5 }}>
        {(["fail", "inconclusive", "missing", "pass"] as const).map((key) => (
          <Box
            key={key}
            sx={{
              px: 1,
              py: 0.5,
              fontWeight: 700,
              bgcolor: STANDING[key].fill,
              color: STANDING[key].ink,
            }}
          >
            {report.counts[key]} {messages.counts[key]}
          </Box>
        ))}
      </Stack>
      <Typography id="findings" variant="h2">
        {messages.findings}
      </Typography>
      {findings.length === 0 && <Typography>{messages.noFindings}</Typography>}
      <List dense disablePadding>
        {findings.slice(0, LISTED).map((finding) => (
          <FindingItem
            key={`${finding.rule}${finding.sheet}${finding.address}${finding.message}`}
            finding={finding}
            go={go}
          />
        ))}
      </List>
      {findings.length > LISTED && (
        <Typography>{messages.more(findings.length - LISTED)}</Typography>
      )}
    </Box>
  );
}

function FindingItem({ finding, go }: { finding: Finding; go: Go }): ReactElement {
  const cell = `${finding.sheet}!${finding.address}`;
  return (
    <ListItem disablePadding divider>
      <ListItemButton
        onClick={() => go(finding.sheet, finding.address)}
        sx={{ px: 0.5, alignItems: "flex-start", minHeight: 44 }}
      >
        <ListItemText
          primary={finding.message}
          secondary={`${finding.weight} · ${cell}`}
          slotProps={{ primary: { sx: { overflowWrap: "anywhere" } } }}
        />
      </ListItemButton>
    </ListItem>
  );
}
