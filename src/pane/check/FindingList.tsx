import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import List from "@mui/material/List";
import ListItem from "@mui/material/ListItem";
import ListItemButton from "@mui/material/ListItemButton";
import ListItemText from "@mui/material/ListItemText";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import type { Finding } from "../../check/findings/finding";
import { useText } from "../../report/text";

/** So many findings are listed at first, and more at a time. */
const LISTED = 100;

/** What a finding is known by from one check to the next. */
export const identity = ({ rule, sheet, address, message }: Finding) =>
  `${rule}\u0000${sheet}\u0000${address}\u0000${message}`;

/** The way from one finding to the next, and how many there are. */
export function Mover({
  place,
  count,
  move,
}: {
  place: number;
  count: number;
  move: (step: number) => void;
}): ReactElement {
  const text = useText().check;
  return (
    <Stack direction="row" spacing={1} sx={{ alignItems: "center", mb: 1 }}>
      <Button variant="outlined" size="small" onClick={() => move(-1)}>
        {text.previous}
      </Button>
      <Typography variant="body2" sx={{ flexGrow: 1, textAlign: "center" }}>
        {place < 0 ? text.listed(count) : text.at(place + 1, count)}
      </Typography>
      <Button variant="outlined" size="small" onClick={() => move(1)}>
        {text.next}
      </Button>
    </Stack>
  );
}

/** Findings in their groups, those of one cause together, at first as many as can be looked over; one of them chosen. */
export function FindingList({
  groups,
  chosen,
  choose,
}: {
  groups: readonly (readonly [string, readonly (readonly Finding[])[]])[];
  chosen: string | undefined;
  choose: (finding: Finding) => void;
}): ReactElement {
  const text = useText().check;
  const [most, setMost] = useState(LISTED);
  let left = most;
  const over = groups.reduce((sum, [, causes]) => sum + causes.length, 0) - most;
  return (
    <>
      {groups.map(([name, causes]) => {
        const shown = causes.slice(0, left);
        left -= shown.length;
        return shown.length === 0 ? undefined : (
          <Box key={name} sx={{ mt: 1 }}>
            <Typography variant="h3">
              {name} ({causes.reduce((sum, cause) => sum + cause.length, 0)})
            </Typography>
            <List dense disablePadding aria-label={name}>
              {shown.map((cause) => (
                <Cause key={cause.map(identity)[0]} cause={cause} chosen={chosen} choose={choose} />
              ))}
            </List>
          </Box>
        );
      })}
      {over > 0 && (
        <Button fullWidth onClick={() => setMost(most + LISTED)}>
          {text.more(over)}
        </Button>
      )}
    </>
  );
}

/** Findings of one cause: the first of them, and the others where they are asked for or one of them is chosen. */
function Cause({
  cause,
  chosen,
  choose,
}: {
  cause: readonly Finding[];
  chosen: string | undefined;
  choose: (finding: Finding) => void;
}): ReactElement {
  const text = useText().check;
  const [opened, setOpened] = useState(false);
  const [first, ...others] = cause;
  const open = opened || others.some((finding) => identity(finding) === chosen);
  const shown = open ? cause : first ? [first] : [];
  return (
    <>
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
      {others.length > 0 && !open && (
        <ListItem disablePadding divider>
          <ListItemButton onClick={() => setOpened(true)} sx={{ px: 0.5, minHeight: 44 }}>
            {text.alike(others.length)}
          </ListItemButton>
        </ListItem>
      )}
    </>
  );
}
