import fc from 'fast-check';

// The same random cases on every machine, so that a failure can be run again; FC_SEED looks at others.
fc.configureGlobal({ seed: Number(process.env['FC_SEED'] ?? 20_261_125) });
