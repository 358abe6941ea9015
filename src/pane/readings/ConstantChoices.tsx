import Box from "@mui/material/Box";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo } from "react";
import type { SaidConstants } from "../../intake/constants";
import { kindWords } from "../../records/kindWords";
import { useText } from "../../report/text";
import type { RecordBook } from "../../sheets/recordBook";
import { Choice } from "../Choice";

/** What is said for all lines of an export: of which record, panel, part and stage they are. */
export function ConstantChoices({
  book,
  said,
  granted,
  say,
}: {
  book: RecordBook;
  said: SaidConstants;
  /** What was taken for granted from the record that is open. */
  granted: SaidConstants;
  say: (said: SaidConstants) => void;
}): ReactElement {
  const messages = useText();
  const text = messages.readings.constants;
  const tables = useMemo(() => book.tables.filter(({ rows }) => rows.length > 0), [book]);
  const rows = tables.flatMap(({ kind, rows }) =>
    said.test === undefined || said.test === kind.id ? rows : [],
  );
  const namesOf = (key: string, among = rows) =>
    [...new Set(among.map((row) => String(row[key] ?? "")))].filter((name) => name !== "");
  const ofPanel = rows.filter(({ object }) => said.panel === undefined || object === said.panel);
  const choose = (field: string) => (value: string) => {
    const { [field]: _, ...others } = said;
    say(value === "" ? others : { ...others, [field]: value });
  };
  const offered = (names: readonly string[]) => [
    { value: "", label: text.asTheFileSays },
    ...names.map((value) => ({ value, label: value })),
  ];
  const isGranted = Object.entries(granted).some(([field, value]) => said[field] === value);
  return (
    <Box component="details" open={Object.keys(said).length > 0}>
      <summary>{text.heading}</summary>
      <Stack spacing={1} sx={{ mt: 1 }}>
        {isGranted && <Typography variant="body2">{text.granted}</Typography>}
        <Choice
          label={text.test}
          value={said.test ?? ""}
          choices={[
            { value: "", label: text.asTheFileSays },
            ...tables.map(({ kind }) => ({
              value: kind.id,
              label: kindWords(messages, kind.id).title,
            })),
          ]}
          onChoose={choose("test")}
        />
        <Choice
          label={text.panel}
          value={said.panel ?? ""}
          choices={offered(namesOf("object"))}
          onChoose={choose("panel")}
        />
        <Choice
          label={text.part}
          value={said.part ?? ""}
          choices={offered(namesOf("part", ofPanel))}
          onChoose={choose("part")}
        />
        <Choice
          label={text.stage}
          value={said.stage ?? ""}
          choices={offered(namesOf("stage"))}
          onChoose={choose("stage")}
        />
      </Stack>
    </Box>
  );
}
