import { type ReportFormat, reportFormats } from '../report/formats.ts';
import { ProgramError } from './program-error.ts';

/** A format of the report by its name; text when none is named. */
export function readFormat(name: string | undefined): ReportFormat {
  const found = reportFormats.find((one) => one === (name ?? 'text'));
  if (!found)
    throw new ProgramError(`There is no format "${name}". Say one of: ${reportFormats.join(', ')}.`);
  return found;
}
