// Keys to the drawings, in words and with the marks themselves, so that no reader has to guess and no colour has to be seen.

import { element, group, type Markup } from '../../page/markup.js';
import {
  definitions,
  hatch,
  hatchFill,
  ink,
  line,
  mark,
  path,
  rectangle,
  letters,
  type MarkShape,
} from '../../page/svg.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { sizesOf } from '../sizes.js';

export function chartKey(modelled: boolean, changed = false): Markup {
  return element(
    'span',
    { class: 'key' },
    item(mark('disc', [14, 8], 4), 'thickness, with gauge error'),
    item(
      group(
        line([14, 2], [14, 14], { width: 1.6 }),
        line([11, 2], [17, 2], { width: 1.6 }),
        line([11, 14], [17, 14], { width: 1.6 }),
      ),
      'colour only: somewhere in this layer',
    ),
    item(mark('cross', [14, 8], 4), 'steel showing'),
    item(letters([14, 13], '?', { anchor: 'middle', size: 13, bold: true }), 'looked for, not seen'),
    item(line([1, 8], [27, 8], { width: 1.6, dash: '5 3' }), 'hand arithmetic at the ruling rate'),
    modelled
      ? item(
          group(
            path('M1 8L27 2L27 14Z', { fill: ink.blue, opacity: 0.22, colour: ink.blue, width: 1 }),
            line([1, 8], [27, 8], { colour: ink.blue, width: 2 }),
          ),
          'model: median, and 80 % of its interval',
        )
      : item(
          line([1, 8], [27, 8], { colour: ink.grey, width: 1.4 }),
          'least squares through the fitted thickness; no model',
        ),
    item(line([1, 8], [27, 8], { colour: ink.vermilion, width: 2, dash: '8 3' }), 'condemn limit'),
    changed &&
      item(
        group(
          line([14, 1], [14, 15], { width: 1.2, dash: '9 3 2 3' }),
          path('M14 1L20 4L14 7Z', { fill: ink.black, width: 0 }),
        ),
        'look since which the rate may have changed',
      ),
  );
}

export function mapKey(life: ConveyorLife): Markup {
  const shape = (kind: MarkShape): Markup => mark(kind, [14, 8], 4);
  const id = `${life.conveyor.name.replace(/[^A-Za-z0-9]/g, '')}-key`;
  return group(
    'Seen from above, flow from left to right; along to scale, across not. ',
    element(
      'span',
      { class: 'key' },
      item(shape('disc'), `thickness, ${sizesOf(life.conveyor).near} left`),
      item(shape('square'), 'colour only'),
      item(shape('cross'), 'steel showing'),
      item(shape('ring'), 'not inspected'),
      item(
        group(
          definitions(hatch(`${id}-u`, 'diagonal', { spacing: 7, colour: '#8c8c8c' })),
          rectangle(1, 1, 26, 14, { fill: hatchFill(`${id}-u`), width: 1 }),
        ),
        'panel with no reading',
      ),
      life.runs.some((r) => r.panels.some((p) => p.state === 'not seen')) &&
        item(
          group(
            definitions(hatch(`${id}-h`, 'dots', { spacing: 6, colour: '#595959', width: 1.1 })),
            rectangle(1, 1, 26, 14, { fill: hatchFill(`${id}-h`), width: 1 }),
          ),
          'looked for, not seen',
        ),
      life.worst && item(rectangle(2, 2, 24, 12, { colour: ink.vermilion, width: 3 }), 'limit comes first'),
      life.conveyor.wornSector &&
        item(rectangle(12, 1, 4, 14, { fill: ink.vermilion, width: 0 }), 'worn sector'),
    ),
  );
}

function item(drawing: Markup, words: string): Markup {
  return element(
    'span',
    {},
    element('svg', { viewBox: '0 0 28 16', width: 28, height: 16, 'aria-hidden': 'true' }, drawing),
    words,
  );
}

export function timelineKey(): Markup {
  return element(
    'span',
    { class: 'key' },
    item(
      group(
        rectangle(1, 6.5, 26, 3, { fill: ink.blue, width: 0 }),
        rectangle(5, 3.5, 18, 9, { fill: ink.blue, width: 0 }),
        mark('diamond', [13, 8], 4.4, { fill: '#ffffff', width: 1.3 }),
      ),
      'limit reached: middle, 80 % (thick), 90 % (thin)',
    ),
    item(rectangle(8, 1, 12, 14, { fill: '#d9d9d9', width: 0 }), 'planned outage'),
    item(rectangle(8, 1.5, 12, 13, { fill: '#d9d9d9', width: 1.8 }), 'reline here'),
    item(mark('triangle down', [14, 8], 5, { fill: ink.vermilion, width: 0.8 }), 'order the liner by'),
  );
}
