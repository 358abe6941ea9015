import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import { type ReactElement, useState } from "react";
import type { Concession } from "../../check/finding";
import { useText } from "../../report/text";
import { Entry } from "../Entry";

const FIELDS = [
  ["reason", "text"],
  ["name", "text"],
  ["date", "date"],
] as const;

/** Today as 2026-11-25, in local time. */
const today = () => {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
};

/** Accepts a finding with a reason, a name and a date; without one of them it is not accepted. */
export function Accept({
  busy,
  accept,
}: {
  busy: boolean;
  accept: (concession: Concession) => void;
}): ReactElement {
  const text = useText().check;
  const [open, setOpen] = useState(false);
  const [given, setGiven] = useState<Concession>({ reason: "", name: "", date: today() });
  const complete = FIELDS.every(([field]) => given[field].trim() !== "");
  return (
    <Stack spacing={0.75} sx={{ mt: 1 }}>
      <Button size="small" variant="outlined" aria-expanded={open} onClick={() => setOpen(!open)}>
        {text.accept}
      </Button>
      {open && (
        <>
          {FIELDS.map(([field, type]) => (
            <Entry
              key={field}
              label={text[field]}
              type={type}
              value={given[field]}
              onEnter={(value) => setGiven({ ...given, [field]: value })}
            />
          ))}
          <Button
            size="small"
            variant="contained"
            disabled={busy || !complete}
            onClick={() => accept(given)}
          >
            {text.acceptNow}
          </Button>
        </>
      )}
    </Stack>
  );
}
