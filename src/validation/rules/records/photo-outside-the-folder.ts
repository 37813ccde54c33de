// Does a photo stay in the folder of its record, and is it a picture at all?

import { photoEndings, photoTrouble } from '../../../domain/conditions/photo-path.js';
import { photoUses } from '../../telling/photo-uses.js';
import type { Rule } from '../../rule.js';

export const photoOutsideTheFolder: Rule = {
  code: 'TL349',
  title: 'Photo that cannot be shown',
  severity: 'warning',
  restsOn: [],
  why:
    'A path that leaves the folder could show or publish anything on the disk of whoever opens the ' +
    'records, so it is never followed; and what is no picture is not shown.',
  todo: 'Put the photo into the folder of the file that names it, or into one below, as a jpg, png, webp or gif.',
  given: 'inspection',
  example: '  P1 colour ivory photo «"../photos/P1.jpg"|"photos/P1.jpg"»',
  cases: [
    { name: 'what is no picture', text: '  panel torn at 4.2 m photo «"tear.pdf"»' },
    { name: 'two dots in a name', text: '  panel torn at 4.2 m photo "tear..jpg"' },
  ],
  *check({ estate }) {
    for (const { path, origin } of photoUses(estate)) {
      const trouble = photoTrouble(path);
      switch (trouble) {
        case 'empty':
          yield { origin, message: 'No file is named.' };
          break;
        case 'leaves the folder':
          yield { origin, message: `The path "${path}" leaves the folder of the file it stands in.` };
          break;
        case 'no picture':
          yield { origin, message: `"${path}" is none of ${photoEndings.join(', ')}.` };
          break;
        default: // an absolute path is TL346's
          break;
      }
    }
  },
};
