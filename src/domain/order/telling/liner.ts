// What is said of panels: fronts, the closing panel, panels that slide, a trough that is not bare or not clean.

import { panelMassIfSound } from '../../geometry/trough.js';
import { linerSide } from '../../model/liner-side.js';
import type { Break, Conveyor } from '../../model/conveyor.js';
import { formatMass, formatNumber } from '../../units/format.js';
import { slidingFriction, startOf } from '../start.js';
import { newPanel } from '../states.js';
import type { ClosingError } from '../violation.js';
import { sayStep } from '../words.js';
import { are } from './pieces.js';
import { known, mm, otherStep, type Telling, type ViolationWords, type WordsByKind } from './telling.js';

export const linerWords: WordsByKind<
  | 'two fronts'
  | 'closes inside the run'
  | 'closing error too large'
  | 'panel would slide'
  | 'not contiguous'
  | 'liner not stripped'
  | 'trough not cleaned'
> = {
  'two fronts': twoFronts,
  'closes inside the run': closesInside,
  'closing error too large': closingTooLarge,
  'panel would slide': slides,
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

function twoFronts(telling: Telling): ViolationWords {
  const { w, slip, doing } = telling;
  const other = known(otherStep(w, slip, 'other front'));
  const closing = known(slip.closing);
  return {
    message: `Two fronts in ${closing.run}: "${sayStep(other)}" and ${doing} meet at panel ${closing.panel}.`,
    reason:
      'The last gap between two fronts has fixed panels on both sides and matches no panel: ' +
      `${sayClosing(telling, closing)}, with no break there to absorb it. ` +
      'A piece that is too long will not drop in, ' +
      'and one that is too short leaves a slit for material to work in behind.',
  };
}

function closesInside(telling: Telling): ViolationWords {
  const { slip, doing, what, when } = telling;
  // Where two steps are only open to one another, no front has closed yet.
  const closing = slip.closing
    ? `: ${sayClosing(telling, slip.closing)}, with no break there to absorb it`
    : '';
  return {
    message: `${doing} closes ${what} against a panel that is in place.${when}`,
    reason:
      `A gap with a fixed panel on both sides matches no panel${closing}. ` +
      'The last panel of a front has to end at a break, or be cut to the gap as measured (`cut to fit`).',
  };
}

function closingTooLarge(telling: Telling): ViolationWords {
  const { slip, doing } = telling;
  const closing = known(slip.closing);
  const other = startingBreak(telling);
  const advice =
    other.allowance.value >= closing.worst
      ? `${other.name} takes up ${mm(telling, other.allowance.value)}: start at ${closing.breakName} and close there.`
      : `${neitherTakesItUp(telling, other)}: leave the closing panel until the last gap is measured on site ` +
        'and cut it to fit, or declare a joint ring in the run.';
  return {
    message:
      `${doing} closes ${closing.run} at ${closing.breakName}, ` +
      `which takes up ${closing.allowance ? mm(telling, closing.allowance) : 'no error at all'}, ` +
      `with panel ${closing.panel} up to ${mm(telling, closing.worst)} out.`,
    reason: `Length errors add up towards the closing panel: ${sayClosing(telling, closing)}. ${advice}`,
  };
}

/** Of the end of the run that the front starts from. */
function startingBreak({ step, piece }: Telling): Break {
  const { run } = known(piece.run);
  return startOf(known(step), run).start === 'tail' ? run.tailBreak : run.headBreak;
}

function neitherTakesItUp(telling: Telling, other: Break): string {
  const { value } = other.allowance;
  return `${other.name} takes up ${value === 0 ? 'nothing' : `only ${mm(telling, value)}`} either`;
}

function sayClosing(telling: Telling, closing: ClosingError): string {
  const growth =
    closing.growth === undefined
      ? ', growth left out because no fitting or service temperature is declared'
      : closing.growth > 0
        ? ` + ${mm(telling, closing.growth)} growth in service that the gaps do not take`
        : '';
  return (
    `${closing.panels} ${closing.panels === 1 ? 'panel' : 'panels'} at ±${mm(telling, closing.panelTolerance)}, ` +
    `±${mm(telling, closing.measuringTolerance)} of measuring${growth}: ` +
    `${mm(telling, closing.worst)} at worst, ${mm(telling, closing.rootSumSquare)} root-sum-square`
  );
}

/** mm: a stop that was meant and lies beside the end of the run (judgement). */
const nearby = 500;

/** Where a declared stop lies beside the panels and not at their end. */
function restNearby(conveyor: Conveyor, ends: readonly number[]): string {
  const off = (at: number): number => Math.min(...ends.map((end) => Math.abs(end - at)));
  const rest = conveyor.rests.find(({ from }) => off(from.value) <= nearby);
  return rest
    ? `: the stop at ${rest.from.text} lies ${formatNumber(off(rest.from.value), 0)} mm from the end of the panels`
    : '';
}

function slides(telling: Telling): ViolationWords {
  const { w, piece, doing } = telling;
  const { conveyor } = w.ground.job;
  const { liner } = known(piece.run);
  const place = startingBreak(telling);
  const incline = Math.abs(conveyor.incline.value);
  const trough = {
    insideRadius: conveyor.trough.insideRadius.value,
    sideHeight: linerSide(conveyor).value,
    thickness: liner.thickness.value,
  };
  const mass = panelMassIfSound(trough, piece.to - piece.from, liner.density.value);
  return {
    message:
      `${doing} starts from the lower end, and ${place.name} (${place.kind}) gives the panels nothing to rest on` +
      `${restNearby(conveyor, [piece.from, piece.to])}.`,
    reason:
      `At ${formatNumber(incline)}° a panel${mass === undefined ? '' : ` of ${formatMass(mass)}`} slides by itself (friction ` +
      `${slidingFriction} holds up to ` +
      `${formatNumber((Math.atan(slidingFriction) * 180) / Math.PI, 1)}°). ` +
      'Worked from the upper end, each panel is pushed up against the last one and bolted before anyone ' +
      'lets go of it.',
  };
}
