import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import InputBase from "@mui/material/InputBase";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type DragEvent, type ReactElement, useId, useMemo, useState } from "react";
import { decode } from "../../intake/decode";
import { placeReadings } from "../../intake/place";
import type { PlacedCell } from "../../intake/placement";
import { readExport } from "../../intake/readExport";
import type { RecordTable } from "../../sheets/recordTable";
import { FileButton } from "../FileButton";
import { messages } from "../messages";
import type { StepProps } from "../shared";
import { Corrections } from "./Corrections";
import { PlacementView } from "./PlacementView";
import { NOTHING_SAID, type Said } from "./said";

const text = messages.readings;

/** The way in for exports and pasted blocks: reads one, shows what would come where, and writes it when told to. */
export function Intake({ host, book, work, read }: StepProps): ReactElement | undefined {
  const [source, setSource] = useState<{ name: string; text: string }>();
  const [said, setSaid] = useState<Said>(NOTHING_SAID);
  const [pasting, setPasting] = useState(false);
  /** What was written last, so that it can be taken back. */
  const [last, setLast] = useState<{ name: string; cells: readonly PlacedCell<RecordTable>[] }>();
  const report = book?.report;

  const found = useMemo(
    () =>
      source &&
      readExport(source.text, {
        name: source.name,
        mapping: said.columns,
        ...(said.decimal ? { decimal: said.decimal } : {}),
        ...(said.dateOrder ? { dateOrder: said.dateOrder } : {}),
      }),
    [source, said],
  );
  const placement = useMemo(
    () =>
      found?.ok && report
        ? placeReadings<RecordTable>(found.value, report.context.tables, {
            replace: false,
            instruments: [...(report.context.instruments?.values() ?? [])],
            wave: report.context.lineup.withstand.wave,
            panels: report.context.lineup.panels,
            means: said.means,
          })
        : undefined,
    [found, report, said],
  );
  if (!report) return undefined;

  const take = (next: { name: string; text: string } | undefined) => {
    setSaid(NOTHING_SAID);
    setSource(next);
    setPasting(false);
  };
  const open = (file: File) =>
    work.run(async () => {
      const decoded = decode(new Uint8Array(await file.arrayBuffer()));
      if (decoded.ok) take({ name: file.name, text: decoded.value.text });
      else work.setProblem(`${file.name} ${decoded.reason}`);
    });
  const drop = (event: DragEvent) => {
    const [file] = event.dataTransfer.files;
    if (!file) return;
    event.preventDefault();
    void open(file);
  };
  const write = (name: string, cells: readonly PlacedCell<RecordTable>[]) =>
    work.run(async (watch) => {
      const { written, heldBack } = await host.fill(cells, watch);
      take(undefined);
      setLast({ name, cells });
      await read(watch);
      work.setTold(text.written(written, heldBack));
    });
  const takeBack = (cells: readonly PlacedCell<RecordTable>[]) =>
    work.run(async (watch) => {
      const back = cells.map((cell) => ({ ...cell, old: cell.value, value: cell.old }));
      const { written, heldBack } = await host.fill(back, watch);
      setLast(undefined);
      await read(watch);
      work.setTold(text.takenBack(written, heldBack));
    });

  return (
    <Stack
      spacing={1}
      component="section"
      aria-label={text.bring}
      onDragOver={(event) => event.preventDefault()}
      onDrop={drop}
    >
      <FileButton
        id="export-file"
        label={text.bring}
        accept=".csv,.txt,.tsv"
        disabled={work.busy}
        onFile={open}
      />
      <Button
        variant="outlined"
        aria-expanded={pasting}
        disabled={work.busy}
        onClick={() => setPasting(!pasting)}
      >
        {text.paste}
      </Button>
      <Typography variant="body2" color="text.secondary">
        {text.bringHelp}
      </Typography>
      {pasting && <Pasted done={(pasted) => take({ name: text.pasted, text: pasted })} />}
      {found && !found.ok && (
        <Typography color="error" sx={{ overflowWrap: "anywhere" }}>
          {found.reason}
        </Typography>
      )}
      {source && found?.ok && (
        <Box
          component="section"
          aria-label={source.name}
          sx={{ border: 1, borderColor: "divider", p: 1 }}
        >
          <Typography variant="h3">{text.taken(source.name, found.value.rows.length)}</Typography>
          <Corrections table={found.value} said={said} say={setSaid} />
          {placement && (
            <PlacementView
              placement={placement}
              said={said}
              say={setSaid}
              busy={work.busy}
              write={() => write(source.name, placement.placed)}
            />
          )}
          <Button fullWidth onClick={() => take(undefined)}>
            {text.cancel}
          </Button>
        </Box>
      )}
      {last && !source && (
        <Button variant="outlined" disabled={work.busy} onClick={() => takeBack(last.cells)}>
          {text.takeBack(last.name)}
        </Button>
      )}
    </Stack>
  );
}

/** A block copied from somewhere, to be read as an export. */
function Pasted({ done }: { done: (text: string) => void }): ReactElement {
  const id = useId();
  const [pasted, setPasted] = useState("");
  return (
    <Stack spacing={0.5}>
      <label htmlFor={id}>{text.pasteLabel}</label>
      <InputBase
        id={id}
        multiline
        minRows={4}
        maxRows={12}
        value={pasted}
        onChange={({ target }) => setPasted(target.value)}
        sx={{ border: 1, borderColor: "text.secondary", px: 1 }}
      />
      <Button variant="contained" disabled={pasted.trim() === ""} onClick={() => done(pasted)}>
        {text.readPasted}
      </Button>
    </Stack>
  );
}
