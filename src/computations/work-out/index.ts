export { SOURCE_STATUS, type SourceId, type Status } from '../tables/source-status.ts';
export { allowedText } from './allowed-text.ts';
export type {
  Assumption,
  BadInput,
  ChoiceInput,
  Computation,
  ComputationGroup,
  InputDef,
  Inputs,
  InputValue,
  OutlineInput,
  OutsideCover,
  QuantityInput,
  ResultValue,
  ShoppingLine,
  WorkedOut,
  WorkOutcome,
} from './computation.ts';
export { NOTES, type NoteId } from './notes.ts';
export { type ParsedInput, parseInput } from './parse-input.ts';
export { COMPUTATIONS, findComputation } from './registry.ts';
