import type { Present } from '../findings/find.ts';
import type { Flow } from '../flow/flow.ts';

export type Attack = 'ember' | 'flame';

/** An element under one attack, with how readily it catches, carries or admits. */
export interface ReadyElement {
  /** `zone0.bark@front` under embers, `win.single@front:flame` under flame. */
  readonly id: string;
  readonly kind: string;
  readonly attack: Attack;
  readonly present: Present;
  /** In (0, 1]. */
  readonly readiness: number;
  readonly low: number;
  readonly high: number;
}

/** The readiness of each present element, one entry for each attack it has one for. */
export function readyElements(present: readonly Present[], levels: Flow['walk']['levels']): ReadyElement[] {
  return present.flatMap((one) =>
    (['ember', 'flame'] as const).flatMap((attack): ReadyElement[] => {
      const readiness = one.element[attack];
      if (!readiness) return [];
      const level = levels[readiness.level];
      return [
        {
          id: attack === 'flame' ? `${one.id}:flame` : one.id,
          kind: one.element.id,
          attack,
          present: one,
          readiness: readiness.value ?? level.value,
          low: readiness.low ?? level.low,
          high: readiness.high ?? level.high,
        },
      ];
    }),
  );
}
