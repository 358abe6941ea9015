import { a1, columnLetters } from "./address";

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

const columnOf = (letters: string): number =>
  [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

const PART = /^\$?([A-Za-z]{1,3})?\$?(\d{1,7})?$/;

/** Reads `A1`, `A1:B2`, `A:B` or `1:4`, dollar signs allowed; undefined where it is no address. */
export function readArea(address: string): Area | undefined {
  const [first = "", second = first, ...rest] = address
    .slice(address.lastIndexOf("!") + 1)
    .split(":");
  const [from, to] = [PART.exec(first.trim()), PART.exec(second.trim())];
  if (!from || !to || rest.length > 0 || !(first && second)) return undefined;
  const row = (text: string | undefined, otherwise: number) =>
    text ? Number(text) - 1 : otherwise;
  const column = (text: string | undefined, otherwise: number) =>
    text ? columnOf(text) : otherwise;
  const area = {
    top: row(from[2], 0),
    left: column(from[1], 0),
    bottom: row(to[2], LAST_ROW),
    right: column(to[1], LAST_COLUMN),
  };
  return area.top >= 0 && area.bottom <= LAST_ROW && area.right <= LAST_COLUMN ? area : undefined;
}

/** Reads a list of addresses parted by commas; undefined where one of them is none. */
export function readAreas(addresses: string): Area[] | undefined {
  const areas = addresses.split(/[,;]/).map((address) => readArea(address.trim()));
  return areas.every((area) => area !== undefined) ? (areas as Area[]) : undefined;
}

export const areaAddress = ({ top, left, bottom, right }: Area): string =>
  top === 0 && bottom === LAST_ROW
    ? `${columnLetters(left)}:${columnLetters(right)}`
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
