import type { Command } from 'commander';
import type { Limits } from '../../planning/budget-plan.ts';
import { ProgramError } from '../program-error.ts';

/** What a command was told about money, hours and prices. */
export interface BudgetOptions {
  readonly budget?: string;
  readonly hours?: string;
  readonly prices?: string;
}

/** Adds the options for a budget to a command. */
export function addBudgetOptions(command: Command): Command {
  return command
    .option('--budget <money>', 'what may be spent, in the currency of the prices: says what fits')
    .option('--hours <hours>', 'hours of your own work: says what fits')
    .option('--prices <file>', 'your own prices (YAML or JSON), over those that come with the program');
}

function amount(name: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const number = Number(text.replace(/[, ]/g, ''));
  if (text.trim() !== '' && Number.isFinite(number) && number >= 0) return number;
  throw new ProgramError(`--${name} ${text} is not an amount. Say a number from 0 up, such as --${name} 12.`);
}

/** The limits that were given. */
export function limitsOf({ budget, hours }: BudgetOptions): Limits {
  const [money, own] = [amount('budget', budget), amount('hours', hours)];
  return { ...(money === undefined ? {} : { money }), ...(own === undefined ? {} : { hours: own }) };
}
