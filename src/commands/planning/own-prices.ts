import { readFileSync } from 'node:fs';
import type { Checklist } from '../../assess/checklist.ts';
import { readPrices } from '../../files/read-prices.ts';
import { sayProblem } from '../../flow/problem.ts';
import { withPrices } from '../../planning/prices.ts';
import { ProgramError } from '../program-error.ts';
import type { BudgetOptions } from './budget-options.ts';

/** The checklist with the user's own prices, where a list was given; its faults are named with line and column. */
export function withOwnPrices(checklist: Checklist, { prices: path }: BudgetOptions): Checklist {
  if (path === undefined) return checklist;
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new ProgramError(`The price list cannot be read: ${reason}. Give the path of a YAML or JSON file.`);
  }
  const { prices, problems } = readPrices(checklist.flow, path, text);
  if (!prices) {
    throw new ProgramError(
      `${problems.map(sayProblem).join('\n')}\nNothing was made: mend the price list and try again.`,
    );
  }
  return { ...checklist, flow: withPrices(checklist.flow, prices) };
}
