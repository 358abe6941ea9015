import { parseA1Range, toCol } from "@borgar/fx/xlsx";
import { a1 } from "./address";

/** A rectangle of cells; rows and columns count from 0, both ends included. */
export interface Area {
  top: number;
  left: number;
  bottom: number;
  right: number;
}

export const LAST_ROW = 1_048_575;
export const LAST_COLUMN = 16_383;

/** The whole of a sheet. */
export const everything = (): Area => ({ top: 0, left: 0, bottom: LAST_ROW, right: LAST_COLUMN });

/** Reads `A1`, `A1:B2`, `A:B` or `1:4`, dollar signs and a sheet before it allowed; undefined where it is no address. */
export function readArea(address: string): Area | undefined {
  const range = parseA1Range(address.slice(address.lastIndexOf("!") + 1).trim());
  return range
    ? {
        top: range.top ?? 0,
        left: range.left ?? 0,
        bottom: range.bottom ?? LAST_ROW,
        right: range.right ?? LAST_COLUMN,
      }
    : undefined;
}

/** Reads a list of addresses parted by commas; undefined where one of them is none. */
export function readAreas(addresses: string): Area[] | undefined {
  const areas = addresses.split(/[,;]/).map((address) => readArea(address.trim()));
  return areas.every((area) => area !== undefined) ? (areas as Area[]) : undefined;
}

export const areaAddress = ({ top, left, bottom, right }: Area): string =>
  top === 0 && bottom === LAST_ROW
    ? `${toCol(left)}:${toCol(right)}`
    : top === bottom && left === right
      ? a1(top, left)
      : `${a1(top, left)}:${a1(bottom, right)}`;

export const overlap = (one: Area, other: Area): boolean =>
  one.top <= other.bottom &&
  other.top <= one.bottom &&
  one.left <= other.right &&
  other.left <= one.right;

export const covers = (outer: Area, inner: Area): boolean =>
  outer.top <= inner.top &&
  outer.bottom >= inner.bottom &&
  outer.left <= inner.left &&
  outer.right >= inner.right;

export const cellCount = ({ top, left, bottom, right }: Area): number =>
  (bottom - top + 1) * (right - left + 1);
