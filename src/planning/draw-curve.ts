/** What is drawn: a curve, or as much of one as a report holds. */
export interface DrawnCurve {
  readonly points: readonly {
    readonly money: { readonly high: number };
    readonly hours: { readonly high: number };
    readonly left: number;
  }[];
  readonly floor: number;
}

/** Signs of the drawing, so that it can be drawn with plain characters or finer ones. */
export interface CurveSigns {
  readonly line: string;
  readonly floor: string;
  readonly axis: string;
  readonly corner: string;
  readonly base: string;
}

/** Signs that every terminal and font has. */
export const plainSigns: CurveSigns = { line: '#', floor: '.', axis: '|', corner: '+', base: '-' };

export interface CurveSize {
  /** Columns, all told. */
  readonly width: number;
  /** Rows of the drawing without its axis. */
  readonly height: number;
}

const labelWidth = 6;

/** The part that is left once an amount is spent: a step down at each point. */
function leftAt(curve: DrawnCurve, against: 'money' | 'hours', amount: number): number {
  let left = curve.points[0]?.left ?? 0;
  for (const point of curve.points) if (point[against].high <= amount) left = point.left;
  return left;
}

function ticks(most: number, columns: number): string {
  const half = String(Math.round(most / 2));
  const end = String(Math.round(most));
  const middle = Math.max(1, Math.floor(columns / 2) - half.length + 1);
  return `0${' '.repeat(Math.max(0, middle - 1))}${half}`.padEnd(Math.max(0, columns - end.length)) + end;
}

/**
 * The curve as lines of text, in bars from the bottom up: how much is left (in percent) against money or hours at the high end. Words are the
 * caller's: the lines hold numbers and signs only.
 */
export function drawCurve(
  curve: DrawnCurve,
  against: 'money' | 'hours',
  size: CurveSize,
  signs = plainSigns,
): string[] {
  const columns = Math.max(10, size.width - labelWidth - 1);
  const most = Math.max(0, ...curve.points.map((point) => point[against].high));
  const heights = Array.from({ length: columns }, (_, column) => {
    const amount = columns > 1 ? (most * column) / (columns - 1) : 0;
    return Math.round(leftAt(curve, against, amount + most * 1e-12) * size.height);
  });
  const floorRow = Math.round(curve.floor * size.height);
  const rows = Array.from({ length: size.height }, (_, index) => {
    const row = size.height - index;
    const label =
      row === size.height || row * 2 === size.height ? `${Math.round((100 * row) / size.height)} %` : '';
    const cells = heights
      .map((height) => (row > height ? ' ' : row <= floorRow ? signs.floor : signs.line))
      .join('');
    return `${label.padStart(labelWidth)}${signs.axis}${cells}`.trimEnd();
  });
  const base = `${'0 %'.padStart(labelWidth)}${signs.corner}${signs.base.repeat(columns)}`;
  return [...rows, base, `${' '.repeat(labelWidth + 1)}${ticks(most, columns)}`];
}
