import { countIn } from "../plurals";
import { between } from "./rules/between";
import { entries } from "./rules/entries";
import { evidence } from "./rules/evidence";
import { likeness } from "./rules/likeness";
import { limits } from "./rules/limits";
import { order } from "./rules/order";
import { project } from "./rules/project";
import { repairs } from "./rules/repairs";
import { rows } from "./rules/rows";
import { stored } from "./rules/stored";

const count = countIn("en");

/** Texts of the check: what each rule is about, and what its findings say. */
export const findings = {
  language: "en",
  rules: {
    ...limits,
    ...order,
    ...stored,
    ...rows,
    ...entries,
    ...likeness,
    ...between,
    ...evidence,
    ...project,
    ...repairs,
  },
  /** A blank cell, in a message. */
  blank: "blank",
  /** Added to the finding of the first row of such an entry. */
  furtherRows: (message: string, further: number, addresses: readonly string[]) => {
    const more = further - addresses.length;
    return `${message} The same applies to ${count(further, { one: "more row", other: "more rows" })} of the table, at ${addresses.join(", ")}${more > 0 ? ` and ${more} more` : ""}.`;
  },
  /** What is told of one cell and holds in its way for further ones of its panel. */
  furtherCells: (message: string, further: number, addresses: readonly string[]) => {
    const more = further - addresses.length;
    return `${message} The same holds for ${count(further, { one: "more entry", other: "more entries" })} of the panel, at ${addresses.join(", ")}${more > 0 ? ` and ${more} more` : ""}.`;
  },
  /** How many rows came to what. */
  counts: {
    pass: (rows: number) => `${rows} pass`,
    fail: (rows: number) => `${rows} fail`,
    missing: (rows: number) => `${rows} missing`,
    open: (rows: number) => `${rows} open`,
    inconclusive: (rows: number) => `${rows} inconclusive`,
    notRequired: (rows: number) => `${rows} not required`,
  },
  /** Why a workbook cannot be checked, after its name. */
  uncheckable: {
    noRecords:
      "has no record tables; build them from a lineup first, or give a workbook that has them (a record table is known by its headers, e.g. Panel or section, Part, Combination, Stage, R 1 min MΩ); a workbook in a layout of its own is read by a map (gearproof map BOOK.xlsx --lineup LINEUP.json -o MAP.json)",
    noLineup:
      "does not tell its lineup (cover and panels are missing or changed), so that ratings and criteria are unknown; build the lineup onto it again (gearproof lineup LINEUP.json -o BOOK.xlsx)",
  },
  /** The sheet on which a workbook shows its findings. */
  sheet: {
    title: "Findings of the check",
    purpose:
      "As the check found them on its day; check again after a change. To accept a finding, copy Rule, Sheet, Row, Column and Found to the sheet Concessions and give a reason, a name and a date.",
    caution:
      "Findings evaluate records. No findings does not mean that equipment is safe to energize: that is decided by licensed people under the local code, the site's permit system and the maker's instructions.",
    concession: (reason: string, name: string, date: string) => `${reason} (${name}, ${date})`,
  },
};
