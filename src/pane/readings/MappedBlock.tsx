import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo, useState } from "react";
import { mappedTables } from "../../intake/ownLayout/mappedTables";
import { readBlock } from "../../intake/ownLayout/readBlock";
import type { Lineup } from "../../lineup/lineup";
import { toldIn } from "../../messages/told";
import { KINDS } from "../../records/kinds";
import { kindWords } from "../../records/kindWords";
import { useText } from "../../report/text";
import { a1 } from "../../sheets/cells/address";
import type { LayoutMap } from "../../sheets/kept/layoutMap";
import type { Snapshot } from "../../sheets/snapshot";
import { Choice } from "../Choice";
import { ColumnChoices } from "./ColumnChoices";

/** So many lines that are not understood are shown, the others counted. */
const SHOWN = 20;

/** One block of somebody's own layout: what its columns hold, and which records come of it. */
export function MappedBlock({
  map: given,
  snapshot,
  lineup,
  busy,
  keep,
  drop,
}: {
  map: LayoutMap;
  /** With the cells of the block's sheet. */
  snapshot: Snapshot;
  lineup: Lineup;
  busy: boolean;
  keep: (map: LayoutMap) => void;
  /** Called so that the block is read as records no longer. */
  drop: (() => void) | undefined;
}): ReactElement {
  const messages = useText();
  const text = messages.layouts;
  const [map, setMap] = useState(given);
  const { tables, problems } = useMemo(
    () => mappedTables(snapshot, lineup, [map]),
    [snapshot, lineup, map],
  );
  const columns = useMemo(() => {
    const cells = snapshot.sheets.find(({ name }) => name === map.sheet)?.cells;
    const block = cells && readBlock(map, cells);
    return block?.ok
      ? (block.value.inspection.blocks[0]?.columns ?? []).map(({ name: title, unit, field }) => ({
          title,
          ...(unit === undefined ? {} : { unit }),
          ...(field.value === undefined ? {} : { field: map.columns?.[title] ?? field.value }),
        }))
      : [];
  }, [snapshot, map]);
  const rows = tables.reduce((sum, table) => sum + table.rows.length, 0);
  return (
    <Stack spacing={1}>
      <Choice
        label={text.kind}
        value={map.kind}
        choices={KINDS.map(({ id }) => ({ value: id, label: kindWords(messages, id).title }))}
        onChoose={(kind) => setMap({ ...map, kind })}
      />
      {Object.entries(map.facts ?? {}).map(([title, value]) => (
        <Typography key={title} variant="body2">
          {text.fact(title, value)}
        </Typography>
      ))}
      {(given.down ?? []).map((title) => (
        <Choice
          key={title}
          label={text.below(title)}
          value={map.down?.includes(title) ? "above" : "nothing"}
          choices={[
            { value: "above", label: text.nameAbove },
            { value: "nothing", label: text.noName },
          ]}
          onChoose={(hold) =>
            setMap({
              ...map,
              down: given.down?.filter((one) =>
                one === title ? hold === "above" : map.down?.includes(one),
              ),
            })
          }
        />
      ))}
      <Box component="details">
        <summary>{messages.readings.columns}</summary>
        <ColumnChoices
          columns={columns.filter(({ title }) => title !== "")}
          choose={(title, field) => setMap({ ...map, columns: { ...map.columns, [title]: field } })}
        />
      </Box>
      <Typography>{text.records(rows)}</Typography>
      {problems.length > 0 && (
        <Box component="details">
          <summary>{text.problems(problems.length)}</summary>
          <Box component="ul" sx={{ paddingInlineStart: 2.5, my: 0.5 }}>
            {problems.slice(0, SHOWN).map(({ row, column, message }) => (
              <li key={`${row} ${column} ${message(toldIn(messages.language))}`}>
                <Typography variant="body2" sx={{ overflowWrap: "anywhere" }}>
                  {a1(row, column)}: {message(toldIn(messages.language))}
                </Typography>
              </li>
            ))}
            {problems.length > SHOWN && <li>{messages.state.more(problems.length - SHOWN)}</li>}
          </Box>
        </Box>
      )}
      <Button variant="contained" disabled={busy || rows === 0} onClick={() => keep(map)}>
        {text.keep}
      </Button>
      {drop && (
        <Button variant="outlined" disabled={busy} onClick={drop}>
          {text.drop}
        </Button>
      )}
    </Stack>
  );
}
