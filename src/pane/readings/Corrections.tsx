import Box from "@mui/material/Box";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import { FIELDS } from "../../intake/fields";
import type { ExportTable } from "../../intake/readExport";
import { LEFT_OUT } from "../../intake/titles";
import { KINDS } from "../../records/kinds";
import { Choice } from "../Choice";
import { messages } from "../messages";
import type { Said } from "./said";

const text = messages.readings;

/** What a column can hold: fields of exports, and columns of records by their headers. */
const HEADERS = new Map(
  KINDS.flatMap(({ columns }) =>
    columns.filter(({ role }) => role === "entry").map(({ id, header }) => [id, header] as const),
  ),
);
const nameOf = (field: string) => FIELDS[field]?.name ?? HEADERS.get(field) ?? field;

/** What was found by inspection, each with its evidence, to be put right where it is not. */
export function Corrections({
  table,
  said,
  say,
}: {
  table: ExportTable;
  said: Said;
  say: (next: Said) => void;
}): ReactElement {
  const { inspection } = table;
  const { decimal, dateOrder } = inspection;
  const columns = new Map(
    inspection.blocks.flatMap((block) => block.columns.map((one) => [one.title, one] as const)),
  );
  const choices = (field: string | undefined) => [
    { value: LEFT_OUT, label: text.leftOut },
    ...[...new Set([...Object.keys(FIELDS), ...(field ? [field] : [])])].map((value) => ({
      value,
      label: nameOf(value),
    })),
  ];
  return (
    <Stack spacing={1} sx={{ my: 1 }}>
      <Typography variant="body2">{decimal.evidence}</Typography>
      {(decimal.confidence === "open" || said.decimal) && (
        <Choice
          label={text.decimal}
          value={said.decimal ?? ""}
          choices={[
            { value: "", label: messages.lineup.notSet },
            { value: ".", label: text.point },
            { value: ",", label: text.comma },
          ]}
          onChoose={(value) => say({ ...said, decimal: value === "" ? undefined : (value as ".") })}
        />
      )}
      {(dateOrder.confidence === "open" || said.dateOrder) && (
        <>
          <Typography variant="body2">{dateOrder.evidence}</Typography>
          <Choice
            label={text.dateOrder}
            value={said.dateOrder ?? ""}
            choices={[
              { value: "", label: messages.lineup.notSet },
              { value: "day-first", label: text.dayFirst },
              { value: "month-first", label: text.monthFirst },
            ]}
            onChoose={(value) =>
              say({ ...said, dateOrder: value === "" ? undefined : (value as "day-first") })
            }
          />
        </>
      )}
      <Box component="details" open={[...columns.values()].some(({ field }) => !field.value)}>
        <summary>{text.columns}</summary>
        <Stack spacing={1} sx={{ mt: 1 }}>
          {[...columns].map(([title, { field, unit }]) => (
            <Choice
              key={title}
              label={unit ? `${title} (${unit})` : title}
              value={field.value ?? LEFT_OUT}
              choices={choices(field.value)}
              onChoose={(value) => say({ ...said, columns: { ...said.columns, [title]: value } })}
            />
          ))}
        </Stack>
      </Box>
    </Stack>
  );
}
