import { type Lineup, sameName } from "../lineup/lineup";
import { LINEUP } from "../records/columns/common";

/** The panels that a record is about: a panel, those of a section, or all of the lineup. */
export const panelsOf = ({ panels }: Lineup, object: string): string[] =>
  panels
    .filter(
      ({ designation, section }) =>
        object === LINEUP || sameName(designation, object) || sameName(section, object),
    )
    .map(({ designation }) => designation);
