/** A limit of Excel's, and the page of Microsoft's that states it. */
interface ExcelLimit {
  readonly most: number;
  readonly source: string;
}

const SPECIFICATIONS =
  "Excel specifications and limits, https://support.microsoft.com/office/1672b34d-7043-467e-8e27-269d656771c3";
const VALIDATIONS =
  "[MS-OI29500] 2.1.613, dataValidation, https://learn.microsoft.com/openspecs/office_standards/ms-oi29500/0114969a-4859-443e-ae3e-0c1fdebfcc64";
const PAYLOAD =
  "Platform limits, Excel on the web, https://learn.microsoft.com/office/dev/scripts/testing/platform-limits";

/**
 * What Excel takes at most, in characters (UTF-16 code units) where nothing else is said. The files that
 * are written and the stand-in keep to it; a longer one makes Excel offer a repair, or refuse a batch.
 */
export const EXCEL_LIMITS = {
  rows: { most: 1_048_576, source: SPECIFICATIONS },
  columns: { most: 16_384, source: SPECIFICATIONS },
  cellText: { most: 32_767, source: SPECIFICATIONS },
  cellLineFeeds: { most: 253, source: SPECIFICATIONS },
  formula: { most: 8_192, source: SPECIFICATIONS },
  /** The lower of the two figures that are given, which depend on the language of Excel. */
  numberFormats: { most: 200, source: SPECIFICATIONS },
  /** Of one code; what it may hold is in `numberFormat.ts`. */
  numberFormat: {
    most: 254,
    source:
      "[MS-OI29500] 2.1.704, numFmt: less than 255 characters, https://msdn.microsoft.com/library/ff529597(v=office.12).aspx",
  },
  /** Areas of one conditional format; of how many there may be, nothing is said but what memory holds. */
  conditionalFormatAreas: {
    most: 8_192,
    source:
      "[MS-XLSB] 2.4.35, BrtBeginConditionalFormatting14, https://learn.microsoft.com/openspecs/office_file_formats/ms-xlsb/5754f286-6638-45d2-ad97-749b12ac5343",
  },
  headerOrFooter: { most: 255, source: SPECIFICATIONS },
  sheetName: {
    most: 31,
    source:
      "Rename a worksheet, https://support.microsoft.com/office/3f1f7148-ee83-404d-8ef0-9ff99fbad1f9 (from memory)",
  },
  tableName: {
    most: 255,
    source:
      "Rename an Excel table, https://support.microsoft.com/office/fbf49a4f-82a3-43eb-8ba2-44d21233b114 (from memory)",
  },
  promptTitle: { most: 32, source: VALIDATIONS },
  promptMessage: { most: 255, source: VALIDATIONS },
  errorTitle: { most: 32, source: VALIDATIONS },
  errorMessage: { most: 224, source: VALIDATIONS },
  listSource: {
    most: 255,
    source:
      "Validation.Add, https://learn.microsoft.com/office/vba/api/excel.validation.add (from memory)",
  },
  address: {
    most: 8_192,
    source: "Worksheet.getRanges, https://learn.microsoft.com/javascript/api/excel/excel.worksheet",
  },
  /** UTF-8 bytes of one request or one answer, on the web. */
  payloadBytes: { most: 5_000_000, source: PAYLOAD },
  /** Cells of one range, on the web. */
  rangeCells: { most: 5_000_000, source: PAYLOAD },
} as const satisfies Readonly<Record<string, ExcelLimit>>;

export type LimitName = keyof typeof EXCEL_LIMITS;
