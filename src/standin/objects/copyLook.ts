import { type Area, overlap } from "../../sheets/cells/area";
import type { Sheet } from "../book";
import { badArgument } from "../hostObject";

/** Sizes of rows and columns, which no copied look and no clearing reaches. */
const SIZES = ["columnWidth", "rowHeight"];

/** What is left of an area once another is taken out of it. */
export function without(area: Area, hole: Area): Area[] {
  if (!overlap(area, hole)) return [area];
  const [top, bottom] = [Math.max(area.top, hole.top), Math.min(area.bottom, hole.bottom)];
  return [
    { ...area, bottom: hole.top - 1 },
    { ...area, top: hole.bottom + 1 },
    { top, bottom, left: area.left, right: hole.left - 1 },
    { top, bottom, left: hole.right + 1, right: area.right },
  ].filter((rest) => rest.top <= rest.bottom && rest.left <= rest.right);
}

/** Takes the looks and conditional formats off an area. */
export function clearLook(sheet: Sheet, area: Area): void {
  sheet.looks = sheet.looks.flatMap((look) =>
    SIZES.includes(look.property) || !overlap(look.area, area)
      ? [look]
      : without(look.area, area).map((rest) => ({ ...look, area: rest })),
  );
  clearFormats(sheet, area);
}

export function clearFormats(sheet: Sheet, area: Area): void {
  sheet.formats = sheet.formats.filter((format) => {
    if (!format.areas.some((one) => overlap(one, area))) return true;
    format.areas = format.areas.flatMap((one) => without(one, area));
    return format.areas.length > 0;
  });
}

const moved = (area: Area, from: Area, to: Area): Area => {
  const [down, right] = [to.top - from.top, to.left - from.left];
  return {
    top: Math.max(area.top, from.top) + down,
    bottom: Math.min(area.bottom, from.bottom) + down,
    left: Math.max(area.left, from.left) + right,
    right: Math.min(area.right, from.right) + right,
  };
};

/** Gives an area the look of another of its size, its conditional formats as well. */
export function copyLook(sheet: Sheet, from: Area, to: Area): void {
  if (
    from.bottom - from.top !== to.bottom - to.top ||
    from.right - from.left !== to.right - to.left
  )
    throw badArgument("the stand-in copies looks between areas of one size");
  clearLook(sheet, to);
  sheet.looks.push(
    ...sheet.looks
      .filter(({ area, property }) => !SIZES.includes(property) && overlap(area, from))
      .map((look) => ({ ...look, area: moved(look.area, from, to) })),
  );
  for (const format of sheet.formats)
    format.areas.push(
      ...format.areas.filter((area) => overlap(area, from)).map((area) => moved(area, from, to)),
    );
}
