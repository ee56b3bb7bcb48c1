/** Work that is done again and again; `stop` waits for the round that runs. */
export interface Regular {
  readonly stop: () => Promise<void>;
}

/** Runs work now and then again after each pause; a round that fails is told and does not end it. */
export function runRegularly(
  pauseMilliseconds: number,
  work: () => Promise<void>,
  failed: (error: unknown) => void,
): Regular {
  let timer: NodeJS.Timeout | undefined;
  let stopped = false;
  const round = async (): Promise<void> => {
    try {
      await work();
    } catch (error) {
      failed(error);
    }
    if (!stopped) timer = setTimeout(start, pauseMilliseconds);
  };
  let running = Promise.resolve();
  const start = () => {
    running = round();
  };
  start();
  return {
    stop: async () => {
      stopped = true;
      clearTimeout(timer);
      await running;
    },
  };
}
