import * as z from "zod";
import { type ListedPanel, PANEL_COLUMNS, readPanelList } from "../../intake/readPanelList";
import { BREAKER_MEDIA } from "../../lineup/equipment";
import type { CommandLineText } from "../../messages/commandLine";
import { readText, UsageError } from "../files/files";
import { readColumns } from "./meanings";

/** What is said of a table of panels that it does not say itself. */
export interface PanelFileOptions {
  /** `Title=field, …` as it was typed, or the name of a JSON file that says so. */
  readonly columns?: string;
  readonly medium?: string;
}

const columnsSaid = z.record(z.string(), z.enum([...PANEL_COLUMNS, "spare"]));

/**
 * The panels of a file that holds them as a table, with titles; columns that are left out are told.
 *
 * @throws {UsageError} with every line that is no panel, why, and what would be right
 */
export function readPanelFile(
  file: string,
  { columns, medium }: PanelFileOptions,
  say: (words: string) => void,
  text: CommandLineText["new"],
): readonly ListedPanel[] {
  const meant = columnsSaid.safeParse(columns === undefined ? {} : readColumns(columns));
  if (!meant.success)
    throw new UsageError(() => text.wrongColumns(columns ?? "", [...PANEL_COLUMNS, "spare"]));
  const read = BREAKER_MEDIA.find((one) => one.toLowerCase() === medium?.toLowerCase());
  if (medium !== undefined && read === undefined)
    throw new UsageError(() => `--medium: ${text.choose(medium, BREAKER_MEDIA)}`);
  const { panels, problems, unknown } = readPanelList(readText(file), {
    columns: meant.data,
    ...(read ? { medium: read } : {}),
  });
  const left = unknown.map(({ title }) => title).filter((title) => !(title in meant.data));
  const asked = left.length > 0 ? [text.leftOut(left)] : [];
  if (problems.length > 0)
    throw new UsageError(({ told }) =>
      [
        ...problems.map(({ line, message }) => text.tableLine(file, line, message(told))),
        ...asked,
      ].join("\n"),
    );
  if (panels.length === 0) throw new UsageError(() => `${file}: ${text.noPanels}`);
  for (const words of asked) say(words);
  return panels;
}
