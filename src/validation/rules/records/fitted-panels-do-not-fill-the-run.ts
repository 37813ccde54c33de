// Do the panels recorded as fitted fill their run, within what the breaks at its ends take up?

import { findRun } from '../../../domain/model/runs.js';
import { formatLength } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';
import { counted } from '../../../domain/units/wording.js';

export const fittedPanelsDoNotFillTheRun: Rule = {
  code: 'TL338',
  title: 'Fitted panels that do not fill their run',
  severity: 'warning',
  why: 'The joints of the next reline and the panel under each reading are counted from these lengths.',
  todo: 'Check the lengths from the tail end of the run; the closing piece is the one that is often left out.',
  given: 'estate',
  example: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 2
  «fitted run 2 panels 1200 mm, 1200 mm, 1200 mm, 1200 mm|fitted run 2 panels 1200 mm, 1200 mm, 1200 mm, 1200 mm, 700 mm»
}`,
  *check({ estate }) {
    for (const { conveyor, liner, panelsFitted } of estate.relines) {
      for (const { run: stretch, lengths, origin } of panelsFitted) {
        const run = stretch.kind === 'run' ? findRun(conveyor, stretch.run) : undefined;
        if (!run || lengths.length === 0) continue;
        const gaps = liner.joint.policy === 'gap' ? liner.joint.gap.value * (lengths.length - 1) : 0;
        const filled = lengths.reduce((sum, length) => sum + length.value, gaps);
        const allowed = run.tailBreak.allowance.value + run.headBreak.allowance.value + 5; // 5 mm for the tape [judgement]
        const short = run.length - filled;
        if (Math.abs(short) <= allowed) continue;
        yield {
          origin,
          message:
            `${counted(lengths.length, 'panel')} of ${formatLength(filled)} in all are recorded in ${run.label} of ${conveyor.name}, which is ${formatLength(run.length)} long: ` +
            `${formatLength(Math.abs(short))} too ${short > 0 ? 'short' : 'long'}.`,
        };
      }
    }
  },
};
