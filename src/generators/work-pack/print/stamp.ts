// What stands over a pack whose job cannot be built as it stands: the same words on the pack and on the crew sheet.

import { element, type Markup } from '../../page/markup.js';
import type { Obstacle } from '../pack.js';

export const stampWord = 'NOT BUILDABLE AS IT STANDS';

/** The first are the best; the editor offers the rest. */
export const mostRepairs = 3;

export interface StampOptions {
  /** At most so many obstacles are told, the rest are counted; all where left out. */
  readonly obstacles?: number;
  /** At most so many ways out of each. */
  readonly repairs?: number;
}

/** False where nothing speaks against the job. */
export function stamp(all: readonly Obstacle[], options: StampOptions = {}): Markup | false {
  if (all.length === 0) return false;
  const { obstacles = all.length, repairs = mostRepairs } = options;
  const left = all.length - obstacles;
  return element(
    'section',
    { class: 'stamp' },
    element('p', { class: 'stamp-word' }, stampWord),
    element(
      'ol',
      {},
      all.slice(0, obstacles).map((obstacle) =>
        element(
          'li',
          {},
          element('strong', {}, obstacle.message),
          ` ${obstacle.reason}`,
          obstacle.repairs.length > 0 &&
            repairs > 0 &&
            element(
              'div',
              {},
              'What would do:',
              element(
                'ul',
                {},
                obstacle.repairs.slice(0, repairs).map((repair) => element('li', {}, repair)),
              ),
            ),
        ),
      ),
    ),
    left > 0 && element('p', {}, `${left} more in the pack.`),
  );
}

export const stampStyles = `.stamp { border: 3pt double #000; padding: 3mm 5mm; margin: 0 0 5mm; }
.stamp-word { font-size: 20pt; font-weight: bold; letter-spacing: 0.06em; text-align: center; margin: 0 0 2mm; }
.stamp ol, .stamp ul { margin: 0; }
.stamp li { font-size: 9.6pt; }
`;
