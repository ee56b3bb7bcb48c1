import type { AnswerSheet } from '../answers/answer.ts';
import type { Assessment } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { Computed } from '../findings/find.ts';
import type { Upkeep } from '../flow/schema/action.ts';
import type { Planning } from '../planning/planning.ts';
import type { ToFindOut } from '../planning/to-find-out.ts';
import type { Wording } from '../wording/wording.ts';

/** Everything a report is made from. The wording must not escape what people typed: the renderers do. */
export interface Material {
  readonly checklist: Checklist;
  readonly assessment: Assessment;
  readonly toFindOut: readonly ToFindOut[];
  readonly upkeep: readonly Upkeep[];
  readonly wording: Wording;
  readonly sheet: AnswerSheet;
  readonly walk: {
    readonly id: string | null;
    /** ISO date of the report, such as `2026-06-12`. */
    readonly date: string;
    readonly seed: number;
    readonly notes: readonly string[];
  };
  /** Doubt, budget, curve and the visit brief, where they were worked out. */
  readonly planning?: Planning;
  /** Amounts for costs, instead of those that follow from the answers. */
  readonly computed?: Computed;
}
