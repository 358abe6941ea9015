import Alert from "@mui/material/Alert";
import Button from "@mui/material/Button";
import Typography from "@mui/material/Typography";
import { type ReactElement, useEffect, useMemo, useRef } from "react";
import { useText } from "../report/text";
import { isSameContent } from "../sheets/plan/sameContent";
import type { Built } from "./host";
import type { OpenedWorkbook } from "./openedWorkbook";
import type { StepProps } from "./shared";

/** A build, and the workbook as it was read after it. */
export interface BuildResult {
  readonly built: Built;
  readonly after: OpenedWorkbook;
}

/** What was built; and until the workbook changes, the way back. */
export function BuildTold({
  result: { built, after },
  host,
  book,
  work,
  read,
  close,
}: StepProps & { result: BuildResult; close: () => void }): ReactElement {
  const messages = useText();
  const text = messages.lineup;
  const { create, change } = built.done;
  const count = (of: (one: (typeof change)[number]) => number) =>
    change.reduce((sum, one) => sum + of(one), 0);
  const isAsBuilt = useMemo(
    () => book !== undefined && isSameContent(after.snapshot, book.snapshot),
    [after, book],
  );
  const undo = () =>
    work.run(async (watch) => {
      await host.undoBuild(built, after.snapshot, watch);
      close();
      await read(watch);
      work.setTold(text.undone);
    });
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => place.current?.scrollIntoView({ block: "start" }), []);
  return (
    <Alert
      ref={place}
      sx={{ scrollMarginTop: 72 }}
      severity="success"
      onClose={close}
      closeText={messages.closeMessage}
    >
      <Typography variant="body2">
        {text.built(
          create.length,
          count(({ added }) => added),
          count(({ aside }) => aside.length),
        )}
      </Typography>
      {isAsBuilt && (
        <Button
          size="small"
          variant="outlined"
          disabled={work.busy}
          onClick={undo}
          sx={{ mt: 0.5 }}
        >
          {text.undoBuild}
        </Button>
      )}
    </Alert>
  );
}
