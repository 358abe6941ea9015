import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import { FormProvider, useForm, useWatch } from "react-hook-form";
import { BREAKER_MEDIA, PANEL_TYPES } from "../../lineup/equipment";
import { series } from "../../lineup/series";
import { useText } from "../../report/text";
import { Fields } from "./Fields";
import type { FormField } from "./fields";

const FIELDS: readonly FormField[] = [
  { path: "first", label: ({ lineup }) => lineup.seriesFirst, holds: "text" },
  { path: "count", label: ({ lineup }) => lineup.seriesCount, holds: "number" },
  { path: "type", label: ({ lineup }) => lineup.seriesType, holds: PANEL_TYPES },
  { path: "section", label: ({ lineup }) => lineup.seriesSection, holds: "text" },
  { path: "medium", label: ({ lineup }) => lineup.seriesMedium, holds: BREAKER_MEDIA },
  { path: "ratedA", label: ({ lineup }) => lineup.seriesRated, holds: "number" },
];

/** No lineup is longer than this. */
const MAX_PANELS = 200;

/** Panels alike, their designations counting on. */
export function AddSeries({
  first,
  section,
  breaker,
  add,
}: {
  /** What a breaker is called that is not named. */
  breaker: string;
  first: string;
  section: string;
  add: (panels: readonly Record<string, unknown>[]) => void;
}): ReactElement {
  const text = useText().lineup;
  const form = useForm({
    defaultValues: {
      first,
      count: 4 as unknown,
      type: "feeder",
      section,
      medium: "vacuum" as string | undefined,
      ratedA: 1250 as unknown,
    },
  });
  const values = useWatch({ control: form.control });
  const count = Math.floor(Number(values.count));
  const made = count >= 1 && count <= MAX_PANELS ? series(values.first ?? "", count) : [];
  return (
    <FormProvider {...form}>
      <Stack
        component="section"
        aria-label={text.addSeries}
        spacing={1.25}
        sx={{ border: 1, borderColor: "divider", p: 1 }}
      >
        <Fields fields={FIELDS} />
        <Typography variant="body2">
          {made.length > 0
            ? text.seriesMade(made[0] ?? "", made.at(-1) ?? "")
            : text.seriesMost(MAX_PANELS)}
        </Typography>
        <Button
          variant="contained"
          disabled={made.length === 0}
          onClick={() =>
            add(
              made.map((designation) => ({
                designation,
                type: values.type,
                section: values.section,
                ...(values.medium
                  ? {
                      breaker: {
                        designation: breaker,
                        medium: values.medium,
                        ratedA: values.ratedA,
                      },
                    }
                  : {}),
              })),
            )
          }
        >
          {text.pasteAdd(made.length)}
        </Button>
      </Stack>
    </FormProvider>
  );
}
