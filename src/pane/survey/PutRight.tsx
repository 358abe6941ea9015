import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import { KINDS } from "../../records/kinds";
import { kindWords } from "../../records/kindWords";
import { useText } from "../../report/text";
import type { Correction } from "../../sheets/kept/surveyAnswers";
import type { RecognisedBlock } from "../../survey/checkSurvey";
import { HEAD, NOTHING } from "../../survey/corrections";
import { Choice } from "../Choice";
import { Fold } from "../lineup/Fold";
import type { StepProps } from "../shared";

/** What a column can be said to be, the most frequent first. */
const COLUMNS = [
  ...(["reading", "panel", "part", "position", "stage", "test", "unit"] as const),
  ...(["minimum", "maximum", "limit", "required", "corrected", "temperature", "air"] as const),
  ...(["humidity", "voltage", "duration", "current", "discharge", "result", "error"] as const),
  ...(["spread", "date", "by", "instrument", "remarks"] as const),
] as const;
/** What a cell by itself can be said to be. */
const CELLS = ["temperature", "air", "humidity", "date", "by", "instrument"] as const;

/** The parts of a recognised table, to be put right by pointing at cells or from lists. */
export function PutRight({
  block,
  said,
  say,
  takeBack,
  host,
  work,
}: Pick<StepProps, "host" | "work"> & {
  block: RecognisedBlock;
  /** What was said of the sheet before. */
  said: readonly Correction[];
  say: (correction: Correction) => void;
  takeBack: (correction: Correction) => void;
}): ReactElement {
  const messages = useText();
  const text = messages.putRight;
  const [pointed, setPointed] = useState(`row ${HEAD}`);
  const [listed, setListed] = useState(false);
  const [wrong, setWrong] = useState<string>();
  const { sheet, head, parts } = block;
  const name = (is: string) => text.concepts[is as keyof typeof text.concepts] ?? is;
  const choices = [
    { value: `row ${HEAD}`, label: text.head },
    ...COLUMNS.map((is) => ({ value: `column ${is}`, label: text.column(name(is)) })),
    { value: `column ${NOTHING}`, label: text.column(text.nothing) },
    ...CELLS.map((is) => ({ value: `cell ${is}`, label: text.cell(name(is)) })),
  ];
  const point = () =>
    work.run(async () => {
      const cell = await host.selected();
      const [of = "row", is = HEAD] = pointed.split(" ") as [Correction["of"], string];
      setWrong(cell.sheet === sheet ? undefined : text.otherSheet(sheet));
      if (cell.sheet === sheet) say({ sheet, address: cell.address, of, is });
    });
  return (
    <Stack spacing={1} sx={{ borderInlineStart: 2, borderColor: "divider", ps: 1, my: 1, px: 1 }}>
      <Typography variant="body2">{text.how}</Typography>
      <Choice label={text.selectedIs} value={pointed} choices={choices} onChoose={setPointed} />
      <Button variant="outlined" disabled={work.busy} onClick={point}>
        {text.point}
      </Button>
      {wrong && <Typography color="error">{wrong}</Typography>}
      <Fold title={text.fromList} open={listed} onOpen={() => setListed(!listed)}>
        <Choice
          label={text.kind}
          value={block.kind}
          choices={KINDS.map(({ id }) => ({ value: id, label: kindWords(messages, id).title }))}
          onChoose={(kind) => say({ sheet, address: head, of: "row", is: `kind:${kind}` })}
        />
        {parts.map(({ address, title, concept }) => (
          <Choice
            key={address}
            label={text.titled(address, title)}
            value={COLUMNS.find((one) => one === concept) ?? NOTHING}
            choices={[
              ...COLUMNS.map((is) => ({ value: is as string, label: name(is) })),
              { value: NOTHING, label: text.nothing },
            ]}
            onChoose={(is) => say({ sheet, address, of: "column", is })}
          />
        ))}
      </Fold>
      {said.map((one) => (
        <Button key={JSON.stringify(one)} size="small" onClick={() => takeBack(one)}>
          {text.takeBack(
            one.address,
            choices.find(({ value }) => value === `${one.of} ${one.is}`)?.label ??
              kindWords(messages, one.is.replace(/^kind:/, "")).title,
          )}
        </Button>
      ))}
    </Stack>
  );
}
