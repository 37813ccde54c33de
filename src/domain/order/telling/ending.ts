// What is said of opening up, closing up, handing back and running, and of what the order leaves out.

import type { Step } from '../../model/job.js';
import { off } from '../states.js';
import type { Piece } from '../ground.js';
import { sayStep } from '../words.js';
import { are, stillOpen } from './pieces.js';
import type { ViolationWords, WordsByKind } from './telling.js';

export const endingWords: WordsByKind<
  | 'not opened up'
  | 'not cleared up'
  | 'closed up too early'
  | 'handed back too early'
  | 'run too early'
  | 'done twice'
  | 'not put back'
  | 'scope not done'
  | 'no trial run'
> = {
  'not opened up': ({ slip, piece, doing, what, when }) => ({
    message: `${doing} cannot be reached: ${what} ${are(slip)} still on.${when}`,
    reason:
      piece.kind === 'cover'
        ? 'Covers close the trough, so nobody gets at what lies under them.'
        : 'Hold-downs and braces lie across the spiral and the liner and are in the way of panels and spiral alike.',
  }),
  'closed up too early': ({ w, slip, piece, doing, what, when }) => {
    if (slip.wanted === off)
      return {
        message:
          piece.kind === 'restraint'
            ? `${doing} releases a spiral that is not restrained yet.${when}`
            : `${doing} puts back what is not off yet: ${what}.${when}`,
        reason: 'It has nothing to do here, and what is taken off later is then never put back.',
      };
    return {
      message: `${doing} closes up while ${stillOpen(w, slip)}.${when}`,
      reason: 'What lies below goes in first; it would all have to come off again.',
    };
  },
  'not cleared up': ({ doing, what, when, never }) => ({
    message: `${doing} closes the trough over ${what}.${when}${never}`,
    reason:
      'A spanner or an offcut under the covers is dragged along by the spiral: ' +
      'it scores the new liner, and jams where it is hardest to reach.',
  }),
  'handed back too early': ({ w, slip, doing, when, never }) => ({
    message: `${doing} hands the machine back while ${stillOpen(w, slip)}.${when}${never}`,
    reason: 'Once isolation is off the spiral can turn, with people at an open trough.',
  }),
  'run too early': ({ w, slip, piece, step, doing, when, never }) =>
    piece.kind === 'gate' && step?.action === 'empty'
      ? {
          message: `${doing} runs the machine while ${stillOpen(w, slip)}.${when}`,
          reason:
            'Against a shut gate the spiral packs the trough until something bends or the drive stalls, and nothing is emptied.',
        }
      : piece.kind === 'isolation'
        ? {
            message: `${doing} comes while the machine is isolated.${when}`,
            reason:
              'The drive has no supply until isolation is taken off, and taking it off out of turn is how people are hurt.',
          }
        : piece.kind === 'running'
          ? {
              message: `${doing} comes before the machine has run empty.${when}`,
              reason:
                'A spiral that touches somewhere shows at low current when empty; loaded, it cuts the liner before anyone notices.',
            }
          : {
              message: `${doing} runs the machine while ${stillOpen(w, slip)}.${when}${never}`,
              reason:
                'A spiral that turns in an open or half-fitted trough takes hold of whatever and whoever is there.',
            },
  'done twice': ({ piece, doing, what, cause }) => ({
    message:
      piece.kind === 'restraint' && !cause
        ? `${doing} releases a spiral that no step restrains.`
        : `${doing} is already done for ${what}.${cause ? ` "${sayStep(cause)}" did it.` : ''}`,
    reason:
      'What is counted twice hides what is not done at all, and the sign-off list then shows work nobody did.',
  }),
  'not put back': ({ piece, what, cause }) => notPutBack(piece, what, cause),
  'scope not done': ({ piece, what }) => ({
    message: `The job's scope includes ${what}, and no step ${piece.kind === 'screw' ? 'changes it' : 'fits it'}.`,
    reason: 'The records would say that this was renewed when it was not.',
  }),
  'no trial run': ({ slip }) => ({
    message:
      slip.wanted === 1
        ? 'The order ends without running the machine empty and then loaded.'
        : 'The order ends without running the machine loaded.',
    reason:
      'A new liner is proved by the empty and loaded currents; without them the first fault shows in service.',
  }),
};

function notPutBack(piece: Piece, what: string, cause: Step | undefined): ViolationWords {
  const took = cause ? ` by "${sayStep(cause)}"` : '';
  switch (piece.kind) {
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
