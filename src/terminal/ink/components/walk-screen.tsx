import { useInput } from 'ink';
import { useSyncExternalStore } from 'react';
import type { Phrase } from '../../ports.ts';
import type { Symbols } from '../../symbols.ts';
import { readKeys } from '../keys.ts';
import { layOutLive } from '../live-frame.ts';
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
}

/** The interactive screen: what was said above, the live part below, keys in. */
export function WalkScreen({ session, screen, phrase, symbols, colour }: WalkScreenProps) {
  const { history, live } = useSyncExternalStore(session.subscribe, session.view);
  const { columns, rows: terminalRows } = useSyncExternalStore(screen.subscribe, screen.size);
  useInput((input, key) => session.press(readKeys(input, key)));
  return (
    <>
      <History items={history} />
      {live && (
        <Live
          frame={layOutLive({ ...live, columns, terminalRows, phrase, symbols })}
          colour={colour}
          drawn={screen.noteFrame}
        />
      )}
    </>
  );
}
