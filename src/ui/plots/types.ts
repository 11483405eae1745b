/** One curve over time. */
export interface Series {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  /** Any CSS colour. */
  readonly colour: string;
  readonly dashed?: boolean;
  /** Its own dashes, as SVG writes them; wins over `dashed`. */
  readonly dash?: string;
  /** s, rising. */
  readonly time: ArrayLike<number>;
  /** In `unit`; a value that is not finite is a gap. */
  readonly values: ArrayLike<number>;
}

export interface PlotMark {
  /** s */
  readonly time: number;
  readonly label: string;
}
