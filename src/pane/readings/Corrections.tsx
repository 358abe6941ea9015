import Box from "@mui/material/Box";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import type { Evidence } from "../../intake/table/evidence";
import type { ExportTable } from "../../intake/table/exportTable";
import type { IntakeAnswers } from "../../intake/takeIn";
import { ENCODINGS } from "../../intake/text/decode";
import { toldIn } from "../../messages/told";
import { useText } from "../../report/text";
import { Choice } from "../Choice";
import { Entry } from "../Entry";
import { ColumnChoices } from "./ColumnChoices";

/** What was found by inspection, and how many lines hold no readings. */
function FoundList({
  evidence,
  skipped,
}: {
  evidence: readonly (Evidence<unknown> | undefined)[];
  skipped: number;
}): ReactElement {
  const { readings: text, language } = useText();
  const told = toldIn(language);
  const lines = evidence.flatMap((found) =>
    found ? [text.found(found.evidence(told), found.confidence)] : [],
  );
  if (skipped > 0) lines.push(text.skipped(skipped));
  return (
    <Box component="ul" sx={{ paddingInlineStart: 2.5, my: 0.5 }}>
      {lines.map((line) => (
        <li key={line}>
          <Typography variant="body2">{line}</Typography>
        </li>
      ))}
    </Box>
  );
}

/** What was found by inspection, each with its evidence, to be put right where it is not. */
export function Corrections({
  table,
  answers,
  answer,
}: {
  table: ExportTable;
  answers: IntakeAnswers;
  answer: (next: IntakeAnswers) => void;
}): ReactElement {
  const text = useText().readings;
  const { inspection } = table;
  const { decimal, dateOrder } = inspection;
  const columns = new Map(
    inspection.blocks.flatMap((block) => block.columns.map((one) => [one.name, one] as const)),
  );
  const shape = inspection.blocks[0]?.shape;
  const titles = inspection.blocks[0]?.titles;
  const evidence: readonly (Evidence<unknown> | undefined)[] = [
    inspection.encoding,
    inspection.delimiter,
    decimal,
    dateOrder,
    titles,
    shape,
  ];
  const open = evidence.some((one) => one?.confidence === "open");
  const offered = <T extends string>(names: Readonly<Record<T, string>>) => [
    { value: "", label: text.byInspection },
    ...Object.entries<string>(names).map(([value, label]) => ({ value, label })),
  ];
  const choose =
    <K extends keyof IntakeAnswers>(key: K) =>
    (value: string) => {
      const { [key]: _, ...others } = answers;
      answer((value === "" ? others : { ...others, [key]: value }) as IntakeAnswers);
    };
  return (
    <Stack spacing={1} sx={{ my: 1 }}>
      <Box component="details" open={open}>
        <summary>{text.asRead}</summary>
        <FoundList evidence={evidence} skipped={inspection.skippedCount} />
        <Stack spacing={1}>
          <Choice
            label={text.encoding}
            value={answers.encoding ?? ""}
            choices={[
              { value: "", label: text.byInspection },
              ...ENCODINGS.map((value) => ({ value, label: value })),
            ]}
            onChoose={choose("encoding")}
          />
          <Choice
            label={text.delimiter}
            value={answers.delimiter ?? ""}
            choices={offered(text.delimiters)}
            onChoose={choose("delimiter")}
          />
          <Choice
            label={text.shape}
            value={answers.shape ?? ""}
            choices={offered(text.shapes)}
            onChoose={choose("shape")}
          />
          <Choice
            label={text.decimal}
            value={answers.decimal ?? ""}
            choices={offered({ ".": text.point, ",": text.comma })}
            onChoose={choose("decimal")}
          />
          <Choice
            label={text.dateOrder}
            value={answers.dateOrder ?? ""}
            choices={offered({ "day-first": text.dayFirst, "month-first": text.monthFirst })}
            onChoose={choose("dateOrder")}
          />
          <Entry
            label={text.titles}
            type="number"
            value={String(answers.titles ?? titles?.value ?? "")}
            onEnter={(value) => {
              const { titles: _, ...others } = answers;
              const line = Math.trunc(Number(value));
              answer(line >= 1 ? { ...others, titles: line } : others);
            }}
          />
        </Stack>
      </Box>
      <Box component="details" open={[...columns.values()].some(({ field }) => !field.value)}>
        <summary>{text.columns}</summary>
        <ColumnChoices
          columns={[...columns].map(([title, { field, unit }]) => ({
            title,
            ...(unit === undefined ? {} : { unit }),
            ...(field.value === undefined ? {} : { field: field.value }),
          }))}
          choose={(title, field) =>
            answer({ ...answers, columns: { ...answers.columns, [title]: field } })
          }
        />
      </Box>
      <Entry
        label={text.keepAs}
        value={answers.rememberAs ?? ""}
        onEnter={(rememberAs) => answer({ ...answers, rememberAs })}
      />
    </Stack>
  );
}
