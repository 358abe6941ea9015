/** A colour by red, green and blue: six hexadecimal digits. */
export interface Colour {
  readonly rgb: string;
}

export interface Line {
  readonly style: "thin";
  readonly color: Colour;
}

/** How a cell looks; what is not said is as the workbook has it. */
export interface CellStyle {
  readonly font?: {
    readonly name?: string;
    /** Points. */
    readonly size?: number;
    readonly bold?: boolean;
    readonly color?: Colour;
  };
  readonly fill?: {
    readonly type: "pattern";
    readonly pattern: "solid";
    readonly fgColor: Colour;
    /** In conditional formats this is the colour that shows. */
    readonly bgColor?: Colour;
  };
  readonly border?: Readonly<Record<"top" | "bottom" | "left" | "right", Line>>;
  readonly alignment?: {
    readonly horizontal?: "left" | "center" | "right";
    readonly vertical?: "top" | "center" | "bottom";
    readonly indent?: number;
    readonly wrapText?: boolean;
  };
  /** A number format as spreadsheets write it. */
  readonly numFmt?: string;
}

/** A conditional format: by a cell's own value, or by a formula. */
export interface ConditionalRule {
  readonly type: "cellIs" | "expression";
  readonly operator?: "equal";
  /** The lowest comes first. */
  readonly priority: number;
  readonly formula: string;
  /** Areas, with blanks between them. */
  readonly range: string;
  readonly style: CellStyle;
}
