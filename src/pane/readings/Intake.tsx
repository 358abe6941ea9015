import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import InputBase from "@mui/material/InputBase";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type DragEvent, type ReactElement, useId, useMemo, useState } from "react";
import type { ArrivalOptions } from "../../intake/place/arrivalOptions";
import type { Placement } from "../../intake/place/placement";
import { placeReadings } from "../../intake/place/placeReadings";
import { decode } from "../../intake/table/decode";
import { fingerprintOf } from "../../intake/table/exportMappings";
import { type Known, readKnown } from "../../intake/table/readRemembered";
import { messages } from "../../messages/en/pane";
import type { Result } from "../../quantities/result";
import type { LastIntake } from "../../sheets/lastIntake";
import type { RecordTable } from "../../sheets/recordTable";
import { NOTHING_REMEMBERED } from "../../sheets/remembered";
import { FileButton } from "../FileButton";
import { useLocale } from "../locale";
import type { StepProps } from "../shared";
import { bringIn, takeBack } from "./bringIn";
import { Corrections } from "./Corrections";
import { PlacementView } from "./PlacementView";
import { keptMappings, NOTHING_SAID, readingOptions, type Said } from "./said";

const text = messages.readings;

interface Source {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const ENCODER = new TextEncoder();

/** The way in for exports and pasted blocks: reads one, shows what would come where, and writes it when told to. */
export function Intake({ host, book, work, read }: StepProps): ReactElement | undefined {
  const locale = useLocale();
  const [source, setSource] = useState<Source>();
  const [said, setSaid] = useState<Said>(NOTHING_SAID);
  const [pasting, setPasting] = useState(false);
  const report = book?.report;
  const mappings = book?.snapshot.mappings ?? NOTHING_REMEMBERED.mappings;
  const words = book?.snapshot.words;
  const last = book?.snapshot.last;

  const found = useMemo((): Result<Known> | undefined => {
    if (!source) return undefined;
    const decoded = decode(source.bytes, said.encoding);
    return decoded.ok
      ? readKnown(
          decoded.value.text,
          {
            ...readingOptions(said, source.name),
            encoding: decoded.value.encoding,
            synonyms: words,
          },
          mappings,
        )
      : decoded;
  }, [source, said, mappings, words]);
  const placement = useMemo(() => {
    if (!found?.ok || !report) return undefined;
    const { table, mapping } = found.value;
    return placeReadings<RecordTable>(table, report.context.tables, {
      replace: said.replace,
      instruments: [...(report.context.instruments?.values() ?? [])],
      wave: report.context.lineup.withstand.wave,
      panels: report.context.lineup.panels,
      means: { ...mapping?.means, ...said.means } as ArrivalOptions["means"],
    });
  }, [found, report, said]);
  if (!book || !report) return undefined;
  const { snapshot } = book;

  const take = (next: Source | undefined) => {
    setSaid(NOTHING_SAID);
    setSource(next);
    setPasting(false);
  };
  const open = (file: File) =>
    work.run(async () =>
      take({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) }),
    );
  const drop = (event: DragEvent) => {
    const [file] = event.dataTransfer.files;
    if (!file) return;
    event.preventDefault();
    void open(file);
  };
  const write = (name: string, { table, mapping }: Known, placed: Placement<RecordTable>) =>
    work.run(async (watch) => {
      const kept = keptMappings(mappings, said, fingerprintOf(table), mapping);
      const { tables } = report.context;
      const bring = () => bringIn(host, snapshot, tables, name, placed, kept, watch);
      const { written, heldBack } = await readAfter(read, bring);
      take(undefined);
      await read(watch);
      work.setTold(text.written(written, heldBack));
    });
  const undo = (intake: LastIntake) =>
    work.run(async (watch) => {
      const back = () => takeBack(host, snapshot, report.context.tables, intake, watch);
      const { written, stay } = await readAfter(read, back);
      await read(watch);
      work.setTold(text.takenBack(written, stay));
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
      {pasting && (
        <Pasted done={(pasted) => take({ name: text.pasted, bytes: ENCODER.encode(pasted) })} />
      )}
      {found && !found.ok && (
        <Typography color="error" sx={{ overflowWrap: "anywhere" }}>
          {text.unreadable(source?.name ?? "", found.reason)}
        </Typography>
      )}
      {source && found?.ok && (
        <Box
          component="section"
          aria-label={source.name}
          sx={{ border: 1, borderColor: "divider", p: 1 }}
        >
          <Typography variant="h3">
            {text.taken(source.name, found.value.table.rows.length)}
          </Typography>
          {found.value.mapping && (
            <Typography variant="body2">{text.readBy(found.value.mapping.name)}</Typography>
          )}
          <Corrections table={found.value.table} said={said} say={setSaid} />
          {placement && (
            <PlacementView
              placement={placement}
              said={said}
              say={setSaid}
              busy={work.busy}
              write={() => write(source.name, found.value, placement)}
            />
          )}
          <Button fullWidth onClick={() => take(undefined)}>
            {text.cancel}
          </Button>
        </Box>
      )}
      {last && !source && (
        <Button variant="outlined" disabled={work.busy} onClick={() => undo(last)}>
          {text.takeBack(last.files.join(", "), locale.day(last.on))}
        </Button>
      )}
    </Stack>
  );
}

/** Where writing is cut short, the workbook is read again before anything else is done with it. */
async function readAfter<T>(read: StepProps["read"], write: () => Promise<T>): Promise<T> {
  try {
    return await write();
  } catch (error) {
    // What stands in the way of this reading as well is said by what went wrong first.
    await read({ progress: () => {}, signal: new AbortController().signal }).catch(() => {});
    throw error;
  }
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
