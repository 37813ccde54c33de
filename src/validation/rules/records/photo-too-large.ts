// Can the photo be carried in a page that people send to each other?

import { largestPhoto } from '../../../domain/conditions/photo-path.js';
import { formatNumber } from '../../../domain/units/format.js';
import { photoUses } from '../../telling/photo-uses.js';
import type { Rule } from '../../rule.js';

const megabyte = 1024 * 1024;

export const photoTooLarge: Rule = {
  code: 'TL348',
  title: 'Photo too large',
  severity: 'warning',
  restsOn: [],
  why: 'The report leaves it out, because a page with such photos cannot be sent any more, and git keeps every large file for good.',
  todo:
    'Make it smaller before it is committed: 1600 pixels on the long side show a tear as well, ' +
    'and take a tenth of the room. 3 MB is the limit (judgement).',
  given: 'inspection',
  photos: { 'photos/P1.jpg': largestPhoto, 'photos/raw.jpg': largestPhoto + 1 },
  example: '  P1 colour ivory photo «"photos/raw.jpg"|"photos/P1.jpg"»',
  *check({ estate, photo }) {
    if (!photo) return;
    for (const use of photoUses(estate)) {
      const size = photo(use);
      if (typeof size !== 'number' || size <= largestPhoto) continue;
      yield {
        origin: use.origin,
        message: `${use.path} has ${formatNumber(size / megabyte, 1)} MB, and at most ${largestPhoto / megabyte} MB are shown.`,
      };
    }
  },
};
