// Puts a slip into words: the message names the step and the two facts that disagree; the reason says what happens on site.

import { formatChainage, formatHours, formatLength, formatMass, formatNumber } from '../units/format.js';
import { panelMass } from '../geometry/trough.js';
import type { Step } from '../model/job.js';
import { sayPiece, type Piece } from './ground.js';
import { usualFireWatch, watchAfter } from './heat.js';
import { slidingFriction, startOf, uphillEnd } from './start.js';
import { gateOff, gateShut, laidScrew, newPanel, newScrew, noScrew, off, on } from './states.js';
import { listing, sayStep } from './words.js';
import type { ClosingError, ViolationKind } from './violation.js';
import type { OrderSlip, Walk } from './walk-state.js';

export interface ViolationWords {
  readonly message: string;
  readonly reason: string;
}

export function wordsFor(w: Walk, slip: OrderSlip): ViolationWords {
  const step = slip.step === undefined ? undefined : w.sequence.steps[slip.step];
  const doing = step ? `"${sayStep(step)}"` : 'The order';
  const what = sayPieces(slip.pieces);
  const late = otherStep(w, slip, 'comes too late');
  const cause = otherStep(w, slip, 'made it so');
  const when =
    slip.unsettled && late === undefined && cause
      ? ` "${sayStep(cause)}" may go on at the same time, and nothing says which is first.`
      : late
        ? ` "${sayStep(late)}" comes only later.`
        : cause
          ? ` "${sayStep(cause)}" left it so.`
          : '';
  const never = slip.missing ? ' No step puts it right before then.' : '';
  switch (slip.kind) {
    case 'two fronts':
      return twoFronts(w, slip, step);
    case 'closes inside the run':
      return closesInside(slip, doing, what, when);
    case 'closing error too large':
      return closingTooLarge(slip, doing, step);
    case 'panel would slide':
      return slides(w, slip, doing, step);
    case 'not contiguous':
      return {
        message: `${doing} has nothing to push against: ${what} ${are(slip)} not fitted.${when}`,
        reason:
          'A panel is tapped tight against its neighbour before it is drilled and bolted; one that is fitted on its own fixes a gap that no panel matches later.',
      };
    case 'isolation missing':
      return isolation(slip, doing, when);
    case 'gas test missing':
      return {
        message: `${doing} opens or enters an enclosed space without a gas test of ${what}.${when}`,
        reason:
          'Material in the trough gives off gas when it is disturbed, smell is no warning, and people reach into the trough from here on.',
      };
    case 'not opened up':
      return {
        message: `${doing} cannot be reached: ${what} ${are(slip)} still on.${when}`,
        reason:
          slip.pieces[0]?.kind === 'cover'
            ? 'Covers close the trough, so nobody gets at what lies under them.'
            : 'Hold-downs and braces lie across the spiral and the liner and are in the way of panels and spiral alike.',
      };
    case 'liner not stripped':
      return {
        message: `${doing} needs the trough bare, but ${slip.found === newPanel ? 'the new liner is in' : 'the old liner is in'} at ${what}.${when}`,
        reason:
          'Old and new panels cannot lie in the same place, and a trough can be cleaned and looked at only when it is bare.',
      };
    case 'trough not cleaned':
      return {
        message: `${doing} fits over a trough that was not cleaned and looked at: ${what}.${when}`,
        reason:
          'Dirt under a panel lifts it towards the spiral, and worn-through steel is hidden for the life of the new liner.',
      };
    case 'closed up too early':
      if (slip.found === on && slip.wanted === off)
        return {
          message: `${doing} puts back what is not off yet: ${what}.${when}`,
          reason: 'It has nothing to do here, and what is taken off later is then never put back.',
        };
      return {
        message: `${doing} closes up while ${stillOpen(slip)}.${when}`,
        reason: 'What lies below goes in first; it would all have to come off again.',
      };
    case 'handed back too early':
      return {
        message: `${doing} hands the machine back while ${stillOpen(slip)}.${when}${never}`,
        reason: 'Once isolation is off the spiral can turn, with people at an open trough.',
      };
    case 'run too early':
      return slip.pieces[0]?.kind === 'isolation'
        ? {
            message: `${doing} comes while the machine is isolated.${when}`,
            reason:
              'The drive has no supply until isolation is taken off, and taking it off out of turn is how people are hurt.',
          }
        : slip.pieces[0]?.kind === 'running'
          ? {
              message: `${doing} comes before the machine has run empty.${when}`,
              reason:
                'A spiral that touches somewhere shows at low current when empty; loaded, it cuts the liner before anyone notices.',
            }
          : {
              message: `${doing} runs the machine while ${stillOpen(slip)}.${when}${never}`,
              reason:
                'A spiral that turns in an open or half-fitted trough takes hold of whatever and whoever is there.',
            };
    case 'emptied too late':
      return {
        message: `${doing} needs power, and the machine is isolated.${when}`,
        reason:
          'Only a turning screw empties the trough; what stays in is weight on the spiral, gas, and dirt under the liner.',
      };
    case 'gate out of turn':
      return {
        message: `${doing} finds ${what} ${slip.found === gateOff ? 'stripped' : slip.found === gateShut ? 'shut' : 'open'}.${when}`,
        reason:
          'A gate is pinned shut, opened, stripped and refitted in turn; a barrier that is not where the order says protects nobody.',
      };
    case 'screw not restrained':
      return {
        message: `${doing} lets go of a spiral that nothing holds.${when}`,
        reason:
          'The spiral is a spring that lies on a slope: unbolted, it springs back and slides down, and its whole weight is loose.',
      };
    case 'screw out of turn':
      return screwOutOfTurn(slip, doing, what, when);
    case 'hot work over liner':
      return hotWork(doing, what, step);
    case 'fire watch missing':
      return {
        message: `${doing} comes before the hot work is watched: ${cause ? `"${sayStep(cause)}" throws sparks` : 'sparks were thrown'}, and ${late ? `"${sayStep(late)}" comes only later` : 'no fire watch follows it'}.`,
        reason:
          'Polyethylene and dust smoulder out of sight and break into fire when everybody has gone; somebody stays, watches, and does nothing else.',
      };
    case 'fire watch too short':
      return {
        message: `${doing} watches for ${step?.takes?.text ?? 'less'}, and "${cause ? sayStep(cause) : ''}" asks for ${formatHours(cause ? watchAfter(cause) : usualFireWatch)}.`,
        reason:
          'What smoulders behind the liner shows late. The watch lasts as long as the permit asks, counted from the last spark.',
      };
    case 'spiral from the middle':
      return {
        message: `${doing} takes ${what} from between two parts that are still in.`,
        reason:
          'Cut free at both ends at once, the piece springs and jams, and the part on the side without restraint is let go and slides. Start at an end, or where the neighbour is out already.',
      };
    case 'done twice':
      return {
        message: `${doing} is already done for ${what}.${cause ? ` "${sayStep(cause)}" did it.` : ''}`,
        reason:
          'What is counted twice hides what is not done at all, and the sign-off list then shows work nobody did.',
      };
    case 'not put back':
      return notPutBack(slip, what, cause);
    case 'scope not done':
      return {
        message: `The job's scope includes ${what}, and no step ${slip.pieces[0]?.kind === 'screw' ? 'changes it' : 'fits it'}.`,
        reason: 'The records would say that this was renewed when it was not.',
      };
    case 'no trial run':
      return {
        message:
          slip.wanted === 1
            ? 'The order ends without running the machine empty and then loaded.'
            : 'The order ends without running the machine loaded.',
        reason:
          'A new liner is proved by the empty and loaded currents; without them the first fault shows in service.',
      };
    case 'gate open between':
    case 'lone worker':
    case 'platform overloaded':
    case 'crew in two places':
    case 'access unit in two places':
    case 'no access':
    case 'no access unit':
    case 'work below loose parts':
    case 'circular order':
    case 'no such stretch':
      throw new RangeError(`"${slip.kind}" has its own words where it is found.`);
  }
}

export function sayClosing(closing: ClosingError): string {
  const growth =
    closing.growth === undefined
      ? ', growth left out because no fitting or service temperature is declared'
      : closing.growth > 0
        ? ` + ${mm(closing.growth)} growth in service`
        : '';
  return `${closing.panels} ${closing.panels === 1 ? 'panel' : 'panels'} at ±${mm(closing.panelTolerance)}, ±${mm(closing.measuringTolerance)} of measuring${growth}: ${mm(closing.worst)} at worst, ${mm(closing.rootSumSquare)} root-sum-square`;
}

/** Pieces of one kind in few words: panels by ranges, others by count and extent. */
export function sayPieces(pieces: readonly Piece[]): string {
  const first = pieces[0];
  if (!first) return 'nothing';
  const sorted = [...pieces].sort((a, b) => a.from - b.from);
  if (first.kind === 'panel') {
    const runs = [...new Set(sorted.map((piece) => piece.run))];
    return listing(
      runs.map((run) => {
        const numbers = sorted.filter((piece) => piece.run === run).map((piece) => piece.panel ?? 0);
        return `${numbers.length === 1 ? 'panel' : 'panels'} ${ranges(numbers)} of run ${run?.run.number}`;
      }),
    );
  }
  if (pieces.length === 1) return `the ${sayPiece(first)}`;
  const from = Math.min(...pieces.map((piece) => piece.from));
  const to = Math.max(...pieces.map((piece) => piece.to));
  if (first.kind === 'air' || first.kind === 'screw' || first.kind === 'heat')
    return `${{ air: 'the air', screw: 'the spiral', heat: 'the place' }[first.kind]} from ${formatChainage(from)} to ${formatChainage(to)}`;
  return `${pieces.length} ${first.kind}s from ${formatChainage(from)} to ${formatChainage(to)}`;
}

export function ranges(numbers: readonly number[]): string {
  const parts: string[] = [];
  for (let i = 0; i < numbers.length;) {
    let j = i;
    while (j + 1 < numbers.length && numbers[j + 1] === (numbers[j] ?? 0) + 1) j++;
    parts.push(i === j ? `${numbers[i]}` : `${numbers[i]} to ${numbers[j]}`);
    i = j + 1;
  }
  return listing(parts);
}

function twoFronts(w: Walk, slip: OrderSlip, step: Step | undefined): ViolationWords {
  const other = otherStep(w, slip, 'other front');
  const { closing } = slip;
  const run = slip.pieces[0]?.run?.run;
  return {
    message: `Two fronts in ${run?.label ?? 'one run'}: "${other ? sayStep(other) : ''}" and "${step ? sayStep(step) : ''}" meet at panel ${closing?.panel ?? ''}.`,
    reason: `The last gap between two fronts has fixed panels on both sides and matches no panel: ${closing ? sayClosing(closing) : ''}, with no break there to absorb it. A piece that is too long will not drop in, and one that is too short leaves a slit for material to work in behind.`,
  };
}

function closesInside(slip: OrderSlip, doing: string, what: string, when: string): ViolationWords {
  return {
    message: `${doing} closes ${what} against a panel that is in place.${when}`,
    reason: `A gap with a fixed panel on both sides matches no panel${slip.closing ? `: ${sayClosing(slip.closing)}, with no break there to absorb it` : ''}. The last panel of a front has to end at a break.`,
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
      : `${other ? `${other.name} takes up ${other.allowance.value === 0 ? 'nothing' : `only ${mm(other.allowance.value)}`} either` : 'No end takes it up'}: leave the closing panel until the last gap is measured on site and cut it to fit, or declare a joint ring in the run.`;
  return {
    message: `${doing} closes ${closing.run} at ${closing.breakName}, which ${firm ? 'takes up no error at all' : `takes up ${mm(closing.allowance ?? 0)}`}, with panel ${closing.panel} up to ${mm(closing.worst)} out.`,
    reason: `Length errors add up towards the closing panel: ${sayClosing(closing)}. ${advice}`,
  };
}

/** What is said on the step, and what is still to be said. */
function hotWork(doing: string, what: string, step: Step | undefined): ViolationWords {
  const heat = step?.heat?.kind === 'hot' ? step.heat : undefined;
  const lacks = heat?.shielded ? 'wet' : heat?.wet ? 'shielded' : 'shielded and wet';
  return {
    message: `${doing} is hot work with liner in reach of its sparks, ${what}, and the step does not say that it is ${lacks}.`,
    reason:
      'PE1000 burns and drips burning, and the fire runs down the trough out of reach. Strip it there first, do it cold, or shield it, keep it wet and watch it; a word in the note is no measure.',
  };
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
    sideHeight: conveyor.trough.sideHeight.value,
    thickness: run?.liner.thickness.value ?? 0,
  };
  const mass = panel && run ? panelMass(trough, panel.to - panel.from, run.liner.density.value) : 0;
  return {
    message: `${doing} starts from the lower end, and ${place?.name ?? 'that end'} (${place?.kind ?? 'break'}) gives the panels nothing to rest on.`,
    reason: `At ${formatNumber(incline)}° a panel of ${formatMass(mass)} slides by itself (friction ${slidingFriction} holds up to ${formatNumber((Math.atan(slidingFriction) * 180) / Math.PI, 1)}°). Worked from the upper end, each panel is pushed up against the last one and bolted before anyone lets go of it.`,
  };
}

function isolation(slip: OrderSlip, doing: string, when: string): ViolationWords {
  const message =
    slip.found === 1
      ? `${doing} comes before the machine is proved dead.${when}`
      : `${doing} comes while the machine is not isolated.${when}`;
  return {
    message,
    reason:
      'A spiral that can turn takes hands and arms; isolation counts only when a try-start has proved it dead.',
  };
}

/** Each kind of thing that is not back, in its own words. */
function stillOpen(slip: OrderSlip): string {
  const kinds = [...new Set(slip.pieces.map((piece) => piece.kind))];
  return listing(
    kinds.map((kind) => {
      const pieces = slip.pieces.filter((piece) => piece.kind === kind);
      const verb = pieces.length === 1 ? 'is' : 'are';
      if (kind === 'drive') return 'the drive plate is unbolted';
      if (kind === 'screw')
        return `${sayPieces(pieces)} is ${slip.found === laidScrew ? 'not joined' : 'out'}`;
      if (kind === 'gate')
        return `${sayPieces(pieces)} ${verb} ${slip.found === gateShut ? 'pinned shut' : 'stripped'}`;
      return `${sayPieces(pieces)} ${verb} ${kind === 'panel' ? 'not fitted' : 'off'}`;
    }),
  );
}

function screwOutOfTurn(slip: OrderSlip, doing: string, what: string, when: string): ViolationWords {
  switch (slip.pieces[0]?.kind) {
    case 'drive':
      return {
        message: `${doing} comes while the drive plate is bolted.${when}`,
        reason: 'The spiral hangs on the drive plate and cannot be drawn or cut free while it is bolted.',
      };
    case 'panel':
      return {
        message: `${doing} puts the spiral in over ${what}, not yet fitted.${when}`,
        reason: 'The new spiral would lie on bare steel and be in the way of every panel under it.',
      };
    default:
      return slip.found === noScrew
        ? {
            message: `${doing} comes while ${what} is out.${when}`,
            reason: 'Hold-downs and the drive plate go back over a spiral that is in.',
          }
        : {
            message: `${doing} comes while ${slip.found === newScrew ? 'the new' : 'the old'} spiral is in place: ${what}.${when}`,
            reason: 'Two spirals cannot lie in the same trough.',
          };
  }
}

function notPutBack(slip: OrderSlip, what: string, cause: Step | undefined): ViolationWords {
  const took = cause ? ` by "${sayStep(cause)}"` : '';
  switch (slip.pieces[0]?.kind) {
    case 'panel':
      return {
        message: `The order ends with ${what} bare${cause ? ` after "${sayStep(cause)}"` : ''}: stripped and never fitted.`,
        reason: 'The spiral would run on steel.',
      };
    case 'screw':
      return {
        message: `The order ends with ${what} out, removed${took}.`,
        reason: 'The machine cannot run.',
      };
    case 'gate':
      return {
        message: `The order ends with ${what} stripped${took}.`,
        reason: 'The machine cannot run.',
      };
    case 'drive':
      return {
        message: `The order ends with the drive plate unbolted${took}.`,
        reason: 'The machine cannot run.',
      };
    case 'isolation':
      return {
        message: `The order ends with the machine isolated${took}.`,
        reason: 'Whoever starts it next would take off isolation that nobody has handed back.',
      };
    default:
      return {
        message: `The order ends with ${what} off: taken off${took} and never put back.`,
        reason: 'Every part that comes off is counted back on before the machine is handed over.',
      };
  }
}

export function otherStep(
  w: Walk,
  slip: OrderSlip,
  role: 'made it so' | 'comes too late' | 'other front' | 'same time',
): Step | undefined {
  for (const [i, as] of slip.others) if (as === role) return w.sequence.steps[i];
  return undefined;
}

function are(slip: OrderSlip): string {
  return slip.pieces.length === 1 ? 'is' : 'are';
}

function mm(value: number): string {
  return formatLength(Math.round(value * 10) / 10);
}

/** What a state of a piece is called where a conflicting step is pointed at. */
export function sayRole(
  kind: ViolationKind,
  role: 'made it so' | 'comes too late' | 'other front' | 'same time',
): string {
  switch (role) {
    case 'other front':
      return 'the other front of the run';
    case 'comes too late':
      return 'what is missing is done only here';
    case 'same time':
      return 'may go on at the same time';
    case 'made it so':
      return kind === 'done twice'
        ? 'done here already'
        : kind === 'not put back'
          ? 'taken off here'
          : 'it is left so here';
  }
}
