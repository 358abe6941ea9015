import Box from "@mui/material/Box";
import type { ReactElement } from "react";
import type { Counts } from "../check/check";
import { STANDING } from "../report/standing";
import { useText } from "../report/text";
import { useLocale } from "./locale";

/** How many rows came to each result, worst first; results that none came to are left out. */
export function CountChips({
  counts,
  label,
  all = false,
}: {
  counts: Counts;
  label: string;
  /** Whether results that no row came to are shown too. */
  all?: boolean;
}): ReactElement {
  const messages = useText();
  const { number } = useLocale();
  return (
    <Box
      component="ul"
      aria-label={label}
      sx={{ display: "flex", flexWrap: "wrap", gap: 0.5, p: 0, m: 0, listStyle: "none" }}
    >
      {(["fail", "inconclusive", "missing", "open", "pass"] as const)
        .filter((key) => all || counts[key] > 0)
        .map((key) => (
          <Box
            component="li"
            key={key}
            sx={{
              px: 0.75,
              py: 0.25,
              fontWeight: 700,
              fontSize: "0.8125rem",
              border: "1px solid var(--ink)",
              bgcolor: STANDING[key].fill,
              color: STANDING[key].ink,
            }}
          >
            {number(counts[key])} {messages.counts[key]}
          </Box>
        ))}
    </Box>
  );
}
