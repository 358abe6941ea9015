import { BookError } from "../../sheets/bookError";
import { BATCH_BYTES, BATCH_CELLS, OBJECT_BYTES, sentBytes, type Watched } from "../write/chunks";
import type { Block } from "../write/outlineBlocks";
import { excelCode } from "./errorWords";

/** Rows of one block, to be asked for as a whole. */
interface Piece {
  readonly block: Block;
  readonly from: number;
  readonly count: number;
  readonly bytes: number;
}

/** What is read of each cell. */
export type Content = "values" | "formulas";
export const BOTH: readonly Content[] = ["values", "formulas"];

/** About how many bytes one row of a block takes, by its first. */
const bytesOfRow = ({ sample, columnCount }: Block, contents: readonly Content[]): number =>
  sentBytes(contents.map((content) => [sample[content]])) + columnCount * 8;

/** About how many bytes the answers take that hold all of the blocks. */
export const bytesOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, block) => sum + block.rowCount * bytesOfRow(block, BOTH), 0);

/**
 * Reads all blocks, in pieces that are cut by what the rows before were seen to take: values and formulas
 * together, or one of them where the other was read or comes later.
 */
export async function readRows(
  context: Excel.RequestContext,
  blocks: readonly Block[],
  { progress, signal, most: asked = BATCH_BYTES }: Watched,
  contents = BOTH,
): Promise<void> {
  const [content = "values"] = contents;
  const total = blocks.reduce((sum, { rowCount }) => sum + rowCount, 0);
  for (const block of blocks) block.rowBytes = bytesOfRow(block, contents);
  let most = asked;
  for (;;) {
    const pieces = nextPieces(blocks, most, content);
    if (pieces.length === 0) return;
    signal?.throwIfAborted();
    const queued = pieces.map((piece) => {
      const body = piece.block.range().untrack();
      body.load("rowIndex,columnIndex,rowCount,columnCount");
      const rows = body
        .getCell(piece.from, 0)
        .untrack()
        .getResizedRange(piece.count - 1, piece.block.columnCount - 1)
        .untrack();
      rows.load(contents.join());
      return { piece, body, rows };
    });
    try {
      await context.sync();
    } catch (error) {
      // Rows much longer than those before them: ask for fewer.
      if (excelCode(error) !== "ResponsePayloadSizeLimitExceeded" || most < OBJECT_BYTES)
        throw error;
      most /= 4;
      continue;
    }
    for (const { piece, body, rows } of queued) take(piece, body, rows, contents);
    progress?.(
      blocks.reduce((sum, block) => sum + block[content].length, 0),
      total,
    );
  }
}

function take(
  { block, count }: Piece,
  body: Excel.Range,
  rows: Excel.Range,
  contents: readonly Content[],
) {
  if (!isWhereItWas(block, body))
    throw new BookError(({ excel }) => excel.readChanged(block.title(excel)));
  const average = (1.1 * sentBytes(contents.map((content) => rows[content]))) / count;
  const isFirst = contents.some((content) => block[content].length === 0);
  block.rowBytes = isFirst ? average : Math.max(block.rowBytes, average);
  for (const content of contents) for (const row of rows[content]) block[content].push(row);
}

/** Whether a block lies where it lay when its titles were read, and is as long and as wide. */
export const isWhereItWas = (
  { first, left, rowCount, columnCount }: Block,
  body: Excel.Range,
): boolean =>
  body.rowIndex === first &&
  body.columnIndex === left &&
  body.rowCount === rowCount &&
  body.columnCount === columnCount;

/** The rows that come next, of as many blocks as fit into one answer. */
function nextPieces(blocks: readonly Block[], most: number, content: Content): Piece[] {
  let cells = BATCH_CELLS;
  let bytes = most;
  const pieces: Piece[] = [];
  for (const block of blocks) {
    const from = block[content].length;
    const left = block.rowCount - from;
    if (left === 0) continue;
    const fitting = Math.floor(
      Math.min((bytes - OBJECT_BYTES) / block.rowBytes, cells / block.columnCount),
    );
    const count = Math.min(left, pieces.length === 0 ? Math.max(fitting, 1) : fitting);
    if (count < 1) break;
    const piece = { block, from, count, bytes: OBJECT_BYTES + count * block.rowBytes };
    pieces.push(piece);
    bytes -= piece.bytes;
    cells -= count * block.columnCount;
    if (count < left) break;
  }
  return pieces;
}
