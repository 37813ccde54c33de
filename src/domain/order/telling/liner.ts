// What is said of panels: fronts, the closing panel, panels that slide, a trough that is not bare or not clean.

import { panelMassIfSound } from '../../geometry/trough.js';
import { linerSide } from '../../model/liner-side.js';
import type { Break } from '../../model/conveyor.js';
import type { Step } from '../../model/job.js';
import { formatMass, formatNumber } from '../../units/format.js';
import { slidingFriction, startOf, uphillEnd } from '../start.js';
import { newPanel } from '../states.js';
import type { ClosingError } from '../violation.js';
import type { OrderSlip, Walk } from '../walk-state.js';
import { sayStep } from '../words.js';
import { are } from './pieces.js';
import { mm, otherStep, type ViolationWords, type WordsByKind } from './telling.js';

export const linerWords: WordsByKind<
  | 'two fronts'
  | 'closes inside the run'
  | 'closing error too large'
  | 'panel would slide'
  | 'not contiguous'
  | 'liner not stripped'
  | 'trough not cleaned'
> = {
  'two fronts': ({ w, slip, step }) => twoFronts(w, slip, step),
  'closes inside the run': ({ slip, doing, what, when }) => closesInside(slip, doing, what, when),
  'closing error too large': ({ slip, step, doing }) => closingTooLarge(slip, doing, step),
  'panel would slide': ({ w, slip, step, doing }) => slides(w, slip, doing, step),
  'not contiguous': ({ slip, doing, what, when }) => ({
    message: `${doing} has nothing to push against: ${what} ${are(slip)} not fitted.${when}`,
    reason:
      'A panel is tapped tight against its neighbour before it is drilled and bolted; one that is fitted on its own fixes a gap that no panel matches later.',
  }),
  'liner not stripped': ({ slip, doing, what, when }) => ({
    message: `${doing} needs the trough bare, but ${slip.found === newPanel ? 'the new liner is in' : 'the old liner is in'} at ${what}.${when}`,
    reason:
      'Old and new panels cannot lie in the same place, and a trough can be cleaned and looked at only when it is bare.',
  }),
  'trough not cleaned': ({ doing, what, when }) => ({
    message: `${doing} fits over a trough that was not cleaned and looked at: ${what}.${when}`,
    reason:
      'Dirt under a panel lifts it towards the spiral, and worn-through steel is hidden for the life of the new liner.',
  }),
};

function twoFronts(w: Walk, slip: OrderSlip, step: Step | undefined): ViolationWords {
  const other = otherStep(w, slip, 'other front');
  const { closing } = slip;
  const run = slip.pieces[0]?.run?.run;
  return {
    message:
      `Two fronts in ${run?.label ?? 'one run'}: ` +
      `"${other ? sayStep(other) : ''}" and "${step ? sayStep(step) : ''}" meet at panel ` +
      `${closing?.panel ?? ''}.`,
    reason:
      'The last gap between two fronts has fixed panels on both sides and matches no panel: ' +
      `${closing ? sayClosing(closing) : ''}, with no break there to absorb it. ` +
      'A piece that is too long will not drop in, ' +
      'and one that is too short leaves a slit for material to work in behind.',
  };
}

function closesInside(slip: OrderSlip, doing: string, what: string, when: string): ViolationWords {
  return {
    message: `${doing} closes ${what} against a panel that is in place.${when}`,
    reason:
      'A gap with a fixed panel on both sides matches no ' +
      `panel${slip.closing ? `: ${sayClosing(slip.closing)}, with no break there to absorb it` : ''}. ` +
      'The last panel of a front has to end at a break.',
  };
}

function closingTooLarge(slip: OrderSlip, doing: string, step: Step | undefined): ViolationWords {
  const { closing } = slip;
  if (!closing) return { message: doing, reason: '' };
  const firm = closing.allowance === 0;
  const run = slip.pieces[0]?.run?.run;
  const start = step && run ? startOf(step, run).start : undefined;
  const other = run && (start === 'tail' ? run.tailBreak : run.headBreak);
  const advice =
    other && other.allowance.value >= closing.worst
      ? `${other.name} takes up ${mm(other.allowance.value)}: start at ${closing.breakName} and close there.`
      : `${neitherTakesItUp(other)}: leave the closing panel until the last gap is measured on site ` +
        'and cut it to fit, or declare a joint ring in the run.';
  return {
    message:
      `${doing} closes ${closing.run} at ${closing.breakName}, ` +
      `which ${firm ? 'takes up no error at all' : `takes up ${mm(closing.allowance ?? 0)}`}, ` +
      `with panel ${closing.panel} up to ${mm(closing.worst)} out.`,
    reason: `Length errors add up towards the closing panel: ${sayClosing(closing)}. ${advice}`,
  };
}

function neitherTakesItUp(other: Break | undefined): string {
  if (!other) return 'No end takes it up';
  const { value } = other.allowance;
  return `${other.name} takes up ${value === 0 ? 'nothing' : `only ${mm(value)}`} either`;
}

function sayClosing(closing: ClosingError): string {
  const growth =
    closing.growth === undefined
      ? ', growth left out because no fitting or service temperature is declared'
      : closing.growth > 0
        ? ` + ${mm(closing.growth)} growth in service that the gaps do not take`
        : '';
  return (
    `${closing.panels} ${closing.panels === 1 ? 'panel' : 'panels'} at ±${mm(closing.panelTolerance)}, ` +
    `±${mm(closing.measuringTolerance)} of measuring${growth}: ` +
    `${mm(closing.worst)} at worst, ${mm(closing.rootSumSquare)} root-sum-square`
  );
}

function slides(w: Walk, slip: OrderSlip, doing: string, step: Step | undefined): ViolationWords {
  const { conveyor } = w.ground.job;
  const panel = slip.pieces[0];
  const run = panel?.run;
  const start = step && run ? startOf(step, run.run).start : uphillEnd(conveyor);
  const place = run && (start === 'tail' ? run.run.tailBreak : run.run.headBreak);
  const incline = Math.abs(conveyor.incline.value);
  const trough = {
    insideRadius: conveyor.trough.insideRadius.value,
    sideHeight: linerSide(conveyor).value,
    thickness: run?.liner.thickness.value ?? 0,
  };
  const mass = panel && run && panelMassIfSound(trough, panel.to - panel.from, run.liner.density.value);
  return {
    message: `${doing} starts from the lower end, and ${place?.name ?? 'that end'} (${place?.kind ?? 'break'}) gives the panels nothing to rest on.`,
    reason:
      `At ${formatNumber(incline)}° a panel${mass === undefined ? '' : ` of ${formatMass(mass)}`} slides by itself (friction ` +
      `${slidingFriction} holds up to ` +
      `${formatNumber((Math.atan(slidingFriction) * 180) / Math.PI, 1)}°). ` +
      'Worked from the upper end, each panel is pushed up against the last one and bolted before anyone ' +
      'lets go of it.',
  };
}
