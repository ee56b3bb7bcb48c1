import type { TerminalEnd, Turn } from './ports.ts';

/**
 * Whether this turn ends the conversation in the terminal: it does when it brought the walk to a stop. One that
 * found the walk stopped already goes on, so that a person can say "I am safe" or change an answer.
 */
export function endOfTurn(before: Turn | undefined, turn: Turn): TerminalEnd | undefined {
  if (before === undefined || before.phase === turn.phase) return undefined;
  switch (turn.phase) {
    case 'finished':
    case 'paused':
    case 'emergency':
      return turn.phase;
    case 'asking':
    case 'readBack':
      return undefined;
  }
}
