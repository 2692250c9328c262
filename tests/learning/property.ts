/** fast-check with a seed that stays the same, so that a failure comes again; FC_SEED tries others. */
import * as fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env['FC_SEED'] ?? 20_261_125) });

export { fc };
