// Where every number comes from: formulas, sources, words.

import { element, type Markup } from '../../page/markup.js';

const entries: readonly { readonly head: string; readonly formula?: string; readonly text: string }[] = [
  { head: 'Exposure', text: 'Running hours (or tonnes) between the day a liner was fitted and the day it was looked at. Meter changes are joined; between records a straight line, after the newest record the duty in force.' },
  { head: 'Long-term rate', formula: 'LT = (fitted thickness − last thickness) / exposure', text: 'Form of API 570 and API 510 (remaining life of thinning walls); method only, the limits are those declared for the liner.' },
  { head: 'Short-term rate', formula: 'ST = (last but one thickness − last thickness) / exposure between', text: 'As above. The larger of LT and ST rules.' },
  { head: 'Remaining life', formula: 'RL = (last thickness − condemn limit) / ruling rate', text: 'As above. Look again after half of it at the latest.' },
  { head: 'Colours', formula: 'depth reached / exposure ≤ rate ≤ next depth / exposure', text: 'A layer that shows puts the wear between two layer depths. Common practice on liners of two equal layers: the second colour showing means half the life is used.' },
  { head: 'Straight line', text: 'Wear is taken to go in proportion to exposure. As the worn strip widens the depth grows more slowly, so late in life a straight line is on the safe side.' },
];

export function appendix(): Markup {
  return element('section', { class: 'page' }, element('h2', {}, 'Formulas and sources'),
    entries.map(({ head, formula, text }) => element('div', { class: 'keep' },
      element('h3', {}, head), formula !== undefined && element('p', { class: 'formula' }, formula), element('p', {}, text))));
}
