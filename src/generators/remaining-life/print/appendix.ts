// Where every number comes from: formulas with their symbols, units and sources, and what the words mean.

import { element, type Markup } from '../../page/markup.js';
import type { Formula } from '../../appendix/formula.js';
import { formulasOf } from '../../appendix/formulas.js';

const words: readonly (readonly [string, string])[] = [
  [
    'Exposure',
    'running hours, or tonnes, between the day a liner was fitted and the day it was looked at. ' +
      'Meter changes are joined; between records a straight line, after the newest one the duty in force',
  ],
  [
    'Middle, 80 %',
    'half of the cases come before the middle; in 80 of 100 cases the limit is reached between the two dates, in 10 before and in 10 after',
  ],
  [
    'Not inspected',
    'nothing of this liner was seen at this place. It is never taken for good; what is printed for it is borrowed from the others',
  ],
  ['Colour only', 'the layer that shows puts the wear between two layer depths and says no more'],
  [
    'Look again by',
    'half of the life that was left at the last look, by the ruling rate; at the latest the day on which the chance of the limit passes the accepted risk',
  ],
  [
    'Straight line',
    'wear is taken to go in proportion to exposure. As the worn strip widens the depth grows more slowly, so late in life a straight line is on the safe side',
  ],
];

export function appendix(): Markup {
  return element(
    'section',
    { class: 'page' },
    element('h2', {}, 'Words'),
    element(
      'dl',
      { class: 'words' },
      words.map(([word, meaning]) =>
        element('div', {}, element('dt', {}, word), element('dd', {}, `${meaning}.`)),
      ),
    ),
    element('h2', {}, 'Formulas and sources'),
    element(
      'div',
      { class: 'formulas' },
      formulasOf.wear.map((f: Formula) =>
        element(
          'div',
          { class: 'keep' },
          element('h3', {}, f.title),
          element('p', { class: 'formula' }, f.formula),
          element(
            'p',
            { class: 'small' },
            f.symbols.map((s) => `${s.symbol} ${s.meaning}${s.unit === '1' ? '' : `, ${s.unit}`}`).join('; '),
            '. ',
            element('em', {}, `${f.standing}: ${f.source}.`),
            f.note ? ` ${f.note}` : '',
          ),
        ),
      ),
    ),
  );
}
