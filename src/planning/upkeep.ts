import type { Assessment } from '../assess/assess.ts';
import type { Checklist } from '../assess/checklist.ts';
import type { Upkeep } from '../flow/schema/action.ts';
import type { Proposal } from '../ranking/actions.ts';

/** The upkeep that fits this house: what its answers call for, and what every house needs. */
export function upkeepFor(checklist: Checklist, assessment: Assessment): Upkeep[] {
  return checklist.rules.upkeep
    .filter(({ when }) => when === undefined || when(assessment.facts, {}) === 'yes')
    .map(({ upkeep }) => upkeep);
}

export type Season = Upkeep['seasons'][number];
export type Hemisphere = 'north' | 'south';

/** A season of the year with its work. */
export interface SeasonOfYear {
  readonly season: Season;
  /** 1 to 12: the months of the season in this half of the world, by the calendar of weather services. */
  readonly months: readonly [number, number, number];
  readonly work: readonly Upkeep[];
}

/** The year round of a house, from the season of the day on. */
export interface YearOfUpkeep {
  readonly hemisphere: Hemisphere;
  readonly seasons: readonly SeasonOfYear[];
  /** Jobs already done that come back: they are looked at again each year. */
  readonly again: readonly Proposal[];
}

const order: readonly Season[] = ['spring', 'summer', 'autumn', 'winter'];
/** First month of spring: March in the north, September in the south. */
const springStarts: Readonly<Record<Hemisphere, number>> = { north: 3, south: 9 };

function monthsOf(season: Season, hemisphere: Hemisphere): [number, number, number] {
  const first = springStarts[hemisphere] - 1 + 3 * order.indexOf(season);
  return [(first % 12) + 1, ((first + 1) % 12) + 1, ((first + 2) % 12) + 1];
}

/** The season of a month (1 to 12) in one half of the world. */
export function seasonOf(month: number, hemisphere: Hemisphere): Season {
  const found = order.find((season) => monthsOf(season, hemisphere).includes(month));
  if (!found) throw new RangeError(`There is no month ${month}.`);
  return found;
}

/** In which half of the world a house stands, by its rulebook. */
export function hemisphereOf({ flow }: Checklist, { path }: Assessment): Hemisphere {
  return flow.rulebooks.find((one) => one.id === path.rulebook)?.hemisphere ?? 'north';
}

/** The upkeep of a house through the year, beginning with the season of `month` (1 to 12). */
export function yearOfUpkeep(
  checklist: Checklist,
  assessment: Assessment,
  month: number,
  done: readonly Proposal[] = [],
): YearOfUpkeep {
  const hemisphere = hemisphereOf(checklist, assessment);
  const work = upkeepFor(checklist, assessment);
  const first = order.indexOf(seasonOf(month, hemisphere));
  const seasons = [...order.slice(first), ...order.slice(0, first)];
  return {
    hemisphere,
    seasons: seasons.map((season) => ({
      season,
      months: monthsOf(season, hemisphere),
      work: work.filter((one) => one.seasons.includes(season)),
    })),
    again: done.filter((one) => one.action.comesBack),
  };
}
