import { alikeRows } from "../../records/cellsOf";
import { isBlank } from "../../records/kind";
import { type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

const VERSION = "firmware";
/** Devices of one sort from which on the version of most is the version. */
const DEVICES = 3;

/** A device that shows another firmware than its like, or two of them. */
export const versionsDiffer: Rule = {
  id: "versions-differ",
  reads: "table",
  find: (table, { text }) => {
    if (!table.at.has(VERSION)) return [];
    const says = text.rules["versions-differ"];
    const told = (row: number, found: string, message: string): Finding => ({
      rule: "versions-differ",
      weight: "query",
      ...where(table, row, VERSION),
      message,
      found,
    });
    const devices = devicesIn(table);
    const twofold = devices.flatMap(({ shown: [first, ...others] }) => {
      const other = others.find(({ version }) => version !== first?.version);
      return first && other
        ? [
            told(
              other.row,
              other.version,
              says.own(rowName(table, other.row), other.version, first.version),
            ),
          ]
        : [];
    });
    const odd = likeIn(devices).flatMap((like) => {
      const versions = new Set(like.map(({ version }) => version));
      const lone = like.filter(
        ({ version }) => like.filter((one) => one.version === version).length === 1,
      );
      const [one] = lone;
      const most = like.find(({ version }) => version !== one?.version);
      return one && most && lone.length === 1 && versions.size === 2
        ? [
            told(
              one.row,
              one.version,
              says.message(rowName(table, one.row), one.version, most.version, like.length - 1),
            ),
          ]
        : [];
    });
    return [...twofold, ...odd];
  },
};

interface Shown {
  readonly row: number;
  readonly version: string;
}

interface Device {
  /** What its settings are called: relays with the same are taken for one sort. */
  readonly sort: string;
  readonly shown: readonly Shown[];
}

const devicesIn = (table: JudgedTable): Device[] =>
  alikeRows(table.rows, ["object", "part"], table.aside).map((rows) => ({
    sort: rows
      .map((row) => String(table.rows[row]?.parameter ?? ""))
      .sort()
      .join("\u0000"),
    shown: rows.flatMap((row) => {
      const version = table.rows[row]?.[VERSION];
      return isBlank(version) ? [] : [{ row, version: String(version).trim() }];
    }),
  }));

/** The versions of devices of one sort, each by its first row, of sorts with enough of them. */
function likeIn(devices: readonly Device[]): Shown[][] {
  const sorts = new Map<string, Shown[]>();
  for (const { sort, shown } of devices)
    if (shown[0]) sorts.set(sort, [...(sorts.get(sort) ?? []), shown[0]]);
  return [...sorts.values()].filter(({ length }) => length >= DEVICES);
}
