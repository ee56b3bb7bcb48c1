/** Who goes on: the caller alone, with the answers; or another volunteer, with the whole call. */
export const handOverTos = ['caller', 'colleague'] as const;
export type HandOverTo = (typeof handOverTos)[number];

/** How long a code works and where it is used, as the chat service says it; nothing while that is not known. */
export interface HandOverTerms {
  readonly hours?: number;
  /** Such as "text it to 555-0160". */
  readonly reach?: string;
  /** For how many days after its last change the service keeps a call, 0 without end; nothing: the call is kept elsewhere. */
  readonly keptDays?: number;
}
