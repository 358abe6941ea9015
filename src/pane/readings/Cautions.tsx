import Box from "@mui/material/Box";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import type { RecordKind } from "../../records/kind";
import { kindWords } from "../../records/kindWords";
import { useText } from "../../report/text";

/** What can hurt someone in this test, and who decides. */
export function Cautions({ kind }: { kind: RecordKind }): ReactElement | undefined {
  const messages = useText();
  const { cautions } = kindWords(messages, kind.id);
  if (cautions.length === 0) return undefined;
  return (
    <Box
      component="section"
      aria-label={messages.readings.cautions}
      sx={{
        bgcolor: "var(--caution)",
        borderInlineStart: "6px solid",
        borderColor: "secondary.main",
        px: 1.5,
        py: 1,
      }}
    >
      <Typography variant="h3">{messages.readings.cautions}</Typography>
      <Box component="ul" sx={{ m: 0, ps: 2, paddingInlineStart: 2.5 }}>
        {cautions.map((caution) => (
          <li key={caution}>
            <Typography variant="body2">{caution}</Typography>
          </li>
        ))}
      </Box>
    </Box>
  );
}
