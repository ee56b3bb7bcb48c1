/** Interactive draws on the screen and reads keys; plain writes and reads lines. */
export type TerminalMode = 'interactive' | 'plain';

export interface TerminalFacts {
  readonly stdinIsTTY: boolean;
  readonly stdoutIsTTY: boolean;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly flags: { readonly plain?: boolean };
}

/**
 * The one place that decides. Interactive only when all of these hold:
 *
 * | both ends are a terminal | CI, CONTINUOUS_INTEGRATION | TERM  | ACCESSIBLE | --plain | mode        |
 * | yes                      | unset, empty, 0, false     | other | off        | no      | interactive |
 * | anything else                                                                | plain       |
 */
export function chooseTerminalMode({ stdinIsTTY, stdoutIsTTY, env, flags }: TerminalFacts): TerminalMode {
  const plain =
    !stdinIsTTY ||
    !stdoutIsTTY ||
    flags.plain === true ||
    env.TERM === 'dumb' ||
    isOn(env.CI) ||
    isOn(env.CONTINUOUS_INTEGRATION) ||
    isOn(env.ACCESSIBLE);
  return plain ? 'plain' : 'interactive';
}

/** A switch in the environment is on unless it is unset, empty, `0` or `false`. */
function isOn(value: string | undefined): boolean {
  return value !== undefined && value !== '' && value !== '0' && value.toLowerCase() !== 'false';
}
