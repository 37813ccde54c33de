// How far do the levels of a pool spread? From their offsets and the covariance of these, at the mode of all else.
// Index arithmetic runs within lengths made in design.ts, so `!` after an index is safe.

import type { Design } from './design.js';
import type { Pass, Priors } from './parameters.js';

/**
 * EM step with the prior, −L·ln ω − (Σ offset² + trace)/2ω² − (ln ω − mean)²/2·spread², drawn out by how slowly EM would go: only
 * γ = L − trace/ω² of the L offsets are determined by records, and EM covers γ/L of the way (MacKay 1992 jumps all of it, and may
 * then swing).
 */
export function updatePoolSpreads(design: Design, priors: Priors, pass: Pass): readonly number[] {
  const { effectsOnly, system, parameters } = pass;
  if (!effectsOnly) return parameters.poolSpread;
  return parameters.poolSpread.map((omega, k) => {
    const first = design.firstColumn[k]!;
    const levels = design.levels[k]!;
    let sum = 0;
    let trace = 0;
    for (let j = 0; j < levels; j++) {
      if (first >= 0) {
        const c = first + j;
        sum += parameters.effects.dense[c]! ** 2;
        trace += effectsOnly.inverse[c * effectsOnly.size + c]!;
      } else {
        const d = system.apartDiagonal[j]!;
        let own = 1 / d;
        for (let a = 0; a < effectsOnly.size; a++) {
          const ra = system.apartRow[j * system.size + a]!;
          if (ra === 0) continue;
          for (let b = 0; b < effectsOnly.size; b++)
            own +=
              (ra * system.apartRow[j * system.size + b]! * effectsOnly.inverse[a * effectsOnly.size + b]!) /
              (d * d);
        }
        sum += parameters.effects.apart[j]! ** 2;
        trace += own;
      }
    }
    let log = Math.log(omega);
    const determined = Math.max(0, levels - trace / (omega * omega));
    const { mean, spread } = priors.logPoolSpread;
    for (let step = 0; step < 30; step++) {
      const scaled = (sum + trace) * Math.exp(-2 * log);
      const slope = -levels + scaled - (log - mean) / (spread * spread);
      const bend = 2 * scaled + 1 / (spread * spread);
      const move = slope / bend;
      log += Math.max(-1, Math.min(1, move));
      if (Math.abs(move) < 1e-10) break;
    }
    const before = Math.log(omega);
    const drawn = Math.min(4, levels / Math.max(determined, 0.25 * levels));
    return Math.exp(before + Math.max(-0.7, Math.min(0.7, drawn * (log - before))));
  });
}
