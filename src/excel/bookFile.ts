import { BookError } from "../sheets/bookError";

/** The workbook as a file, as it stands now, and the name that it goes by. */
export interface BookFile {
  readonly bytes: Uint8Array;
  readonly name: string;
}

/** What of Office is asked for a file. */
export type FileSource = Pick<Office.Document, "getFileAsync" | "url">;

/** Excel gives a file in slices of at most 4 MB. */
const SLICE = 4_194_304;

/** A name where the workbook was never saved. */
const UNSAVED = "workbook.xlsx";

/**
 * The open workbook as the bytes of a file. Excel keeps two such files at most until they are closed, which
 * is seen to whatever happens.
 *
 * @throws {BookError} where the host gives no file, or stops while it does
 */
export async function bookFile(source: FileSource): Promise<BookFile> {
  if (typeof source.getFileAsync !== "function") throw new BookError(({ excel }) => excel.noFile);
  const file = await asked<Office.File>((done) =>
    source.getFileAsync("compressed" as unknown as Office.FileType, { sliceSize: SLICE }, done),
  );
  try {
    const bytes = new Uint8Array(file.size);
    let at = 0;
    for (let index = 0; index < file.sliceCount; index++) {
      const { data } = await asked<Office.Slice>((done) => file.getSliceAsync(index, done));
      bytes.set(data, at);
      at += data.length;
    }
    return { bytes, name: nameIn(source.url) };
  } finally {
    file.closeAsync();
  }
}

const asked = <T>(ask: (done: (result: Office.AsyncResult<T>) => void) => void): Promise<T> =>
  new Promise((resolve, reject) =>
    ask(({ status, value, error }) => {
      if (String(status) === "succeeded") resolve(value);
      else reject(new BookError(({ excel }) => excel.fileRefused(error?.message)));
    }),
  );

/** The last part of a path or an address, as a file may be called. */
function nameIn(url: string | null | undefined): string {
  const last = (url ?? "").split(/[?#]/)[0]?.split(/[/\\]/).at(-1) ?? "";
  try {
    return decodeURIComponent(last) || UNSAVED;
  } catch {
    return last || UNSAVED;
  }
}
