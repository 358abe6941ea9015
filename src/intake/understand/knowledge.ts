import type { RecordKind } from "../../records/kind";
import { keyIds } from "../../records/kind";
import { isSameSort, objectKey, positionsOf } from "../rows/candidates";
import type { RecordRows } from "../rows/recordRows";
import { plainWords } from "../words/plainWords";
import { pointKey } from "../words/pointKey";
import { readPositions } from "../words/readPosition";
import { deviceKeys, type KnownPanel } from "./devices";
import { type NamedPoint, namedPoints } from "./namedPoints";
import { type NamedPlace, placesOf } from "./places";

/** What the workbook that an export is for tells of one record kind. */
export interface KnownKind {
  readonly kind: RecordKind;
  readonly places: readonly NamedPlace[];
  /** The same without what else stands in the panel. */
  readonly direct: readonly NamedPlace[];
  /** Whether its rows are by phase, and whether by stage. */
  readonly byPhase: boolean;
  readonly byStage: boolean;
  /** The phases, poles or combinations that its rows are by, whatever letters the lineup has for them. */
  readonly positions: ReadonlySet<string>;
  /** Points of a test that rows are by, such as multiples of a pick-up, made comparable. */
  readonly points: ReadonlySet<string>;
  /** Of these the ones that go by a name. */
  readonly named: readonly NamedPoint[];
}

/** What the workbook that an export is for tells: its records, the lineup's names and instruments. */
export interface Knowledge {
  readonly kinds: readonly KnownKind[];
  /** Ids of instruments, by these and by serial numbers in lower case. */
  readonly instruments: ReadonlyMap<string, string>;
  /** The panel or section that a text is the name of, as the records write it. */
  readonly objectOf: (text: string) => string | undefined;
  /** Whether a text is what the records call a part or an item, as it is written. */
  readonly isPart: (text: string) => boolean;
}

/** What is known of a lineup besides its records. */
export interface KnownLineup {
  readonly panels?: readonly KnownPanel[];
  readonly instruments?: readonly { readonly id: string; readonly serial?: string }[];
}

export const knowledgeOf = (
  tables: readonly RecordRows[],
  { panels = [], instruments = [] }: KnownLineup,
): Knowledge => {
  const kinds = new Map<RecordKind, RecordRows[]>();
  for (const table of tables) {
    if (table.rows.length === 0) continue;
    const known = kinds.get(table.kind);
    if (known) known.push(table);
    else kinds.set(table.kind, [table]);
  }
  const devices = deviceKeys(panels);
  const parts = new Set(
    tables.flatMap(({ rows }) => rows.map((row) => plainWords(String(row.part ?? "")))),
  );
  parts.delete("");
  return {
    kinds: [...kinds].map(([kind, own]) => knownKind(kind, own, devices)),
    instruments: new Map(
      instruments.flatMap(({ id, serial }) =>
        [id, serial ?? id].map((one): [string, string] => [one.toLowerCase(), id]),
      ),
    ),
    objectOf: objectFinder(tables, panels, devices),
    isPart: (text) => text.length < LONGEST_PART && parts.has(plainWords(text)),
  };
};

const LONGEST_PART = 100;

const knownKind = (
  kind: RecordKind,
  tables: readonly RecordRows[],
  devices: ReadonlyMap<string, string>,
): KnownKind => {
  const positions = tables.flatMap(positionsOf);
  const phases = readPositions(positions);
  const isPointed = phases.length < 0.5 * positions.length;
  return {
    kind,
    places: placesOf(tables, devices),
    direct: placesOf(tables),
    byPhase: positions.length > 0 && !isPointed,
    positions: new Set(isPointed ? [] : phases),
    byStage: keyIds(kind).includes("stage"),
    points: new Set(isPointed ? positions.map(pointKey) : []),
    named: isPointed ? namedPoints(tables) : [],
  };
};

/** Names that two panels or sections have mean neither. */
const objectFinder = (
  tables: readonly RecordRows[],
  panels: readonly KnownPanel[],
  devices: ReadonlyMap<string, string>,
): Knowledge["objectOf"] => {
  const objects = new Set(
    tables.flatMap(({ rows }) => rows.map((row) => String(row.object ?? "").trim())),
  );
  objects.delete("");
  const [written, keys] = [new Map<string, string>(), new Map<string, string | undefined>()];
  const addKey = (key: string, object: string) => {
    if (key !== "") keys.set(key, keys.has(key) && keys.get(key) !== object ? undefined : object);
  };
  for (const object of objects) {
    written.set(plainWords(object), object);
    addKey(objectKey(object), object);
  }
  for (const { designation, name } of panels)
    if (name !== undefined && objects.has(designation) && !written.has(plainWords(name)))
      addKey(objectKey(name), designation);
  for (const [key, object] of devices)
    if (objects.has(object) && !keys.has(key)) keys.set(key, object);
  return (text) => {
    if (text.length > 60) return undefined;
    const verbatim = written.get(plainWords(text));
    const found = verbatim ?? keys.get(objectKey(text));
    return found === undefined || verbatim !== undefined || isSameSort(text, found)
      ? found
      : undefined;
  };
};
