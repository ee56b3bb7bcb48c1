import * as z from 'zod';
import { FlowFile } from './schema/file.ts';

/** The JSON Schema of a flow file, for editors. */
export function flowJsonSchema(): object {
  return z.toJSONSchema(FlowFile, { io: 'input', unrepresentable: 'any' });
}
