import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import pdfmake from "pdfmake";
import type { Content, TDocumentDefinitions } from "pdfmake/interfaces";

const fonts = fileURLToPath(new URL("fonts/Roboto/", import.meta.resolve("pdfmake/package.json")));
const face = (name: string) => `${fonts}Roboto-${name}.ttf`;

/** Pages that are laid out and not yet drawn. */
type LaidOut = readonly object[];

/** What the library does inside `createPdf`: layout, then drawing. */
interface Inside {
  readonly LayoutBuilder: new (
    size: object,
    margins: object,
    svg: object,
  ) => {
    layoutDocument(
      content: Content,
      document: object,
      styles: object,
      style: object | undefined,
      background: undefined,
      header: undefined,
      footer: Footer,
      watermark: unknown,
    ): LaidOut;
  };
  readonly Renderer: new (
    document: object,
  ) => {
    renderPages(pages: LaidOut): void;
  };
  readonly SVGMeasure: new () => object;
}

/** A document that pages are drawn into, and its bytes read from. */
interface Drawn {
  readonly options: { readonly size: readonly [width: number, height: number] };
  read(): Uint8Array | null;
  on(event: "readable" | "end", told: (value?: unknown) => void): void;
  end(): void;
}

type Footer = (page: number, pages: number) => Content;

const require = createRequire(import.meta.url);
const inside = (name: keyof Inside) => require(`pdfmake/js/${name}.js`).default;

/**
 * Pages as a PDF. Nothing is read for it but the fonts that come with the library. The library holds the
 * whole of a document while it lays it out, some kilobytes for each cell; a long report is therefore laid out
 * chapter by chapter, first to count its pages, then to draw them.
 *
 * @param pages with margins of four numbers, a footer and a list as content, in which a chapter begins where
 * a page is broken
 */
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
  const [first = [], ...others] = chaptersOf(pages.content);
  const footer = (pages.footer ?? (() => "")) as Footer;
  const blank = pdfmake.createPdf({ ...pages, content: "", footer: undefined });
  const gauge = await streamOf(blank);
  const counts = [first, ...others].map((chapter) => layOut(chapter, pages, gauge, footer).length);
  const total = sum(counts);
  const footerFrom =
    (before: number): Footer =>
    (page) =>
      footer(before + page, total);
  const document = pdfmake.createPdf({
    ...pages,
    content: copyOf(first) as Content,
    footer: footerFrom(0),
  });
  const stream = await streamOf(document);
  const Renderer: Inside["Renderer"] = inside("Renderer");
  const parts: Uint8Array[] = [];
  // What is written is taken at once: thousands of small pieces would wait for the end.
  const take = () => {
    const part = stream.read();
    if (part) parts.push(part);
  };
  others.forEach((chapter, at) => {
    const from = footerFrom(sum(counts.slice(0, at + 1)));
    new Renderer(stream).renderPages(layOut(chapter, pages, stream, from));
    take();
  });
  await new Promise((ended) => {
    stream.on("readable", take);
    stream.on("end", ended);
    stream.end();
  });
  return Buffer.concat(parts);
}

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0);

/** The document that the library draws into. */
const streamOf = (document: object): Promise<Drawn> =>
  (document as { getStream(): Promise<Drawn> }).getStream();

/** Lays a chapter out on pages of its own; what is given stays as it is, since the library notes its measures in it. */
function layOut(
  chapter: readonly Content[],
  { pageMargins, defaultStyle, watermark }: TDocumentDefinitions,
  document: Drawn,
  footer: Footer,
): LaidOut {
  const LayoutBuilder: Inside["LayoutBuilder"] = inside("LayoutBuilder");
  const SVGMeasure: Inside["SVGMeasure"] = inside("SVGMeasure");
  const [left, top, right, bottom] = pageMargins as [number, number, number, number];
  const [width, height] = document.options.size;
  const builder = new LayoutBuilder(
    { orientation: "portrait", width, height },
    { left, top, right, bottom },
    new SVGMeasure(),
  );
  const content = copyOf(chapter) as Content;
  const style = { ...defaultStyle };
  const none = undefined;
  return builder.layoutDocument(
    content,
    document,
    {},
    style,
    none,
    none,
    footer,
    copyOf(watermark),
  );
}

/** The blocks of a document by chapters: each but the first begins where a page was broken, and breaks none itself. */
function chaptersOf(content: Content): Content[][] {
  const chapters: Content[][] = [[]];
  for (const block of Array.isArray(content) ? content : [content]) {
    const isFirst = typeof block === "object" && "pageBreak" in block;
    if (isFirst) chapters.push([{ ...block, pageBreak: undefined } as Content]);
    else chapters.at(-1)?.push(block);
  }
  return chapters;
}

/** Plain data with all that it holds; functions are the same ones. */
const copyOf = (data: unknown): unknown => {
  if (Array.isArray(data)) return data.map(copyOf);
  return typeof data === "object" && data !== null
    ? Object.fromEntries(Object.entries(data).map(([key, value]) => [key, copyOf(value)]))
    : data;
};
