/** So long what was given stays to be read. */
const KEPT_MS = 60_000;

/** Gives the user a file to keep. */
export function saveFile(name: string, content: string | Uint8Array, type: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  link.download = name;
  link.click();
  // A browser may begin to read a long file only after this returns.
  setTimeout(() => URL.revokeObjectURL(link.href), KEPT_MS);
}
