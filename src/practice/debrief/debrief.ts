import type { Kappa } from '../agreement/kappa.ts';

/** A stop that was passed over: another, later in the walk, was visited first. */
export interface PassedOver {
  readonly stop: string;
  /** The stop gone to instead. */
  readonly at: string;
  /** Whether it was visited later on. */
  readonly madeUp: boolean;
}

export interface OrderKept {
  /** Whether danger was asked about before the first stop beyond "about", later, or never; nothing where a part is practised. */
  readonly danger: 'first' | 'late' | 'never' | undefined;
  readonly passedOver: readonly PassedOver[];
  readonly neverVisited: readonly string[];
  /** Advice was given before every stop had been visited. */
  readonly adviceEarly: boolean;
}

/** Findings as pairs with their place, such as `vents.coarse-high@left`. */
export interface FindingsFound {
  readonly caught: readonly string[];
  readonly missed: readonly string[];
  readonly invented: readonly string[];
  /** Recorded where the key itself does not know. */
  readonly unsettled: readonly string[];
  /** Caught without having looked at it or asked about it. */
  readonly unseen: readonly string[];
}

/** A job advised, at the places it was advised for; none named means wherever it is called for. */
export interface AdviceLine {
  readonly action: string;
  readonly places: readonly string[];
}

export interface AdviceGiven {
  readonly right: readonly AdviceLine[];
  /** Called for, but a cheaper job that lessens the same ways in was not advised before it. */
  readonly costlyFirst: readonly (AdviceLine & { readonly cheaper: string })[];
  readonly notCalledFor: readonly AdviceLine[];
  readonly brokenLimits: readonly (AdviceLine & { readonly limit: string; readonly saidMetres: number })[];
  /** Against any rulebook: ids of the practice words. */
  readonly wrong: readonly string[];
  /** Jobs among the first three of the list that were never advised. */
  readonly unsaid: readonly string[];
}

export interface CautionsGiven {
  readonly given: readonly string[];
  /** How many the advice calls for. */
  readonly needed: number;
  /** Cautions of jobs that were advised and are called for, with those jobs. */
  readonly forgotten: readonly { readonly caution: string; readonly actions: readonly string[] }[];
}

/** The first page, the trainee's beside the program's: first jobs in order, as ids of actions. */
export interface FirstPageCompared {
  readonly yours: readonly string[];
  readonly programs: readonly string[];
  /** Of yours, those among the program's. */
  readonly shared: readonly string[];
  readonly sameFirst: boolean;
}

/** Something to practise next, with where to read about it. */
export interface NextThing {
  readonly kind:
    | 'promise'
    | 'alarm'
    | 'unsafe'
    | 'danger'
    | 'wrongAdvice'
    | 'limit'
    | 'missed'
    | 'invented'
    | 'costlyFirst'
    | 'order'
    | 'caution'
    | 'unseen';
  /** What it is about: a finding, an action, a caution, a limit, a stop. */
  readonly about: string;
  readonly source: string;
  readonly where?: string;
}

/** All that is said about a session: plain data. */
export interface Debrief {
  readonly house: string;
  readonly level: string;
  readonly part?: string;
  readonly order: OrderKept;
  readonly findings: FindingsFound;
  readonly kappa: Kappa;
  readonly advice: AdviceGiven;
  readonly cautions: CautionsGiven;
  readonly promises: readonly string[];
  readonly unsafe: readonly string[];
  readonly alarm: 'none' | 'answered' | 'ignored';
  readonly hints: number;
  readonly firstPage?: FirstPageCompared;
  /** At most three. */
  readonly next: readonly NextThing[];
}
