import type { Ask } from '../../conversation/message.ts';
import type { WordedAsk } from '../../wording/worded.ts';
import { callbackData } from './callback-data.ts';

export interface Button {
  readonly text: string;
  readonly callback_data: string;
}

/** Labels up to this many characters stand side by side. */
const shortLabel = 12;

/** Whether one press says all that is asked: one choice, for one side at most. */
const isOnePress = (ask: Ask) => ask.choices.length > 0 && !ask.several && ask.sides.length <= 1;

/** Short ones side by side, three a row; longer ones each on a row of its own. */
function rowsOf(buttons: readonly Button[]): Button[][] {
  if (buttons.some((one) => one.text.length > shortLabel)) return buttons.map((one) => [one]);
  const rows: Button[][] = [];
  for (let start = 0; start < buttons.length; start += 3) rows.push(buttons.slice(start, start + 3));
  return rows;
}

/** The rows of buttons under a question: its choices where one press answers it, and the two ways round it. */
export function buttonsOf(
  ask: Ask,
  worded: WordedAsk,
  revision: number,
  labels: { notSure: string; skip: string },
): Button[][] {
  const button = (option: string, text: string): Button[] => {
    const data = callbackData(revision, ask.key, option);
    return data === undefined ? [] : [{ text, callback_data: data }];
  };
  const choices = isOnePress(ask) ? worded.choices.flatMap(({ id, label }) => button(id, label)) : [];
  const round = [...button('not sure', labels.notSure), ...button('skip', labels.skip)];
  return [...rowsOf(choices), ...(round.length > 0 ? [round] : [])];
}

/** Whether the choices are shown as buttons, so that the text need not list them. */
export const hasChoiceButtons = (ask: Ask, rows: readonly (readonly Button[])[]) =>
  isOnePress(ask) && rows.flat().length >= ask.choices.length + 2;
