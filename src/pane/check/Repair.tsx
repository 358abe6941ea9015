import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import type { RepairSaid } from "../../intake/reopenRecord";
import { daySerial } from "../../quantities/dates";
import { WORKS, type Work } from "../../records/repairs";
import { useText } from "../../report/text";
import { Choice } from "../Choice";
import { Entry } from "../Entry";
import { localDay } from "./localDay";

const FIELDS = [
  ["cause", "text"],
  ["done", "text"],
  ["by", "text"],
  ["date", "date"],
] as const;

/** Says how a failed record was repaired, and reopens it for the retest. */
export function Repair({
  busy,
  panels,
  reopen,
}: {
  busy: boolean;
  /** The panels of which one was worked on, where the record is of a bus section. */
  panels: readonly string[];
  reopen: (said: RepairSaid) => void;
}): ReactElement {
  const text = useText().check.repair;
  const [open, setOpen] = useState(false);
  const [given, setGiven] = useState({ cause: "", done: "", by: "", date: localDay() });
  const [work, setWork] = useState<Work | "">("");
  const [panel, setPanel] = useState("");
  const isComplete =
    work !== "" &&
    FIELDS.every(([field]) => given[field].trim() !== "") &&
    given.date <= localDay();
  const say = () => {
    const { date, ...said } = given;
    if (work === "") return;
    reopen({ ...said, work, day: daySerial(date), ...(panel === "" ? {} : { panel }) });
  };
  return (
    <Stack spacing={0.75} sx={{ mt: 1 }}>
      <Button size="small" variant="outlined" aria-expanded={open} onClick={() => setOpen(!open)}>
        {text.open}
      </Button>
      {open && (
        <>
          <Typography variant="body2">{text.about}</Typography>
          <Choice
            label={text.work}
            value={work}
            choices={["" as const, ...WORKS].map((value) => ({ value, label: value }))}
            onChoose={(value) => setWork(value as Work | "")}
          />
          {panels.length > 0 && (
            <Choice
              label={text.panel}
              value={panel}
              choices={["", ...panels].map((value) => ({ value, label: value }))}
              onChoose={setPanel}
            />
          )}
          {FIELDS.map(([field, type]) => (
            <Entry
              key={field}
              label={text[field]}
              type={type}
              value={given[field]}
              onEnter={(value) => setGiven({ ...given, [field]: value })}
            />
          ))}
          <Button size="small" variant="contained" disabled={busy || !isComplete} onClick={say}>
            {text.now}
          </Button>
        </>
      )}
    </Stack>
  );
}
