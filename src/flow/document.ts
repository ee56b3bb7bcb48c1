/** A flow file after reading: its value, and where each part of it stands. */
export interface FlowDocument {
  readonly path: string;
  readonly value: unknown;
  /** Line and column (from 1) of the value at `path`, or of the nearest part above it. */
  readonly positionOf: (path: readonly PropertyKey[]) => { readonly line: number; readonly column: number };
}
