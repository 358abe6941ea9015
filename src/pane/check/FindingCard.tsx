import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import type { Concession, Finding } from "../../check/findings/finding";
import type { RepairSaid } from "../../intake/reopenRecord";
import { useText } from "../../report/text";
import { useLocale } from "../locale";
import { Accept } from "./Accept";
import { Repair } from "./Repair";

/** One finding in full, and what can be done about it. */
export function FindingCard({
  finding,
  alike,
  busy,
  goTo,
  again,
  accept,
  withdraw,
  repair,
}: {
  finding: Finding;
  /** The open findings of the same cause, itself among them. */
  alike: readonly Finding[];
  busy: boolean;
  goTo: () => void;
  again: () => void;
  /** Accepts findings; undefined where this one is accepted already. */
  accept: ((findings: readonly Finding[], concession: Concession) => void) | undefined;
  /** Takes its acceptance back; undefined where it has none. */
  withdraw: (() => void) | undefined;
  /** Reopens its record after a repair, with the panels to choose from; undefined where nothing failed there. */
  repair: { readonly panels: readonly string[]; reopen(said: RepairSaid): void } | undefined;
}): ReactElement {
  const text = useText().check;
  const { number } = useLocale();
  const shown = (value: string | number) => (typeof value === "number" ? number(value) : value);
  const facts = [
    [text.found, finding.found],
    [text.expected, finding.expected],
    [text.source, finding.source],
    [text.rule, finding.rule],
    [
      text.accepted,
      finding.concession &&
        text.concession(
          finding.concession.reason,
          finding.concession.name,
          String(finding.concession.date),
        ),
    ],
  ] as const;
  return (
    <Box
      component="section"
      aria-label={`${finding.sheet}!${finding.address}`}
      sx={{ border: 2, borderColor: "primary.main", p: 1, mb: 1 }}
    >
      <Typography sx={{ fontWeight: 700 }}>
        {text.weights[finding.weight]} · {finding.sheet}!{finding.address}
      </Typography>
      <Typography sx={{ overflowWrap: "anywhere" }}>{finding.message}</Typography>
      <Box component="dl" sx={{ m: 0, mt: 0.5 }}>
        {facts.map(([name, value]) =>
          value === undefined ? undefined : (
            <Typography key={name} variant="body2" component="div">
              <Box component="dt" sx={{ display: "inline", color: "text.secondary" }}>
                {name}:{" "}
              </Box>
              <Box component="dd" sx={{ display: "inline", m: 0, overflowWrap: "anywhere" }}>
                {shown(value)}
              </Box>
            </Typography>
          ),
        )}
      </Box>
      <Stack direction="row" spacing={1} sx={{ mt: 1, flexWrap: "wrap" }}>
        <Button size="small" variant="outlined" disabled={busy} onClick={goTo}>
          {text.goTo}
        </Button>
        <Button size="small" variant="outlined" disabled={busy} onClick={again}>
          {text.again}
        </Button>
        {withdraw && (
          <Button size="small" variant="outlined" disabled={busy} onClick={withdraw}>
            {text.withdraw}
          </Button>
        )}
      </Stack>
      {repair && <Repair key={`${finding.sheet}${finding.row}`} busy={busy} {...repair} />}
      {accept && (
        <Accept
          key={finding.message}
          busy={busy}
          alike={alike.length}
          accept={(given, all) => accept(all ? alike : [finding], given)}
        />
      )}
    </Box>
  );
}
