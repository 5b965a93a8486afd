// A section of the report: sentences, a table, and what to draw beside it. Types only.

export interface Chart {
  /** The table of the section that says the same. */
  readonly table: string;
  readonly title: string;
  readonly unit: string;
  /** A value is absent where there was nothing to count: that is not zero. */
  readonly bars: readonly {
    readonly label: string;
    readonly value: number | undefined;
    readonly isMarked?: boolean;
  }[];
  /** A value to compare with, drawn as a dashed line. */
  readonly reference?: { readonly label: string; readonly value: number };
}

export interface Table {
  /** Name of its CSV file, without ending. */
  readonly id: string;
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly sentences: readonly string[];
  readonly tables: readonly Table[];
  readonly charts: readonly Chart[];
}
