// Is the photo there that a record names? Only asked where somebody can look: a browser without a disk says nothing.

import { photoTrouble } from '../../../domain/conditions/photo-path.js';
import { photoUses } from '../../telling/photo-uses.js';
import type { Rule } from '../../rule.js';

export const photoMissing: Rule = {
  code: 'TL347',
  title: 'Photo missing',
  severity: 'warning',
  restsOn: [],
  why: 'Whoever has to judge the damage from a desk finds nothing, and the one who took the photo may have deleted it by then.',
  todo: 'Put the photo beside the file that names it, in this path, and commit both together; or correct the path.',
  given: 'inspection',
  photos: { 'photos/P1.jpg': 200_000 },
  example: '  P1 colour ivory photo «"photos/P1-2025.jpg"|"photos/P1.jpg"»',
  cases: [
    { name: 'of a condition', text: '  panel torn at 4.2 m photo «"tear.jpg"»' },
    { name: 'of a measure', text: '  current loaded 7.8 A "until the bottle was out" photo «"clamp.jpg"»' },
    { name: 'of work', text: '  serviced spiral at 4 m "ground out" by "coded welder" photo «"weld.jpg"»' },
  ],
  *check({ estate, photo }) {
    if (!photo) return;
    for (const use of photoUses(estate)) {
      if (photoTrouble(use.path) !== undefined || photo(use) !== 'missing') continue;
      yield {
        origin: use.origin,
        message: `There is no file ${use.path} beside the text that names it.`,
      };
    }
  },
};
