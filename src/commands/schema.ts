import { write } from './io.ts';
import { ProgramError } from './program-error.ts';
import type { Register } from './register.ts';

const schemas = {
  flow: async () => (await import('../flow/json-schema.ts')).flowJsonSchema(),
  report: async () => (await import('../report/report.ts')).reportJsonSchema(),
} as const;

/** `schema`: JSON Schemas, for editors (flow files) and for readers of reports. */
export const registerSchema: Register = (program, io) => {
  program
    .command('schema')
    .description('print a JSON Schema: "flow" for editors of flow files, "report" for readers of reports')
    .argument('<what>', Object.keys(schemas).join(' or '))
    .addHelpText('after', '\nExample:\n  roofdown schema report > report.schema.json\n')
    .action(async (what: string) => {
      if (!Object.hasOwn(schemas, what)) {
        throw new ProgramError(
          `There is no schema "${what}". Say one of: ${Object.keys(schemas).join(', ')}.`,
        );
      }
      await write(io.stdout, `${JSON.stringify(await schemas[what as keyof typeof schemas](), null, 2)}\n`);
    });
};
