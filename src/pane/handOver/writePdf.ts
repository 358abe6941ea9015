import pdfMake from "pdfmake/build/pdfmake.min";
import fonts from "pdfmake/build/vfs_fonts";
import type { TDocumentDefinitions } from "pdfmake/interfaces";

/** Pages as a PDF, in a browser. Nothing is fetched for it: the fonts come with the library. */
export async function writePdf(pages: TDocumentDefinitions): Promise<Uint8Array> {
  pdfMake.addVirtualFileSystem(fonts);
  return pdfMake.createPdf(pages).getBuffer();
}
