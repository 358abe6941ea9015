import Button from "@mui/material/Button";
import InputBase from "@mui/material/InputBase";
import Stack from "@mui/material/Stack";
import { type ReactElement, useId, useState } from "react";
import type { Concession } from "../../check/finding";
import { messages } from "../messages";

const text = messages.check;
const FIELDS = [
  ["reason", text.reason, "text"],
  ["name", text.name, "text"],
  ["date", text.date, "date"],
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
  const id = useId();
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
          {FIELDS.map(([field, label, type]) => (
            <Stack key={field}>
              <label htmlFor={`${id}-${field}`}>{label}</label>
              <InputBase
                id={`${id}-${field}`}
                type={type}
                value={given[field]}
                onChange={({ target }) => setGiven({ ...given, [field]: target.value })}
                sx={{ border: 1, borderColor: "text.secondary", px: 1, minHeight: 40 }}
              />
            </Stack>
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
