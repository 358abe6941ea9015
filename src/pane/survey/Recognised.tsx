import Button from "@mui/material/Button";
import List from "@mui/material/List";
import ListItem from "@mui/material/ListItem";
import ListItemButton from "@mui/material/ListItemButton";
import ListItemText from "@mui/material/ListItemText";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import { kindWords } from "../../records/kindWords";
import { useText } from "../../report/text";
import type { Correction } from "../../sheets/kept/surveyAnswers";
import type { RecognisedBlock } from "../../survey/checkSurvey";
import { Fold } from "../lineup/Fold";
import type { StepProps } from "../shared";
import { PutRight } from "./PutRight";

/** So many tables are listed at first, and more at a time. */
const LISTED = 8;

/** The tables that were recognised, in words; each leads to its cells. */
export function Recognised({
  blocks,
  open,
  setOpen,
  go,
  corrections,
  correct,
  ...shared
}: Pick<StepProps, "host" | "work"> & {
  blocks: readonly RecognisedBlock[];
  corrections: readonly Correction[];
  correct: (corrections: readonly Correction[]) => void;
  open: boolean;
  setOpen: (open: boolean) => void;
  go: StepProps["go"];
}): ReactElement {
  const messages = useText();
  const text = messages.asItStands;
  const [listed, setListed] = useState(LISTED);
  /** The table that is being put right. */
  const [right, setRight] = useState<string>();
  const title = text.recognised(
    blocks.length,
    blocks.reduce((sum, { readings }) => sum + readings, 0),
  );
  return (
    <Fold title={title} open={open} onOpen={() => setOpen(!open)}>
      <Typography variant="body2">{text.point}</Typography>
      <List dense disablePadding aria-label={title}>
        {blocks
          .slice(0, listed)
          .map((block, at) => ({ ...block, block, key: `${block.sheet} ${at}` }))
          .map(({ key, block, sheet, range, kinds, panels, readings, units, evidence }) => (
            <ListItem key={key} disablePadding divider sx={{ display: "block" }}>
              <ListItemButton onClick={() => go(sheet, range)} sx={{ px: 0.5, minHeight: 44 }}>
                <ListItemText
                  primary={text.block(
                    sheet,
                    range,
                    kinds.map((kind) => kindWords(messages, kind).title),
                    panels.length,
                    readings,
                    units,
                  )}
                  secondary={evidence}
                  slotProps={{
                    primary: { sx: { overflowWrap: "anywhere" } },
                    secondary: { sx: { overflowWrap: "anywhere" } },
                  }}
                />
              </ListItemButton>
              <Button
                size="small"
                aria-expanded={right === key}
                aria-label={messages.putRight.titled(messages.putRight.open, `${sheet} ${range}`)}
                onClick={() => setRight(right === key ? undefined : key)}
              >
                {messages.putRight.open}
              </Button>
              {right === key && (
                <PutRight
                  {...shared}
                  block={block}
                  said={corrections.filter((one) => one.sheet === sheet)}
                  say={(one) => correct([...corrections, one])}
                  takeBack={(one) => correct(corrections.filter((other) => other !== one))}
                />
              )}
            </ListItem>
          ))}
      </List>
      {blocks.length > listed && (
        <Button fullWidth onClick={() => setListed(listed + LISTED)}>
          {messages.check.more(blocks.length - listed)}
        </Button>
      )}
    </Fold>
  );
}
