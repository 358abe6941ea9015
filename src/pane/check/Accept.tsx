import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import { type ReactElement, useState } from "react";
import type { Concession } from "../../check/findings/finding";
import { useText } from "../../report/text";
import { Entry } from "../Entry";
import { localDay } from "./localDay";

const FIELDS = [
  ["reason", "text"],
  ["name", "text"],
  ["date", "date"],
] as const;

/** Accepts a finding with a reason, a name and a date; without one of them it is not accepted. */
export function Accept({
  busy,
  alike,
  accept,
}: {
  busy: boolean;
  /** How many open findings have the same cause, this one among them. */
  alike: number;
  accept: (concession: Concession, all: boolean) => void;
}): ReactElement {
  const text = useText().check;
  const [open, setOpen] = useState(false);
  const [given, setGiven] = useState<Concession>({ reason: "", name: "", date: localDay() });
  const [all, setAll] = useState(false);
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
          {alike > 1 && (
            <label style={{ display: "flex", gap: 8, alignItems: "center", minHeight: 44 }}>
              <input
                type="checkbox"
                checked={all}
                style={{ width: 22, height: 22 }}
                onChange={({ target }) => setAll(target.checked)}
              />
              {text.acceptAlike(alike)}
            </label>
          )}
          <Button
            size="small"
            variant="contained"
            disabled={busy || !complete}
            onClick={() => accept(given, all)}
          >
            {all ? text.acceptAll(alike) : text.acceptNow}
          </Button>
        </>
      )}
    </Stack>
  );
}
