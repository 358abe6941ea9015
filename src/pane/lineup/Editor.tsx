import Alert from "@mui/material/Alert";
import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo, useState } from "react";
import { type FieldValues, FormProvider, get, useForm, useFormState } from "react-hook-form";
import { nextToFill } from "../../check/progress/firstToFill";
import type { Lineup } from "../../lineup/lineup";
import type { Messages } from "../../messages/messages";
import { toldIn } from "../../messages/told";
import { checkLineup } from "../../records/readLineup";
import { useText } from "../../report/text";
import { type Plan, planFor } from "../../sheets/plan/plan";
import type { BuildResult } from "../BuildResult";
import { saveFile } from "../saveFile";
import type { StepProps } from "../shared";
import { described, draftOf, NEW_LINEUP, resolverIn } from "./draft";
import { EntryList } from "./EntryList";
import { Fields } from "./Fields";
import { Fold } from "./Fold";
import {
  type FormField,
  type FormList,
  listOf,
  PROJECT,
  RATINGS,
  TESTS,
  weightsOf,
} from "./fields";
import { Panels } from "./Panels";
import { Preview } from "./Preview";
import { Sets } from "./Sets";

/** Some lists below each other, each under its name. */
function Lists({ ids }: { ids: readonly FormList["id"][] }): ReactElement {
  const { lists } = useText();
  return (
    <>
      {ids.map((id) => (
        <Stack key={id} spacing={0.5}>
          {ids.length > 1 && <Typography variant="h3">{lists[id][0]}</Typography>}
          <EntryList list={listOf(id)} />
        </Stack>
      ))}
    </>
  );
}

function Weights(): ReactElement {
  return <Fields fields={weightsOf(useText())} />;
}

const SETTINGS = ["inspectionPoints", "checkItems", "furtherRecords", "leaveOut"] as const;
const DOCUMENTS = ["project.drawings", "project.revisions"] as const;
const CRITERIA = ["criteria", "confirmed"] as const;
const paths = (fields: readonly FormField[]) => fields.map(({ path }) => path);

const PARTS: readonly {
  /** By which its title stands among the texts. */
  readonly id: keyof Messages["lineup"]["parts"];
  /** Where its errors stand. */
  readonly paths: readonly string[];
  readonly show: () => ReactElement;
}[] = [
  { id: "project", paths: paths(PROJECT), show: () => <Fields fields={PROJECT} /> },
  { id: "ratings", paths: paths(RATINGS), show: () => <Fields fields={RATINGS} /> },
  { id: "panels", paths: ["panels"], show: () => <Panels /> },
  { id: "sets", paths: [], show: () => <Sets /> },
  { id: "tests", paths: paths(TESTS), show: () => <Fields fields={TESTS} /> },
  { id: "criteria", paths: CRITERIA, show: () => <Lists ids={CRITERIA} /> },
  {
    id: "drawings",
    paths: DOCUMENTS,
    show: () => <Lists ids={DOCUMENTS} />,
  },
  { id: "settings", paths: SETTINGS, show: () => <Lists ids={SETTINGS} /> },
  { id: "weights", paths: ["ruleWeights"], show: () => <Weights /> },
  { id: "instruments", paths: ["instruments"], show: () => <Lists ids={["instruments"]} /> },
];

/** Describes a lineup and builds it onto the workbook. */
export default function Editor({
  lineup,
  done,
  ...shared
}: StepProps & {
  /** The lineup to begin with. */
  lineup: Lineup | "new";
  /** Called when the lineup is built, with what came of it, or left. */
  done: (result?: BuildResult) => void;
}): ReactElement {
  const { lineup: text, language } = useText();
  const told = toldIn(language);
  const resolver = useMemo(() => resolverIn(told), [told]);
  const { host, work, read } = shared;
  const form = useForm<FieldValues>({
    defaultValues: lineup === "new" ? NEW_LINEUP : draftOf(lineup),
    mode: "onChange",
    resolver,
  });
  const [open, setOpen] = useState<string | undefined>(lineup === "new" ? "project" : "panels");
  const [plan, setPlan] = useState<Plan>();
  const [errors, setErrors] = useState<readonly string[]>([]);

  const checked = (): Lineup | undefined => {
    const found = checkLineup(described(form.getValues()));
    void form.trigger();
    setErrors(found.ok ? [] : found.errors.map(({ path, message }) => `${path}: ${message(told)}`));
    return found.ok ? found.value : undefined;
  };
  const preview = () => {
    const sound = checked();
    setPlan(sound && planFor(sound));
  };
  const keepOnly = () => {
    const sound = checked();
    if (!sound) return;
    void work.run(async (watch) => {
      await host.change({ lineup: sound }, watch);
      await read(watch);
      done();
      work.setTold(text.keptOnly);
    });
  };
  const build = (wanted: Plan) =>
    work.run(async (watch) => {
      const built = await host.build(wanted, watch);
      const after = await read(watch);
      done({ built, after });
      const next = after.report && nextToFill(after.report.context);
      if (next) await host.goTo(next.sheet, next.address);
    });
  const save = () => {
    const content = JSON.stringify(described(form.getValues()), null, 2);
    saveFile("lineup.lineup.json", content, "application/json");
  };

  return (
    <FormProvider {...form}>
      <Stack
        spacing={1}
        component="form"
        noValidate
        onSubmit={(event) => event.preventDefault()}
        onChange={() => setPlan(undefined)}
      >
        <Parts open={open} setOpen={setOpen} />
        {errors.length > 0 && (
          <Alert severity="warning">
            {text.errors(errors.length)}
            <Box component="ul" sx={{ m: 0, paddingInlineStart: 2.5 }}>
              {errors.map((error) => (
                <li key={error}>{error}</li>
              ))}
            </Box>
          </Alert>
        )}
        {plan && <Preview plan={plan} snapshot={shared.book?.snapshot} />}
        {plan ? (
          <Button variant="contained" disabled={work.busy} onClick={() => build(plan)}>
            {text.build}
          </Button>
        ) : (
          <Button variant="contained" disabled={work.busy} onClick={preview}>
            {text.preview}
          </Button>
        )}
        <Button variant="outlined" disabled={work.busy} onClick={keepOnly}>
          {text.keepOnly}
        </Button>
        <Typography variant="body2" color="text.secondary">
          {text.keepOnlyHelp}
        </Typography>
        <Button variant="outlined" onClick={save}>
          {text.save}
        </Button>
        <Button variant="text" disabled={work.busy} onClick={() => done()}>
          {text.leave}
        </Button>
      </Stack>
    </FormProvider>
  );
}

function Parts({
  open,
  setOpen,
}: {
  open: string | undefined;
  setOpen: (id: string | undefined) => void;
}): ReactElement {
  const text = useText().lineup;
  const { errors } = useFormState();
  const wrong = useMemo(
    () =>
      new Set(
        PARTS.filter(({ paths }) => paths.some((path) => get(errors, path) !== undefined)).map(
          ({ id }) => id,
        ),
      ),
    [errors],
  );
  return (
    <>
      {PARTS.map(({ id, show }) => (
        <Fold
          key={id}
          title={text.parts[id]}
          wrong={wrong.has(id)}
          open={open === id}
          onOpen={() => setOpen(open === id ? undefined : id)}
        >
          {show()}
        </Fold>
      ))}
    </>
  );
}
