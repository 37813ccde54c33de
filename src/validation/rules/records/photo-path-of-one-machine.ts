// Will the photo be found from another computer? Paths count from the file they stand in.

import { photoTrouble } from '../../../domain/conditions/photo-path.js';
import { photoUses } from '../../telling/photo-uses.js';
import { replace } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

/** `https://…`, and no drive of a machine. */
function isAddress(path: string): boolean {
  return /^[a-z][a-z+.-]+:\/\//i.test(path);
}

export const photoPathOfOneMachine: Rule = {
  code: 'TL346',
  title: 'Photo path of one machine only',
  severity: 'warning',
  restsOn: [],
  why: 'Nobody else can open it, and the crew that has to judge the damage gets a dead link.',
  todo: 'Put the photo beside the records and give its path from there, for example "photos/2025-03-10-P1.jpg".',
  given: 'inspection',
  example: `
  P1 colour ivory
  photo «"C:/photos/P1.jpg"|"photos/2025-03-10-P1.jpg"»`,
  cases: [{ name: 'an address', text: '\n  P1 colour ivory\n  photo «"https://example.org/P1.jpg"»' }],
  *check({ estate }) {
    for (const { path, origin } of photoUses(estate)) {
      if (photoTrouble(path) !== 'absolute') continue;
      const name = /[^\\/]*$/.exec(path)?.[0] ?? '';
      yield {
        origin,
        message: isAddress(path)
          ? `"${path}" is an address and no file beside the records: nothing is fetched from there, and it may be gone tomorrow.`
          : `The path "${path}" starts at the root of one machine.`,
        fixes: name === '' ? [] : [replace(origin, `"photos/${name}"`)],
      };
    }
  },
};
