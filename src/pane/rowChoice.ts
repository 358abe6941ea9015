/** Which rows the step of readings shows. */
export interface RowChoice {
  readonly kind: string | undefined;
  readonly object: string | undefined;
  /** A row of the kind's table that is looked at. */
  readonly row?: number;
}
