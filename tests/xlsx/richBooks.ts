import { strFromU8, strToU8, type Unzipped, unzipSync, zipSync } from "fflate";

/**
 * Workbooks with what spreadsheets put into them beyond cells. Each is a small package made here; parts,
 * relationships and extensions are those of ECMA-376 (SpreadsheetML, Part 1) and of the published [MS-XLSX]
 * and [MS-OVBA], from memory. All content is invented.
 */
export interface Rich {
  readonly file: Uint8Array;
  /** The parts that hold the feature. */
  readonly parts: readonly string[];
}

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";
const MICROSOFT = "http://schemas.microsoft.com/office";
const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006";
const X14 = `xmlns:x14="${MICROSOFT}/spreadsheetml/2009/9/main" xmlns:xm="${MICROSOFT}/excel/2006/main"`;
const SHEETML = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const EXCEL = "application/vnd.ms-excel";

interface Addition {
  readonly part: string;
  readonly type: string;
  readonly data: string | Uint8Array<ArrayBuffer>;
}

interface Relation {
  readonly id: string;
  readonly type: string;
  readonly target: string;
}

interface Made {
  readonly additions: readonly Addition[];
  /** By the part that they are of: the sheet, the workbook, or an addition. */
  readonly relations?: Readonly<Record<string, readonly Relation[]>>;
  /** What stands in the sheet after its cells, and in the workbook after its sheets. */
  readonly inSheet?: string;
  readonly inBook?: string;
  readonly bookType?: string;
}

export const SHEET = "xl/worksheets/sheet1.xml";
export const BOOK = "xl/workbook.xml";

const xml = (text: string) => `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${text}`;

const relsOf = (part: string) => {
  const at = part.lastIndexOf("/") + 1;
  return `${part.slice(0, at)}_rels/${part.slice(at)}.rels`;
};

const relationships = (relations: readonly Relation[]) =>
  xml(
    `<Relationships xmlns="${PACKAGE}">${relations
      .map(({ id, type, target }) => `<Relationship Id="${id}" Type="${type}" Target="${target}"/>`)
      .join("")}</Relationships>`,
  );

const CELLS = [
  ["Panel", "Pole", "R µΩ"],
  ["H01", "L1", 31],
  ["H01", "L2", 32],
];

const sheetData = CELLS.map(
  (row, at) =>
    `<row r="${at + 1}">${row
      .map((value, column) => {
        const ref = `${"ABC"[column]}${at + 1}`;
        return typeof value === "number"
          ? `<c r="${ref}"><v>${value}</v></c>`
          : `<c r="${ref}" t="inlineStr"><is><t>${value}</t></is></c>`;
      })
      .join("")}</row>`,
).join("");

/** One sheet with a few cells, and what is added to it. */
function book({
  additions,
  relations = {},
  inSheet = "",
  inBook = "",
  bookType = `${SHEETML}.sheet.main+xml`,
}: Made): Rich {
  const all: Record<string, readonly Relation[]> = {
    ...relations,
    [BOOK]: [
      { id: "rId1", type: `${OFFICE}/worksheet`, target: "worksheets/sheet1.xml" },
      { id: "rId2", type: `${OFFICE}/styles`, target: "styles.xml" },
      ...(relations[BOOK] ?? []),
    ],
  };
  const types = [
    { part: BOOK, type: bookType },
    { part: SHEET, type: `${SHEETML}.worksheet+xml` },
    { part: "xl/styles.xml", type: `${SHEETML}.styles+xml` },
    ...additions,
  ];
  const texts: Record<string, string | Uint8Array<ArrayBuffer>> = {
    "[Content_Types].xml": xml(
      `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/>${types
        .map(({ part, type }) => `<Override PartName="/${part}" ContentType="${type}"/>`)
        .join("")}</Types>`,
    ),
    "_rels/.rels": relationships([{ id: "rId1", type: `${OFFICE}/officeDocument`, target: BOOK }]),
    [BOOK]: xml(
      `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="Own" sheetId="1" r:id="rId1"/></sheets>${inBook}</workbook>`,
    ),
    [SHEET]: xml(
      `<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheetData>${sheetData}</sheetData>${inSheet}</worksheet>`,
    ),
    "xl/styles.xml": xml(
      `<styleSheet xmlns="${MAIN}"><fonts count="1"><font/></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="1"><xf/></cellXfs></styleSheet>`,
    ),
    ...Object.fromEntries(additions.map(({ part, data }) => [part, data])),
    ...Object.fromEntries(
      Object.entries(all).map(([part, list]) => [relsOf(part), relationships(list)]),
    ),
  };
  const parts: Unzipped = Object.fromEntries(
    Object.entries(texts).map(([name, data]) => [
      name,
      typeof data === "string" ? strToU8(data) : data,
    ]),
  );
  return {
    file: zipSync(parts, { mtime: new Date("2026-01-01T00:00:00Z") }),
    parts: additions.map(({ part }) => part),
  };
}

const anchor = (inner: string) =>
  `<xdr:twoCellAnchor><xdr:from><xdr:col>4</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>1</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>6</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>8</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to>${inner}<xdr:clientData/></xdr:twoCellAnchor>`;

const drawing = (inner: string): Addition => ({
  part: "xl/drawings/drawing1.xml",
  type: "application/vnd.openxmlformats-officedocument.drawing+xml",
  data: xml(
    `<xdr:wsDr xmlns:xdr="${DRAWING}/spreadsheetDrawing" xmlns:a="${DRAWING}/main" xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006">${anchor(inner)}</xdr:wsDr>`,
  ),
});

const toDrawing = {
  id: "rId1",
  type: `${OFFICE}/drawing`,
  target: "../drawings/drawing1.xml",
} as const;

const sparklines = (attributes: string, colors: string) => (): Rich =>
  book({
    additions: [],
    inSheet: `<extLst><ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" ${X14}><x14:sparklineGroups><x14:sparklineGroup type="column" ${attributes}><x14:colorSeries rgb="FF376092"/>${colors}<x14:sparklines><x14:sparkline><xm:f>Own!C2:C3</xm:f><xm:sqref>D2</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst>`,
  });

const slicers = (): Rich =>
  book({
    additions: [
      {
        part: "xl/slicers/slicer1.xml",
        type: `${EXCEL}.slicer+xml`,
        data: xml(
          `<slicers xmlns="${MICROSOFT}/spreadsheetml/2009/9/main"><slicer name="Panel" cache="Slicer_Panel" caption="Panel" rowHeight="241300"/></slicers>`,
        ),
      },
      {
        part: "xl/slicerCaches/slicerCache1.xml",
        type: `${EXCEL}.slicerCache+xml`,
        data: xml(
          `<slicerCacheDefinition xmlns="${MICROSOFT}/spreadsheetml/2009/9/main" name="Slicer_Panel" sourceName="Panel"/>`,
        ),
      },
      drawing(
        `<mc:AlternateContent><mc:Choice xmlns:a14="${MICROSOFT}/drawing/2010/main" Requires="a14"><xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Panel"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${MICROSOFT}/drawing/2010/slicer"><sle:slicer xmlns:sle="${MICROSOFT}/drawing/2010/slicer" name="Panel"/></a:graphicData></a:graphic></xdr:graphicFrame></mc:Choice><mc:Fallback/></mc:AlternateContent>`,
      ),
    ],
    relations: {
      [SHEET]: [
        toDrawing,
        {
          id: "rId2",
          type: `${MICROSOFT}/2007/relationships/slicer`,
          target: "../slicers/slicer1.xml",
        },
      ],
      [BOOK]: [
        {
          id: "rId3",
          type: `${MICROSOFT}/2007/relationships/slicerCache`,
          target: "slicerCaches/slicerCache1.xml",
        },
      ],
    },
    inSheet: `<drawing r:id="rId1"/><extLst><ext uri="{A8765BA9-456A-4dab-B4F3-ACF838C121DE}" ${X14}><x14:slicerList><x14:slicer r:id="rId2"/></x14:slicerList></ext></extLst>`,
    inBook: `<extLst><ext uri="{BBE1A952-AA13-448e-AADC-164F8A28A991}" ${X14}><x14:slicerCaches><x14:slicerCache r:id="rId3"/></x14:slicerCaches></ext></extLst>`,
  });

const pivot = (): Rich =>
  book({
    additions: [
      {
        part: "xl/pivotTables/pivotTable1.xml",
        type: `${SHEETML}.pivotTable+xml`,
        data: xml(
          `<pivotTableDefinition xmlns="${MAIN}" name="Mean by panel" cacheId="7" dataCaption="Values"><location ref="E2:F4" firstHeaderRow="1" firstDataRow="1" firstDataCol="1"/></pivotTableDefinition>`,
        ),
      },
      {
        part: "xl/pivotCache/pivotCacheDefinition1.xml",
        type: `${SHEETML}.pivotCacheDefinition+xml`,
        data: xml(
          `<pivotCacheDefinition xmlns="${MAIN}" xmlns:r="${OFFICE}" r:id="rId1" recordCount="2"><cacheSource type="worksheet"><worksheetSource ref="A1:C3" sheet="Own"/></cacheSource><cacheFields count="3"><cacheField name="Panel"/><cacheField name="Pole"/><cacheField name="R µΩ"/></cacheFields></pivotCacheDefinition>`,
        ),
      },
      {
        part: "xl/pivotCache/pivotCacheRecords1.xml",
        type: `${SHEETML}.pivotCacheRecords+xml`,
        data: xml(
          `<pivotCacheRecords xmlns="${MAIN}" count="2"><r><s v="H01"/><s v="L1"/><n v="31"/></r><r><s v="H01"/><s v="L2"/><n v="32"/></r></pivotCacheRecords>`,
        ),
      },
    ],
    relations: {
      [SHEET]: [
        { id: "rId1", type: `${OFFICE}/pivotTable`, target: "../pivotTables/pivotTable1.xml" },
      ],
      [BOOK]: [
        {
          id: "rId3",
          type: `${OFFICE}/pivotCacheDefinition`,
          target: "pivotCache/pivotCacheDefinition1.xml",
        },
      ],
      "xl/pivotTables/pivotTable1.xml": [
        {
          id: "rId1",
          type: `${OFFICE}/pivotCacheDefinition`,
          target: "../pivotCache/pivotCacheDefinition1.xml",
        },
      ],
      "xl/pivotCache/pivotCacheDefinition1.xml": [
        { id: "rId1", type: `${OFFICE}/pivotCacheRecords`, target: "pivotCacheRecords1.xml" },
      ],
    },
    inBook: '<pivotCaches><pivotCache cacheId="7" r:id="rId3"/></pivotCaches>',
  });

const macros = (): Rich =>
  book({
    // A compound file begins with these eight bytes; what follows is invented and no program.
    additions: [
      {
        part: "xl/vbaProject.bin",
        type: "application/vnd.ms-office.vbaProject",
        data: new Uint8Array([
          0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 1, 2, 3, 254, 255,
        ]),
      },
    ],
    relations: {
      [BOOK]: [
        {
          id: "rId3",
          type: `${MICROSOFT}/2006/relationships/vbaProject`,
          target: "vbaProject.bin",
        },
      ],
    },
    bookType: `${EXCEL}.sheet.macroEnabled.main+xml`,
  });

const NOTE_SHAPE = (id: number, what: string) =>
  `<v:shape id="_x0000_s${id}" type="#_x0000_t202" style="position:absolute;visibility:hidden"><x:ClientData ObjectType="${what}"><x:Row>1</x:Row><x:Column>2</x:Column></x:ClientData></v:shape>`;

const vml = (shape: string): Addition => ({
  part: "xl/drawings/vmlDrawing1.vml",
  type: "application/vnd.openxmlformats-officedocument.vmlDrawing",
  data: `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel">${shape}</xml>`,
});

const toVml = {
  id: "rId2",
  type: `${OFFICE}/vmlDrawing`,
  target: "../drawings/vmlDrawing1.vml",
} as const;

const PERSON = "{00000000-0000-0000-0000-00000000000B}";
const THREAD = "{00000000-0000-0000-0000-00000000000A}";

const threadedComments = (): Rich =>
  book({
    additions: [
      {
        part: "xl/threadedComments/threadedComment1.xml",
        type: `${EXCEL}.threadedcomments+xml`,
        data: xml(
          `<ThreadedComments xmlns="${MICROSOFT}/spreadsheetml/2018/threadedcomments"><threadedComment ref="C2" dT="2026-11-03T09:00:00.00" personId="${PERSON}" id="${THREAD}"><text>after cleaning (invented)</text></threadedComment></ThreadedComments>`,
        ),
      },
      {
        part: "xl/persons/person.xml",
        type: `${EXCEL}.person+xml`,
        data: xml(
          `<personList xmlns="${MICROSOFT}/spreadsheetml/2018/threadedcomments"><person displayName="A. N. Other" id="${PERSON}" userId="x" providerId="None"/></personList>`,
        ),
      },
      {
        part: "xl/comments1.xml",
        type: `${SHEETML}.comments+xml`,
        data: xml(
          `<comments xmlns="${MAIN}"><authors><author>tc=${THREAD}</author></authors><commentList><comment ref="C2" authorId="0"><text><t>after cleaning (invented)</t></text></comment></commentList></comments>`,
        ),
      },
      vml(NOTE_SHAPE(1025, "Note")),
    ],
    relations: {
      [SHEET]: [
        { id: "rId1", type: `${OFFICE}/comments`, target: "../comments1.xml" },
        toVml,
        {
          id: "rId3",
          type: `${MICROSOFT}/2017/10/relationships/threadedComment`,
          target: "../threadedComments/threadedComment1.xml",
        },
      ],
      [BOOK]: [
        {
          id: "rId3",
          type: `${MICROSOFT}/2017/10/relationships/person`,
          target: "persons/person.xml",
        },
      ],
    },
    inSheet: '<legacyDrawing r:id="rId2"/>',
  });

const formControls = (): Rich =>
  book({
    additions: [
      {
        part: "xl/ctrlProps/ctrlProp1.xml",
        type: `${EXCEL}.controlproperties+xml`,
        data: xml(
          `<formControlPr xmlns="${MICROSOFT}/spreadsheetml/2009/9/main" objectType="CheckBox" fmlaLink="$D$2"/>`,
        ),
      },
      vml(NOTE_SHAPE(1026, "Checkbox")),
    ],
    relations: {
      [SHEET]: [
        toVml,
        { id: "rId3", type: `${OFFICE}/ctrlProp`, target: "../ctrlProps/ctrlProp1.xml" },
      ],
    },
    inSheet: `<legacyDrawing r:id="rId2"/><mc:AlternateContent xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"><mc:Choice xmlns:x14="${MICROSOFT}/spreadsheetml/2009/9/main" Requires="x14"><controls><control shapeId="1026" r:id="rId3" name="Marked"><controlPr defaultSize="0"/></control></controls></mc:Choice></mc:AlternateContent>`,
  });

export const RICH: Readonly<Record<string, () => Rich>> = {
  sparklines: sparklines('displayEmptyCellsAs="gap"', ""),
  "sparklines with a limit and a colour of their own": sparklines(
    'displayEmptyCellsAs="gap" manualMax="40"',
    '<x14:colorNegative rgb="FFD00000"/>',
  ),
  slicers,
  "a pivot table": pivot,
  macros,
  "threaded comments": threadedComments,
  "form controls": formControls,
};

/** The content type of a part: its own, or that of its extension; undefined where it has none. */
export const typeOf = (file: Uint8Array, part: string): string | undefined => {
  const types = textOf(file, "[Content_Types].xml");
  const extension = part.split(".").at(-1);
  return (types.match(new RegExp(`<Override PartName="/${part}" ContentType="([^"]*)"`)) ??
    types.match(new RegExp(`<Default Extension="${extension}" ContentType="([^"]*)"`)))?.[1];
};

export const textOf = (file: Uint8Array, part: string) =>
  strFromU8(unzipSync(file)[part] ?? new Uint8Array());
