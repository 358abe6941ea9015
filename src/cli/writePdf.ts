import { fileURLToPath } from "node:url";
import pdfmake from "pdfmake";
import type { TDocumentDefinitions } from "pdfmake/interfaces";

const fonts = fileURLToPath(new URL("fonts/Roboto/", import.meta.resolve("pdfmake/package.json")));
const face = (name: string) => `${fonts}Roboto-${name}.ttf`;

/** Pages as a PDF. Nothing is read for it but the fonts that come with the library. */
export async function writePdf(pages: TDocumentDefinitions): Promise<Uint8Array> {
  pdfmake.setFonts({
    Roboto: {
      normal: face("Regular"),
      bold: face("Medium"),
      italics: face("Italic"),
      bolditalics: face("MediumItalic"),
    },
  });
  pdfmake.setLocalAccessPolicy((path) => path.startsWith(fonts));
  pdfmake.setUrlAccessPolicy(() => false);
  return pdfmake.createPdf(pages).getBuffer();
}
