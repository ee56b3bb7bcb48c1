/** The value of a condition. */
export type Truth = 'yes' | 'no' | 'unknown';

/**
 * | all     | yes | no | unknown |     | any     | yes | no      | unknown |
 * | yes     | yes | no | unknown |     | yes     | yes | yes     | yes     |
 * | no      | no  | no | no      |     | no      | yes | no      | unknown |
 * | unknown | unk.| no | unknown |     | unknown | yes | unknown | unknown |
 */
export function all<T>(parts: readonly T[], truth: (part: T) => Truth): Truth {
  let result: Truth = 'yes';
  for (const part of parts) {
    const one = truth(part);
    if (one === 'no') return 'no';
    if (one === 'unknown') result = 'unknown';
  }
  return result;
}

/** Yes when one part is yes; no when all are; see the table above. */
export function any<T>(parts: readonly T[], truth: (part: T) => Truth): Truth {
  let result: Truth = 'no';
  for (const part of parts) {
    const one = truth(part);
    if (one === 'yes') return 'yes';
    if (one === 'unknown') result = 'unknown';
  }
  return result;
}

/** Yes and no change places; unknown stays. */
export function not(truth: Truth): Truth {
  if (truth === 'unknown') return 'unknown';
  return truth === 'yes' ? 'no' : 'yes';
}
