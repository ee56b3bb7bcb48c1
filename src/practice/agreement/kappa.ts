/** How often two assessors said what: `table[i][j]` counts the things that the first put in class i and the second in class j. */
export type AgreementTable = readonly (readonly number[])[];

/** Agreement beyond chance, or why it cannot be worked out. */
export type Kappa =
  | {
      readonly kind: 'kappa';
      readonly kappa: number;
      readonly pairs: number;
      /** Large-sample interval of 95 %; missing where the two never differ, or one says the same of every pair: its width is then nothing. */
      readonly interval: { readonly low: number; readonly high: number } | undefined;
    }
  /** No pair was looked at by both. */
  | { readonly kind: 'noPairs' }
  /** Both put every pair in one and the same class: chance alone would agree as much. */
  | { readonly kind: 'oneClass'; readonly pairs: number };

/** The 97.5 % point of the standard normal distribution. */
const z = 1.959963984540054;

interface Parts {
  readonly cells: readonly { readonly row: number; readonly column: number; readonly part: number }[];
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

function partsOf(table: AgreementTable, total: number): Parts {
  const rows = table.map((row) => row.reduce((sum, count) => sum + count, 0) / total);
  const columns = table.map((_, column) => table.reduce((sum, row) => sum + (row[column] ?? 0), 0) / total);
  const cells = table.flatMap((counts, row) =>
    counts.map((count, column) => ({ row, column, part: count / total })),
  );
  return { cells, rows, columns };
}

/** Variance of kappa for many pairs: Fleiss, Cohen and Everitt, Psychological Bulletin 72 (1969), equation 13. */
function varianceOf({ cells, rows, columns }: Parts, kappa: number, chance: number, total: number): number {
  let agreed = 0;
  let differed = 0;
  for (const { row, column, part } of cells) {
    if (row === column) agreed += part * (1 - ((rows[row] ?? 0) + (columns[row] ?? 0)) * (1 - kappa)) ** 2;
    else differed += part * ((columns[row] ?? 0) + (rows[column] ?? 0)) ** 2;
  }
  const mean = kappa - chance * (1 - kappa);
  return Math.max(0, agreed + (1 - kappa) ** 2 * differed - mean ** 2) / ((1 - chance) ** 2 * total);
}

/** Cohen's kappa (Educational and Psychological Measurement 20, 1960) of a square table of counts. */
export function kappaOf(table: AgreementTable): Kappa {
  const total = table.flat().reduce((sum, count) => sum + count, 0);
  if (total === 0) return { kind: 'noPairs' };
  const parts = partsOf(table, total);
  const agreed = parts.cells.reduce((sum, { row, column, part }) => sum + (row === column ? part : 0), 0);
  const chance = parts.rows.reduce((sum, part, position) => sum + part * (parts.columns[position] ?? 0), 0);
  if (1 - chance < 1e-12) return { kind: 'oneClass', pairs: total };
  const kappa = (agreed - chance) / (1 - chance);
  const width = z * Math.sqrt(varianceOf(parts, kappa, chance, total));
  const interval =
    width < 1e-6 ? undefined : { low: Math.max(-1, kappa - width), high: Math.min(1, kappa + width) };
  return { kind: 'kappa', kappa, pairs: total, interval };
}

/** Kappa of pairs that each of two assessors found or did not find. */
export function kappaOfPairs(pairs: readonly { readonly first: boolean; readonly second: boolean }[]): Kappa {
  const count = (first: boolean, second: boolean) =>
    pairs.filter((pair) => pair.first === first && pair.second === second).length;
  return kappaOf([
    [count(true, true), count(true, false)],
    [count(false, true), count(false, false)],
  ]);
}
