import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type DragEvent, type ReactElement, type ReactNode, useMemo, useState } from "react";
import { sha256 } from "../../handover/fingerprint";
import { readConstants, type SaidConstants } from "../../intake/constants";
import {
  type ExportSource,
  type IntakeAnswers,
  type Intake as Intaken,
  NO_ANSWERS,
  takeIn,
  type UnreadExport,
} from "../../intake/takeIn";
import { toldIn } from "../../messages/told";
import { today } from "../../quantities/today";
import { useText } from "../../report/text";
import type { RecordBook } from "../../sheets/recordBook";
import { FileButton } from "../FileButton";
import { useLocale } from "../locale";
import { PasteBox } from "../PasteBox";
import type { StepProps } from "../shared";
import { bringBack, bringIn } from "./bringIn";
import { ConstantChoices } from "./ConstantChoices";
import { Corrections } from "./Corrections";
import { PlacementView } from "./PlacementView";

/** The way in for exports and pasted blocks: reads one, shows what would come where, and writes it when told to. */
export function Intake({
  host,
  book,
  work,
  read,
  readFilled,
  granted,
}: StepProps & {
  /** What a pasted block is taken to be of: the record that is open. */
  granted: SaidConstants;
}): ReactElement | undefined {
  const { readings: text, language } = useText();
  const told = toldIn(language);
  const locale = useLocale();
  const [source, setSource] = useState<ExportSource>();
  const [answers, setAnswers] = useState(NO_ANSWERS);
  const [said, setSaid] = useState<SaidConstants>({});
  const [pasting, setPasting] = useState(false);
  const records = book?.report?.context.book;
  const intake = useMemo(
    () => (source && records ? takenWith(records, source, answers, said) : undefined),
    [source, records, answers, said],
  );
  if (!records) return undefined;
  const { last } = records.remembered;

  const take = (next: ExportSource | undefined, constants: SaidConstants = {}) => {
    setAnswers(NO_ANSWERS);
    setSaid(constants);
    setSource(next);
    setPasting(false);
  };
  const open = (file: File) =>
    work.run(async () => {
      const content = new Uint8Array(await file.arrayBuffer());
      take({ name: file.name, content, sha256: await sha256(content) });
    });
  const drop = (event: DragEvent) => {
    const [file] = event.dataTransfer.files;
    if (!file) return;
    event.preventDefault();
    void open(file);
  };
  const write = (taken: Intaken) =>
    work.run(async (watch) => {
      const { written, heldBack, alone } = await readAfter(read, () =>
        bringIn(host, records, taken, watch),
      );
      take(undefined);
      await readFilled(watch, alone);
      work.setTold(text.written(written, heldBack));
    });
  const undo = () =>
    work.run(async (watch) => {
      const { written, stay, alone } = await readAfter(read, () => bringBack(host, records, watch));
      await readFilled(watch, alone);
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
        <Pasted done={(pasted) => take({ name: text.pasted, content: pasted }, granted)} />
      )}
      {intake && !intake.ok && (
        <>
          <Typography color="error" sx={{ overflowWrap: "anywhere" }}>
            {text.unreadable(intake.source.name, intake.reason(told))}
          </Typography>
          <ConstantChoices book={records} said={said} granted={granted} say={setSaid} />
        </>
      )}
      {intake?.ok && (
        <TakenView
          intake={intake}
          answers={answers}
          answer={setAnswers}
          constants={<ConstantChoices book={records} said={said} granted={granted} say={setSaid} />}
          busy={work.busy}
          write={() => write(intake)}
          cancel={() => take(undefined)}
        />
      )}
      {last && !source && (
        <Button variant="outlined" disabled={work.busy} onClick={undo}>
          {text.takeBack(last.files.join(", "), locale.day(last.on))}
        </Button>
      )}
    </Stack>
  );
}

/** What taking a source in comes to, with what is said for all its lines. */
function takenWith(
  records: RecordBook,
  source: ExportSource,
  answers: IntakeAnswers,
  said: SaidConstants,
): Intaken | UnreadExport {
  const constants = readConstants(said, records);
  return constants.ok
    ? takeIn(records, [source], { ...answers, constants: constants.value }, today())
    : { ok: false, source, reason: constants.say };
}

/** One export: how it was read, what would come where, and the buttons that write it or cancel. */
function TakenView({
  intake,
  answers,
  answer,
  constants,
  busy,
  write,
  cancel,
}: {
  intake: Intaken;
  answers: IntakeAnswers;
  answer: (next: IntakeAnswers) => void;
  /** The control of what is the same for all lines. */
  constants: ReactNode;
  busy: boolean;
  write: () => void;
  cancel: () => void;
}): ReactElement | undefined {
  const text = useText().readings;
  const [taken] = intake.taken;
  if (!taken) return undefined;
  const { source, table, placement, mapping } = taken;
  return (
    <Box
      component="section"
      aria-label={source.name}
      sx={{ border: 1, borderColor: "divider", p: 1 }}
    >
      <Typography variant="h3">{text.taken(source.name, table.rows.length)}</Typography>
      {mapping && <Typography variant="body2">{text.readBy(mapping.name)}</Typography>}
      {constants}
      <Corrections table={table} answers={answers} answer={answer} />
      <PlacementView
        placement={placement}
        answers={answers}
        answer={answer}
        busy={busy}
        write={write}
      />
      <Button fullWidth onClick={cancel}>
        {text.cancel}
      </Button>
    </Box>
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
  const text = useText().readings;
  const [pasted, setPasted] = useState("");
  return (
    <Stack spacing={0.5}>
      <PasteBox label={text.pasteLabel} value={pasted} onPaste={setPasted} />
      <Button variant="contained" disabled={pasted.trim() === ""} onClick={() => done(pasted)}>
        {text.readPasted}
      </Button>
    </Stack>
  );
}
