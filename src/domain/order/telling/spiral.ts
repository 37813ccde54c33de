// What is said of the spiral: held, taken out, put in and let go again, in turn.

import { laidScrew, newScrew, noScrew } from '../states.js';
import type { Telling, ViolationWords, WordsByKind } from './telling.js';

export const spiralWords: WordsByKind<
  'screw not restrained' | 'screw still restrained' | 'screw out of turn' | 'spiral from the middle'
> = {
  'screw not restrained': ({ piece, doing, when }) => ({
    message:
      piece.kind === 'drive'
        ? `${doing} comes while the drive plate is unbolted: nothing else holds the spiral.${when}`
        : `${doing} lets go of a spiral that nothing holds.${when}`,
    reason:
      'The spiral is a spring that lies on a slope: unbolted, it springs back and slides down, and its whole weight is loose.',
  }),
  'screw still restrained': ({ step, doing, when, never }) => ({
    message: step
      ? `${doing} gives the machine power while the spiral is still restrained.${when}${never}`
      : `${doing} ends with the spiral restrained.${when} No step releases it.`,
    reason:
      'Started while it is held, the spiral winds itself up until the restraint tears off or the drive stalls, ' +
      'and what tears off is thrown.',
  }),
  'screw out of turn': (telling) => screwOutOfTurn(telling),
  'spiral from the middle': ({ doing, what }) => ({
    message: `${doing} takes ${what} from between two parts that are still in.`,
    reason:
      'Cut free at both ends at once, the piece springs and jams, ' +
      'and the part on the side without restraint is let go and slides. ' +
      'Start at an end, or where the neighbour is out already.',
  }),
};

function screwOutOfTurn({ slip, piece, doing, what, when }: Telling): ViolationWords {
  switch (piece.kind) {
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
      return {
        message: `${doing} comes while ${inPlace(slip.found, what)}.${when}`,
        reason: spiralReason(slip.found),
      };
  }
}

function inPlace(found: number, what: string): string {
  switch (found) {
    case noScrew:
      return `${what} is out`;
    case laidScrew:
      return `${what} lies in pieces that are not joined`;
    default:
      return `${found === newScrew ? 'the new' : 'the old'} spiral is in place: ${what}`;
  }
}

function spiralReason(found: number): string {
  switch (found) {
    case noScrew:
      return 'Hold-downs and the drive plate go back over a spiral that is in.';
    case laidScrew:
      return 'Pieces that nothing joins can be neither held down nor driven, and they move against one another.';
    default:
      return 'Two spirals cannot lie in the same trough.';
  }
}
