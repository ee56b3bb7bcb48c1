import type { AnswerSheet } from '../../src/answers/answer.ts';
import { type Assessment, assess } from '../../src/assess/assess.ts';
import type { Checklist } from '../../src/assess/checklist.ts';
import type { Flow } from '../../src/flow/flow.ts';
import { toFindOut } from '../../src/planning/to-find-out.ts';
import { upkeepFor } from '../../src/planning/upkeep.ts';
import { buildReport } from '../../src/report/build-report.ts';
import type { Report } from '../../src/report/report.ts';
import { catalogueOf } from '../../src/wording/catalogue.ts';
import type { Audience, UnitSystem } from '../../src/wording/say.ts';
import { createWording, type Wording } from '../../src/wording/wording.ts';
import { realProgramme } from '../support/programme.ts';
import { readHouse } from './read-house.ts';

export const houses = [
  'fernhollow-lane-12',
  'kiln-road-3',
  'old-flume-road-27',
  'mill-yard-8',
  'larkspur-way-41',
  'weir-cottages-5',
] as const;

interface Wanted {
  readonly audience?: Audience;
  readonly units?: UnitSystem;
  readonly date?: string;
  readonly notes?: readonly string[];
  /** What is changed in the answers of the house. */
  readonly change?: (sheet: AnswerSheet, checklist: Checklist) => AnswerSheet;
  readonly computed?: Parameters<typeof buildReport>[0]['computed'];
}

interface Reported {
  readonly report: Report;
  readonly wording: Wording;
  readonly assessment: Assessment;
  readonly flow: Flow;
}

/** The report of one of the houses, as a headless walk would make it. */
export function reportOf(name: string, wanted: Wanted = {}): Reported {
  const { checklist } = realProgramme();
  const read = readHouse(checklist.index, name);
  const sheet = wanted.change?.(read, checklist) ?? read;
  const assessment = assess(checklist, sheet);
  const wording = createWording(
    { catalogue: catalogueOf(checklist.flow), questions: checklist.index.questions },
    {
      language: 'en',
      audience: wanted.audience ?? 'resident',
      units: wanted.units ?? 'imperial',
      limits: assessment.path.limits,
    },
  );
  const report = buildReport({
    checklist,
    assessment,
    toFindOut: toFindOut(checklist, sheet, assessment),
    upkeep: upkeepFor(checklist, assessment),
    wording,
    sheet,
    walk: { id: null, date: wanted.date ?? '2026-06-12', seed: 1, notes: wanted.notes ?? [] },
    ...(wanted.computed ? { computed: wanted.computed } : {}),
  });
  return { report, wording, assessment, flow: checklist.flow };
}
