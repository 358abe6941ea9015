import Stack from "@mui/material/Stack";
import type { ReactElement } from "react";
import { FIELDS } from "../../intake/words/fields";
import { LEFT_OUT } from "../../intake/words/mappedTo";
import { toldIn } from "../../messages/told";
import { KINDS } from "../../records/kinds";
import { useText } from "../../report/text";
import { Choice } from "../Choice";

/** What a column can hold: fields of exports, and columns of records by their headers. */
const HEADERS = new Map(
  KINDS.flatMap(({ columns }) =>
    columns.filter(({ role }) => role === "entry").map(({ id, header }) => [id, header] as const),
  ),
);
const nameOf = (field: string, names: Readonly<Record<string, string>>) =>
  names[field] ?? HEADERS.get(field) ?? field;

/** By title, what each column of an export or of a layout holds, to be put right where it is not. */
export function ColumnChoices({
  columns,
  choose,
}: {
  columns: readonly { readonly title: string; readonly unit?: string; readonly field?: string }[];
  choose: (title: string, field: string) => void;
}): ReactElement {
  const messages = useText();
  const choices = (field: string | undefined) => [
    { value: LEFT_OUT, label: messages.readings.leftOut },
    ...[...new Set([...Object.keys(FIELDS), ...(field ? [field] : [])])].map((value) => ({
      value,
      label: nameOf(value, toldIn(messages.language).intake.fields),
    })),
  ];
  return (
    <Stack spacing={1} sx={{ mt: 1 }}>
      {columns.map(({ title, field, unit }) => (
        <Choice
          key={title}
          label={unit && !title.includes(unit) ? `${title} (${unit})` : title}
          value={field ?? LEFT_OUT}
          choices={choices(field)}
          onChoose={(value) => choose(title, value)}
        />
      ))}
    </Stack>
  );
}
