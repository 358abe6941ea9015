import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo, useState } from "react";
import type { Report } from "../../check/check";
import { changedSince } from "../../handover/compareContent";
import { inGroups, isFingerprint } from "../../handover/fingerprint";
import { useText } from "../../report/text";
import { Entry } from "../Entry";
import { FileButton } from "../FileButton";
import type { StepProps } from "../shared";
import type { HandedBefore } from "./compareWith";

/** So many changes are listed; the others are counted. */
const LISTED = 100;

/** The open workbook against what was handed over: whether the fingerprint is that of the report, and each cell that is other now. */
export function Compare({
  report,
  work,
  go,
}: Pick<StepProps, "work" | "go"> & { report: Report }): ReactElement {
  const text = useText().handOver.compare;
  const [printed, setPrinted] = useState("");
  const [before, setBefore] = useState<HandedBefore>();
  const compare = (file: File) =>
    work.run(async () => {
      const { handedBefore } = await import("./compareWith");
      const found = await handedBefore(new Uint8Array(await file.arrayBuffer()));
      setBefore(found);
      if (!found) work.setProblem(text.none(file.name));
    });
  return (
    <Stack spacing={1} component="section" aria-labelledby="compare">
      <Typography id="compare" variant="h3">
        {text.heading}
      </Typography>
      <Typography variant="body2">{text.about}</Typography>
      <Entry label={text.printed} hint={text.printedHelp} value={printed} onEnter={setPrinted} />
      <FileButton
        id="handed-before"
        label={text.choose}
        accept=".json,.zip"
        disabled={work.busy}
        onFile={(file) => void compare(file)}
      />
      {before && <Outcome before={before} report={report} printed={printed} go={go} />}
    </Stack>
  );
}

function Outcome({
  before: { content, fingerprint },
  report: { context },
  printed,
  go,
}: {
  before: HandedBefore;
  report: Report;
  printed: string;
  go: StepProps["go"];
}): ReactElement {
  const changes = useMemo(() => changedSince(content, context), [content, context]);
  const text = useText().handOver.compare;
  const isPrinted = isFingerprint(printed, fingerprint);
  return (
    <Stack spacing={1} role="status">
      <Typography sx={{ overflowWrap: "anywhere" }}>
        {text.fingerprint(content.checked, inGroups(fingerprint))}
      </Typography>
      {printed.trim() !== "" && (
        <Typography color={isPrinted ? undefined : "error"}>
          {isPrinted ? text.isPrinted : text.notPrinted}
        </Typography>
      )}
      <Typography>{changes.length === 0 ? text.same : text.changed(changes.length)}</Typography>
      {changes.slice(0, LISTED).map(({ place, what, was, is }) => {
        const [, sheet, address] = /^(.+)!([A-Z]+\d+)$/.exec(place) ?? [];
        const words = text.change(place, what, was, is);
        return sheet !== undefined && address !== undefined ? (
          <Button
            key={`${place} ${what}`}
            variant="text"
            onClick={() => go(sheet, address)}
            sx={{ justifyContent: "start", textAlign: "start", overflowWrap: "anywhere" }}
          >
            {words}
          </Button>
        ) : (
          <Typography key={`${place} ${what}`} variant="body2" sx={{ overflowWrap: "anywhere" }}>
            {words}
          </Typography>
        );
      })}
      {changes.length > LISTED && <Typography>{text.more(changes.length - LISTED)}</Typography>}
    </Stack>
  );
}
