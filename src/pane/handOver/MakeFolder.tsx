import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import { otherThanNoted, STEPS, type Step } from "../../handover/manifest";
import { today } from "../../quantities/today";
import { useText } from "../../report/text";
import { FileButton } from "../FileButton";
import type { Watch, WorkbookHost } from "../host";
import { saveFile } from "../saveFile";
import type { Work } from "../useWork";

/** Makes the hand-over of the open workbook and saves it as one file. */
export function MakeFolder({ host, work }: { host: WorkbookHost; work: Work }): ReactElement {
  const messages = useText();
  const text = messages.handOver.folder;
  const [besides, setBesides] = useState<ReadonlyMap<string, Uint8Array>>(new Map());
  const add = async (file: File) => {
    const bytes = new Uint8Array(await file.arrayBuffer());
    setBesides((before) => new Map([...before, [file.name, bytes]]));
  };
  const make = () =>
    work.run(async (watch) => {
      const [{ makeFolder }, { writePdf }] = await Promise.all([
        import("./makeFolder"),
        import("./writePdf"),
      ]);
      const book = await host.file();
      const step = told(watch);
      const made = await makeFolder(book, besides, today(), messages, { writePdf, step });
      saveFile(`${made.name}.zip`, made.zip, "application/zip");
      const { manifest } = made;
      work.setTold(
        [
          text.made(`${made.name}.zip`, manifest.files.length + 1, manifest.fingerprint),
          ...(manifest.final ? [] : [text.notFinal]),
          ...otherThanNoted(manifest).map(text.notAsNoted),
          ...(manifest.notFound.length > 0 ? [text.notFound(manifest.notFound)] : []),
        ].join(" "),
      );
    });
  return (
    <Stack spacing={1} component="section" aria-labelledby="folder">
      <Typography id="folder" variant="h3">
        {text.heading}
      </Typography>
      <Typography variant="body2">{text.about}</Typography>
      <FileButton
        id="besides"
        label={besides.size > 0 ? text.chosen(besides.size) : text.choose}
        accept=""
        multiple
        disabled={work.busy}
        onFile={(file) => void add(file)}
      />
      <Button variant="contained" onClick={make} disabled={work.busy}>
        {text.make}
      </Button>
    </Stack>
  );
}

/** Shows how far the work is, and goes on once that is drawn; a work that was stopped ends here. */
const told =
  ({ progress, signal }: Watch) =>
  async (step: Step): Promise<void> => {
    signal.throwIfAborted();
    progress(STEPS.indexOf(step) + 1, STEPS.length);
    await new Promise((drawn) => setTimeout(drawn));
  };
