import { a1 } from "../../sheets/cells/address";
import { textXml } from "../patch/cellXml";

/** A note on a cell, row and column from 0. */
export interface DraftNote {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** The part that holds the notes of a sheet. */
export const notesXml = (notes: readonly DraftNote[]): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<comments xmlns="${MAIN}"><authors><author></author></authors><commentList>${notes
    .map(
      ({ row, column, text }) =>
        `<comment ref="${a1(row, column)}" authorId="0"><text>${textXml("", text)}</text></comment>`,
    )
    .join("")}</commentList></comments>`;

/** The frames in which a spreadsheet shows them: without these it shows none (ECMA-376 part 4, VML). */
export const noteFrames = (notes: readonly DraftNote[]): string =>
  `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"/>${notes
    .map(
      ({ row, column }, at) =>
        `<v:shape id="_x0000_s${1025 + at}" type="#_x0000_t202" style="position:absolute;visibility:hidden" o:insetmode="auto"><x:ClientData ObjectType="Note"><x:Anchor>${column + 1}, 15, ${row}, 2, ${column + 3}, 15, ${row + 4}, 4</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`,
    )
    .join("")}</xml>`;
