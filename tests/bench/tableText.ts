/** A table for a page of the documentation, its columns as wide as their cells. */
export function tableText([head = [], ...body]: readonly (readonly string[])[]): string {
  const widths = head.map((_, at) =>
    Math.max(...[head, ...body].map((row) => row[at]?.length ?? 0)),
  );
  const line = (row: readonly string[]) =>
    `| ${row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(" | ")} |`;
  return [line(head), line(widths.map((width) => "-".repeat(width))), ...body.map(line)].join("\n");
}
