import { answered, blank, closing, LINEUP, NOT_OK, OK, quoted, signed } from "../columns/common";
import { type Column, isBlank, type RecordKind, type Row } from "../kind";
import { verdictBy } from "../verdict";

/** What stands before a revision's letter or number on a sheet, and between its parts, longest first. */
const BEFORE = ["revision", "rev.", "rev", "issue", "index", "-", ":", "#"] as const;

/** A revision as a spreadsheet compares it: without case, spaces and the word before it: `Rev. D` is `D`. */
const plain = (cell: Row[string] | undefined) =>
  BEFORE.reduce(
    (text, word) => text.replaceAll(word, ""),
    String(cell ?? "")
      .toLowerCase()
      .replaceAll(" ", ""),
  );

/** The same in a formula. */
const plainBy = (cell: string) =>
  BEFORE.reduce(
    (text, word) => `SUBSTITUTE(${text},${quoted(word)},"")`,
    `SUBSTITUTE(LOWER(${cell})," ","")`,
  );

/** A revision that is a whole number, without zeros or an R before it: `R03` is 3. */
const numberOf = (text: string) =>
  /^r?\d+$/.test(text) ? Number(text.replace("r", "")) : undefined;

/** Whether two cells name one revision, however it is written. */
const isSame = (one: Row[string] | undefined, other: Row[string] | undefined): boolean => {
  const [a, b] = [plain(one), plain(other)];
  return a === b || (numberOf(a) !== undefined && numberOf(a) === numberOf(b));
};

/** The same in a formula. */
const isSameBy = (one: string, other: string): string => {
  const [a, b] = [plainBy(one), plainBy(other)];
  const [first, second] = [a, b].map((text) => `VALUE(SUBSTITUTE(${text},"r",""))`);
  return `OR(${a}=${b},IFERROR(AND(${first}=${second},${[a, b].map((text) => `NOT(ISNUMBER(SEARCH(".",${text})))`).join(",")}),0))`;
};

const columns: readonly Column[] = [
  { id: "object", header: "For", role: "key", width: 10 },
  { id: "part", header: "Document", role: "key", width: 26 },
  { id: "title", header: "Title", role: "given", width: 34 },
  {
    id: "approved",
    header: "Latest approved revision",
    role: "limit",
    width: 12,
    help: "By the lineup's description; where that gives none, type it here from the register of documents.",
    value: (row, { project }) => approved(row, project) ?? row.approved ?? null,
  },
  {
    id: "found",
    header: "Revision on site",
    role: "entry",
    width: 11,
    accepts: { type: "text" },
    need: "reading",
    help: "As printed on the copy that the work is done from.",
  },
  answered("current", "Is the latest", [OK, NOT_OK], {
    role: "computed",
    need: undefined,
    formula: (ref) =>
      `IF(OR(${blank(ref("found"))},${blank(ref("approved"))}),"",IF(${isSameBy(ref("found"), ref("approved"))},"${OK}","${NOT_OK}"))`,
    value: ({ found, approved }) =>
      isBlank(found) || isBlank(approved) ? null : isSame(found, approved) ? OK : NOT_OK,
    working: ({ found, approved, current }) =>
      isBlank(current)
        ? ""
        : `on site ${found}, approved ${approved}: ${current === OK ? "the same" : "another"}`,
  }),
  ...signed(),
];

/** The approved revision that the lineup's description gives for a row. */
const approved = (
  { part }: Row,
  { drawings, specification, specificationRevision }: Project,
): string | undefined =>
  drawings.find(({ number }) => number === part)?.revision ??
  (part === specification ? specificationRevision : undefined);

type Project = Parameters<RecordKind["rows"]>[0]["project"];

/** Drawings and specification: is the work done from the latest approved revision? */
export const documents: RecordKind<"documents"> = {
  id: "documents",
  role: "document",
  sheet: "Documents",
  table: "GearDocuments",
  columns: [...columns, verdictBy(columns, [], []), ...closing()],
  rows: ({ project: { drawings, specification } }) => [
    ...(specification
      ? [{ object: LINEUP, part: specification, title: "Specification of the project" }]
      : []),
    ...drawings.map(
      ({ number, title }): Row => ({ object: LINEUP, part: number, title: title ?? null }),
    ),
  ],
  accepted: [],
  enough: [],
};
