// Do the panels recorded as fitted fill their run, within what the breaks at its ends take up? Where the scope names a
// part of the run, they are to fill that part.

import type { Estate } from '../../../domain/model/estate.js';
import type { Conveyor, PanelsFitted } from '../../../domain/model/conveyor.js';
import { firstLinerOf } from '../../../domain/model/first-liner.js';
import { installedPanels } from '../../../domain/model/panels.js';
import type { Reline } from '../../../domain/model/records.js';
import { findRun, type Run } from '../../../domain/model/runs.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import type { Stated } from '../../../domain/model/stated.js';
import { addDays } from '../../../domain/units/calendar.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';
import type { Found } from '../../finding.js';
import { settled, type RuleThreshold } from '../../threshold.js';
import { counted } from '../../../domain/units/wording.js';

const threshold: RuleThreshold = {
  usual: '5 mm',
  dimension: 'length',
  what: 'What the tape may be off, beside what the breaks at the ends take.',
  basis: 'judgement',
};

export const fittedPanelsDoNotFillTheRun: Rule = {
  code: 'TL338',
  title: 'Fitted panels that do not fill their run',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'The joints of the next reline and the panel under each reading are counted from these lengths.',
  todo: 'Check the lengths from the tail end of the run; the closing piece is the one that is often left out.',
  threshold,
  given: 'estate',
  example: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 2
  «fitted run 2 panels 1200 mm, 1200 mm, 1200 mm, 1200 mm|fitted run 2 panels 1200 mm, 1200 mm, 1200 mm, 1200 mm, 700 mm»
}`,
  *check({ estate }) {
    for (const conveyor of estate.conveyors)
      yield* judgeEach(conveyor, conveyor.panelsFitted, (run) => [firstLinerOf(run), undefined]);
    for (const reline of estate.relines)
      yield* judgeEach(reline.conveyor, reline.panelsFitted, (run) => [
        reline.liner,
        partOf(estate, reline, run),
      ]);
  },
};

interface Part {
  /** How many panels it names; undefined where it goes by chainages. */
  readonly count: number | undefined;
  readonly length: number;
}

function* judgeEach(
  conveyor: Conveyor,
  rows: readonly PanelsFitted[],
  lined: (run: Run) => readonly [LinerSpecification, Part | undefined],
): Iterable<Found> {
  for (const { run: stretch, lengths, origin } of rows) {
    const run = stretch.kind === 'run' ? findRun(conveyor, stretch.run) : undefined;
    if (!run || lengths.length === 0) continue;
    const message = judge(run, ...lined(run), lengths);
    if (message !== undefined) yield { origin, message };
  }
}

function judge(
  run: Run,
  liner: LinerSpecification,
  part: Part | undefined,
  lengths: readonly Stated<'length'>[],
): string | undefined {
  const { conveyor } = run;
  const gaps = liner.joint.policy === 'gap' ? liner.joint.gap.value * (lengths.length - 1) : 0;
  const filled = lengths.reduce((sum, length) => sum + length.value, gaps);
  const said = `${counted(lengths.length, 'panel')} of ${lengthOn(conveyor, filled)} in all are recorded in ${run.label} of ${conveyor.name}`;
  // Of a part, what the joints of the panels beside it take, as the layout reads it.
  const allowed = part
    ? part.length / 20
    : run.tailBreak.allowance.value +
      run.headBreak.allowance.value +
      settled(conveyor.plant, 'TL338', threshold);
  if (part?.count !== undefined && part.count !== lengths.length)
    return `${said}, and the scope names ${counted(part.count, 'panel')} of it.`;
  const [what, length] = part ? ['whose part in the scope is', part.length] : ['which is', run.length];
  const short = length - filled;
  return Math.abs(short) <= allowed
    ? undefined
    : `${said}, ${what} ${lengthOn(conveyor, length)} long: ${lengthOn(conveyor, Math.abs(short))} too ${short > 0 ? 'short' : 'long'}.`;
}

/** How long the part of a run is that the scope names, and of how many panels where it names them; undefined without one such part. */
function partOf(estate: Estate, { conveyor, scope, date }: Reline, run: Run): Part | undefined {
  const own = scope.filter((one) =>
    one.kind === 'panels'
      ? findRun(conveyor, one.run) === run
      : one.kind === 'chainage' &&
        one.from.value < run.to &&
        one.to.value > run.from &&
        (one.from.value > run.from || one.to.value < run.to),
  );
  const [part] = own;
  if (part?.kind === 'chainage' && own.length === 1)
    return { count: undefined, length: part.to.value - part.from.value };
  const { panels } = installedPanels(estate, run, addDays(date.day, -1)).layout;
  const named = new Set<number>();
  for (const one of own) {
    if (one.kind !== 'panels') return undefined;
    for (let number = one.first.count; number <= one.last.count; number++) named.add(number);
  }
  if (named.size === 0 || [...named].some((number) => !panels[number - 1])) return undefined;
  // Side by side they hold the joints between them, too.
  const length = panels.reduce((sum, { from, to }, index) => {
    if (!named.has(index + 1)) return sum;
    const before = named.has(index) ? panels[index - 1] : undefined;
    return sum + to - (before?.to ?? from);
  }, 0);
  return { count: named.size, length };
}
