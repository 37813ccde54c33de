// The seed of everything drawn at random in tests: pinned, so that a red build is red again, unless TROUGHLINE_SEED names
// another. `npm run test:explore` draws fresh ones. Printed once at the start of a run.

import fc from 'fast-check';

/** 1 to 2^31 − 1. */
export const randomSeed = Number(process.env['TROUGHLINE_SEED'] ?? 20_261_126);
if (!Number.isInteger(randomSeed) || randomSeed < 1)
  throw new RangeError(
    `TROUGHLINE_SEED is ${process.env['TROUGHLINE_SEED'] ?? ''}; it must be a whole number above 0.`,
  );
fc.configureGlobal({ seed: randomSeed });

/** As global set-up of a run: says which seed it has. */
export default function say(): void {
  console.log(`Random tests draw from seed ${randomSeed}; TROUGHLINE_SEED=${randomSeed} repeats them.`);
}
