import type { Answer, AnswerKey, AnswerSheet } from '../answers/answer.ts';
import type { FlowIndex } from '../answers/flow-index.ts';

/** What can happen to a walk. */
export type WalkEvent =
  /** An answer to any question on the sheet; usually the one asked now. */
  | { readonly type: 'ANSWER'; readonly key: AnswerKey; readonly answer: Answer }
  /** To a question that was asked before, or to another part of the walk. */
  | { readonly type: 'GO'; readonly key: AnswerKey }
  | { readonly type: 'FINISH' }
  /** The answers that were read back are right. */
  | { readonly type: 'CONFIRM' }
  | { readonly type: 'PAUSE'; readonly at: AnswerKey | undefined }
  | { readonly type: 'EMERGENCY'; readonly at: AnswerKey | undefined }
  /** Goes on after a pause or an emergency. */
  | { readonly type: 'RESUME' }
  | { readonly type: 'START_OVER' };

/** What the machine remembers: the answers, and what was asked again although it has an answer. */
export interface WalkContext {
  readonly index: FlowIndex;
  readonly sheet: AnswerSheet;
  /** The member of a group that is talked about. */
  readonly member: string | undefined;
  /** Asked again on purpose: not passed over although it has an answer. */
  readonly again: AnswerKey | undefined;
  /** The question asked when the walk was stopped. */
  readonly stoppedAt: AnswerKey | undefined;
}
