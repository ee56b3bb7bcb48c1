/** Something that changes once a minute and is told of, as long as anybody listens. */
export interface Ticker {
  readonly subscribe: (changed: () => void) => () => void;
  /** Minutes that were told of. */
  readonly count: () => number;
}

const minute = 60_000;

/** Ticks once a minute, so that a clock on the screen goes on while nobody types. */
export function createMinuteTicker(): Ticker {
  let count = 0;
  return {
    count: () => count,
    subscribe: (changed) => {
      const timer = setInterval(() => {
        count += 1;
        changed();
      }, minute);
      return () => clearInterval(timer);
    },
  };
}

/** Never ticks: for a screen without a clock. */
export const stillTicker: Ticker = { subscribe: () => () => undefined, count: () => 0 };
