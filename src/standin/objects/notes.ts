import type { Note, Sheet, StandInBook } from "../book";
import { type HostObject, hostObject } from "../hostObject";
import { rangeObject } from "./range";

/** The notes or the comments of a sheet. */
export const noteCollection = (
  book: StandInBook,
  sheet: Sheet,
  notes: readonly Note[],
): HostObject => {
  const object = ({ id, content, area }: Note) =>
    hostObject({
      type: "Comment",
      id,
      get: { id: () => id, content: () => content },
      call: { getLocation: () => rangeObject(book, sheet, area) },
    });
  return hostObject({
    type: "CommentCollection",
    items: () => notes.map(object),
    item: (id) => {
      const found = notes.find((note) => note.id === id);
      return found ? object(found) : null;
    },
  });
};
