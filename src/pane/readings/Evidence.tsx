import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { lazy, type ReactElement, Suspense, startTransition, useState } from "react";
import type { JudgedTable } from "../../check/context";
import type { Lineup } from "../../lineup/lineup";
import type { Messages } from "../../messages/messages";
import { type EvidenceLine, evidenceOf } from "../../records/evidence";
import { isBlank, verdictOf } from "../../records/kind";
import { kindWords } from "../../records/kindWords";
import { picturesOf } from "../../report/pictures";
import { STANDING, standingKey } from "../../report/standing";
import { useText } from "../../report/text";
import { type Locale, shownCell, useLocale } from "../locale";

const Picture = lazy(() => import("./Picture"));
const PARTS = ["given", "entry", "worked", "limit", "judged"] as const;

/** One record worked out line by line, as one would on paper. */
export function Evidence({
  table,
  row,
  lineup,
  toRow,
}: {
  table: JudgedTable;
  row: number;
  lineup: Lineup;
  /** Shows another row of the table. */
  toRow: (row: number) => void;
}): ReactElement {
  const messages = useText();
  const text = messages.readings;
  const locale = useLocale();
  const [drawn, setDrawn] = useState(false);
  const judged = table.judged[row] ?? {};
  const lines = evidenceOf(table.kind, judged, lineup);
  const verdict = verdictOf(judged);
  const key = standingKey(verdict);
  const pictures = picturesOf(table, row, messages);
  return (
    <Stack component="section" spacing={1.5} aria-label={table.keys[row]}>
      <Box>
        <Typography variant="h3">{table.keys[row]}</Typography>
        <Typography variant="body2" color="text.secondary">
          {kindWords(messages, table.kind.id).title}
        </Typography>
      </Box>
      <Box
        sx={{
          alignSelf: "flex-start",
          px: 1,
          py: 0.5,
          fontWeight: 700,
          border: "1px solid var(--ink)",
          bgcolor: STANDING[key].fill,
          color: STANDING[key].ink,
        }}
      >
        {text.evidence.result}: {verdict}
      </Box>
      {PARTS.map((part) => {
        const own = lines.filter((line) => line.part === part);
        return own.length > 0 ? (
          <Box key={part}>
            <Typography variant="h3">{text.evidence[part]}</Typography>
            <Box component="dl" sx={{ m: 0 }}>
              {own.map((line) => (
                <Line
                  key={`${line.header} ${line.part === "judged" ? line.limitHeader : ""}`}
                  line={line}
                  locale={locale}
                />
              ))}
            </Box>
          </Box>
        ) : undefined;
      })}
      {!isBlank(judged.sources) && (
        <Box>
          <Typography variant="h3">{text.evidence.sources}</Typography>
          {String(judged.sources)
            .split("; ")
            .map((source) => (
              <Typography key={source} variant="body2">
                {source}
              </Typography>
            ))}
        </Box>
      )}
      {pictures.length > 0 && (
        <>
          <Button
            variant="outlined"
            aria-expanded={drawn}
            onClick={() => startTransition(() => setDrawn(!drawn))}
          >
            {drawn ? messages.plot.hide : messages.plot.show}
          </Button>
          {drawn && (
            <Suspense fallback={<Typography>{messages.working}</Typography>}>
              {pictures.map((picture) => (
                <Picture key={picture.title} picture={picture} toRow={toRow} />
              ))}
            </Suspense>
          )}
        </>
      )}
    </Stack>
  );
}

function Line({ line, locale }: { line: EvidenceLine; locale: Locale }): ReactElement {
  const { judged } = useText();
  return (
    <Box
      sx={{
        display: "grid",
        gridTemplateColumns:
          line.part === "judged" ? "minmax(0, 1fr)" : "minmax(0, 1fr) minmax(0, 1.1fr)",
        columnGap: 1,
        py: 0.5,
        borderBottom: 1,
        borderColor: "divider",
        "& dt": { color: "text.secondary" },
        "& dd": { m: 0, overflowWrap: "anywhere" },
      }}
    >
      <dt>{line.header}</dt>
      <dd>
        {line.part === "judged" ? (
          <>
            {comparisonWords(line, locale, judged)} <strong>{line.verdict}</strong>
          </>
        ) : (
          <>
            {shownCell(locale, line.value, line)}
            {line.working && (
              <Typography component="span" variant="body2" sx={{ display: "block" }}>
                {line.working}
              </Typography>
            )}
          </>
        )}
      </dd>
    </Box>
  );
}

function comparisonWords(
  line: Extract<EvidenceLine, { part: "judged" }>,
  locale: Locale,
  text: Messages["judged"],
): string {
  const value = shownCell(locale, line.value, line);
  const limit = shownCell(locale, line.limit, line);
  const words = text[line.sense](value, limit);
  const granted = line.tolerance ? ` (${text.tolerance(locale.number(line.tolerance * 100))})` : "";
  const proof = line.decides === "proof" ? ` (${text.proof})` : "";
  return `${words}${granted}${proof}:`;
}
