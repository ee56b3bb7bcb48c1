import { useInput } from 'ink';
import { useSyncExternalStore } from 'react';
import type { Phrase } from '../../ports.ts';
import type { Symbols } from '../../symbols.ts';
import { readKeys } from '../keys.ts';
import { layOutLive } from '../live-frame.ts';
import { stillTicker, type Ticker } from '../minute-ticker.ts';
import type { Screen } from '../screen.ts';
import type { Session } from '../session.ts';
import { History } from './history.tsx';
import { Live } from './live.tsx';

export interface WalkScreenProps {
  readonly session: Session;
  readonly screen: Pick<Screen, 'size' | 'subscribe' | 'noteFrame'>;
  readonly phrase: Phrase;
  readonly symbols: Symbols;
  readonly colour: boolean;
  /** The time, for the clock of a call, and what makes it go on while nobody types. */
  readonly clock?: () => Date;
  readonly ticker?: Ticker;
}

/** The interactive screen: what was said above, the live part below, keys in. */
export function WalkScreen(props: WalkScreenProps) {
  const { session, screen, phrase, symbols, colour, clock, ticker = stillTicker } = props;
  const { history, live } = useSyncExternalStore(session.subscribe, session.view);
  const { columns, rows: terminalRows } = useSyncExternalStore(screen.subscribe, screen.size);
  useSyncExternalStore(ticker.subscribe, ticker.count);
  const time = clock ? { now: clock() } : {};
  useInput((input, key) => session.press(readKeys(input, key)));
  return (
    <>
      <History items={history} />
      {live && (
        <Live
          frame={layOutLive({ ...live, columns, terminalRows, phrase, symbols, ...time })}
          colour={colour}
          drawn={screen.noteFrame}
        />
      )}
    </>
  );
}
