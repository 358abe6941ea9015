import { BookError } from "../sheets/bookError";
import { BATCH_BYTES, BATCH_CELLS, OBJECT_BYTES, sentBytes, type Watched } from "./chunks";
import { excelCode } from "./errorWords";
import type { Block } from "./outlineBlocks";

/** Rows of one block, to be asked for as a whole. */
interface Piece {
  readonly block: Block;
  readonly from: number;
  readonly count: number;
  readonly bytes: number;
}

/** Reads all blocks, in pieces that are cut by what the rows before were seen to take. */
export async function readRows(
  context: Excel.RequestContext,
  blocks: readonly Block[],
  { progress, signal, most: asked = BATCH_BYTES }: Watched,
): Promise<void> {
  const total = blocks.reduce((sum, { rowCount }) => sum + rowCount, 0);
  let most = asked;
  for (;;) {
    const pieces = nextPieces(blocks, most);
    if (pieces.length === 0) return;
    signal?.throwIfAborted();
    const queued = pieces.map((piece) => {
      const body = piece.block.range().untrack();
      body.load("rowIndex,rowCount");
      const rows = body
        .getCell(piece.from, 0)
        .untrack()
        .getResizedRange(piece.count - 1, piece.block.columnCount - 1)
        .untrack();
      rows.load("values,formulas");
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
    for (const { piece, body, rows } of queued) take(piece, body, rows);
    progress?.(
      blocks.reduce((sum, { values }) => sum + values.length, 0),
      total,
    );
  }
}

function take({ block, count }: Piece, body: Excel.Range, rows: Excel.Range) {
  if (body.rowIndex !== block.first || body.rowCount !== block.rowCount)
    throw new BookError(({ excel }) => excel.readChanged(block.title(excel)));
  const { values, formulas } = rows;
  const average = (1.1 * sentBytes([values, formulas])) / count;
  block.rowBytes = block.values.length === 0 ? average : Math.max(block.rowBytes, average);
  for (const row of values) block.values.push(row);
  for (const row of formulas) block.formulas.push(row);
}

/** The rows that come next, of as many blocks as fit into one answer. */
function nextPieces(blocks: readonly Block[], most: number): Piece[] {
  let cells = BATCH_CELLS;
  let bytes = most;
  const pieces: Piece[] = [];
  for (const block of blocks) {
    const from = block.values.length;
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
