import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import { guessMaps } from "../../intake/ownLayout/guessMaps";
import { joinedWords, readSynonyms } from "../../intake/words/synonyms";
import type { Lineup } from "../../lineup/lineup";
import type { Messages } from "../../messages/messages";
import { toldIn } from "../../messages/told";
import { kindWords } from "../../records/kindWords";
import { useText } from "../../report/text";
import { type LayoutMap, readMapFile, writeMapFile } from "../../sheets/kept/layoutMap";
import { type Remembered, rememberedOf } from "../../sheets/kept/remembered";
import type { Snapshot } from "../../sheets/snapshot";
import { FileButton } from "../FileButton";
import { Fold } from "../lineup/Fold";
import { saveFile } from "../saveFile";
import type { StepProps } from "../shared";
import { MappedBlock } from "./MappedBlock";

/** Which block of the workbook a map is of. */
const blockOf = ({ sheet, titles, left = 1 }: LayoutMap) => JSON.stringify([sheet, titles, left]);
const titleOf = ({ sheet, titles, kind }: LayoutMap, messages: Messages) =>
  messages.layouts.title(sheet, titles, kindWords(messages, kind).title);

/** Blocks of sheets in somebody's own layout that are read as records: found, put right, kept, taken away. */
export default function OwnLayouts({ host, book, work, read }: StepProps): ReactElement {
  const messages = useText();
  const { layouts: text, language } = messages;
  const told = toldIn(language);
  const [open, setOpen] = useState<string>();
  /** The workbook with the cells of all its sheets, and what they seem to hold. */
  const [seen, setSeen] = useState<{ snapshot: Snapshot; guessed: readonly LayoutMap[] }>();
  const lineup: Lineup | undefined = book?.report?.context.lineup ?? book?.snapshot.lineup;
  if (!book || !lineup) return <Typography>{text.noLineup}</Typography>;
  const { maps = [] } = book.snapshot;
  const known = new Set(maps.map(blockOf));
  const guessed = (seen?.guessed ?? []).filter((map) => !known.has(blockOf(map)));

  const look = () =>
    work.run(async (watch) => {
      const snapshot = await host.read(watch, { sheets: "plain" });
      const found = guessMaps(snapshot, lineup).map(({ map }) => map);
      setSeen({ snapshot, guessed: found });
      work.setTold(text.looked(found.filter((map) => !known.has(blockOf(map))).length));
    });
  const remember = (changes: Partial<Remembered>, told: string) =>
    work.run(async (watch) => {
      await host.change({ remembered: { ...rememberedOf(book.snapshot), ...changes } }, watch);
      await read(watch);
      work.setTold(told);
    });
  const keep = (next: readonly LayoutMap[], told: string) => remember({ maps: next }, told);
  const openFile = (file: File) =>
    work.run(async () => {
      const found = readMapFile(await file.text());
      if (found.ok) await keep(found.value, text.opened(file.name, found.value.length));
      else work.setProblem(`${file.name} ${found.say(told)}`);
    });
  const openWords = (file: File) =>
    work.run(async () => {
      const found = readSynonyms(await file.text());
      if (!found.ok) return work.setProblem(`${file.name} ${found.say(told)}`);
      const words = joinedWords(found.value, book.snapshot.words);
      await remember({ words }, text.wordsTaken(file.name));
    });
  const others = (map: LayoutMap) => maps.filter((one) => blockOf(one) !== blockOf(map));
  const block = (map: LayoutMap, snapshot: Snapshot, stands: boolean) => (
    <Fold
      key={blockOf(map)}
      title={titleOf(map, messages)}
      open={open === blockOf(map)}
      onOpen={() => setOpen(open === blockOf(map) ? undefined : blockOf(map))}
    >
      <MappedBlock
        map={map}
        snapshot={snapshot}
        lineup={lineup}
        busy={work.busy}
        keep={(next) => keep([...others(next), next], text.kept(titleOf(next, messages)))}
        drop={stands ? () => keep(others(map), text.dropped(titleOf(map, messages))) : undefined}
      />
    </Fold>
  );
  return (
    <Stack spacing={1}>
      <Typography variant="body2" color="text.secondary">
        {text.help}
      </Typography>
      {maps.map((map) => block(map, book.snapshot, true))}
      {seen && guessed.length > 0 && <Typography variant="h3">{text.guessed}</Typography>}
      {seen && guessed.map((map) => block(map, seen.snapshot, false))}
      <Button variant="outlined" disabled={work.busy} onClick={look}>
        {text.look}
      </Button>
      {maps.length > 0 && (
        <Button
          variant="text"
          onClick={() => saveFile("layouts.map.json", writeMapFile(maps), "application/json")}
        >
          {text.save}
        </Button>
      )}
      <FileButton
        id="map-file"
        label={text.open}
        accept=".json"
        disabled={work.busy}
        onFile={openFile}
      />
      <FileButton
        id="words-file"
        label={text.words}
        accept=".json"
        disabled={work.busy}
        onFile={openWords}
      />
      <Typography variant="body2" color="text.secondary">
        {text.wordsHelp}
      </Typography>
    </Stack>
  );
}
