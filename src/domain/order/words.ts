// Steps and stretches as the author would write them: for messages, for quick fixes and for proposed orders. Quantities
// keep the text they were stated with, so a step that is written out again reads as it was.

import type { Heat, Step } from '../model/job.js';
import { panelsText, runUseText, sideBySide } from '../model/runs.js';
import { list } from '../units/wording.js';
import type { Stretch } from '../model/stretch.js';

/** One line of an `order { … }` block, without indentation. */
export function stepText(step: Step): string {
  const parts = [step.name === undefined ? step.action : `${step.name}: ${step.action}`];
  if (step.stretch) parts.push(stretchText(step.stretch));
  if (step.gate) parts.push(step.gate.name);
  if (step.start) parts.push(`starting at ${step.start}`);
  if (step.cutToFit) parts.push('cut to fit');
  if (step.crews.length > 0) parts.push(`by ${crewNames(step.crews)}`);
  if (step.attendants && step.attendants.length > 0) parts.push(`attended by ${crewNames(step.attendants)}`);
  if (step.unit) parts.push(`using ${step.unit.use.name}`);
  if (step.aboard) parts.push(`with ${step.aboard.count} ${step.aboard.count === 1 ? 'person' : 'people'}`);
  if (step.after.length > 0) parts.push(`after ${step.after.map((use) => use.name).join(', ')}`);
  if (step.takes) parts.push(`takes ${step.takes.text}`);
  if (step.every) parts.push(`every ${step.every.text}`);
  if (step.rest) parts.push(`${step.rest.kind} ${step.rest.time.text}`);
  if (step.heat) parts.push(heatText(step.heat));
  if (step.note !== undefined) parts.push(`"${step.note}"`);
  return parts.join(' ');
}

function crewNames(crews: Step['crews']): string {
  return crews.map((crew) => crew.use.name).join(', ');
}

/** As it stands in a step: `hot work shielded wet fire watch 60 min to be confirmed`. */
export function heatText(heat: Heat): string {
  if (heat.kind === 'cold') return 'cold work';
  return [
    'hot work',
    ...(heat.shielded ? ['shielded'] : []),
    ...(heat.wet ? ['wet'] : []),
    ...(heat.fireWatch ? [`fire watch ${heat.fireWatch.text}`] : []),
    ...(heat.confirmed ? [] : ['to be confirmed']),
  ].join(' ');
}

/** What the step does and where, without who and when: `fit panels 1 to 3 of run 2 from the tail`. */
export function sayStep(step: Step): string {
  const place = step.gate ? step.gate.name : step.stretch && stretchText(step.stretch);
  const where = place === undefined ? '' : ` ${place}`;
  return `${step.action}${where}${step.start ? ` from the ${step.start}` : ''}`;
}

export function stretchText(stretch: Stretch): string {
  switch (stretch.kind) {
    case 'all':
      return 'all';
    case 'run':
      return `run ${runUseText(stretch.run)}`;
    case 'panels':
      return panelsText(stretch.first.count, stretch.last.count, runUseText(stretch.run));
    case 'chainage':
      return `from ${stretch.from.text} to ${stretch.to.text}`;
  }
}

/** `none`, `a`, `a and b`, `a, b and c`; of more than `most` the last are counted: `a, b, c and 4 more`. */
export function listing(items: readonly string[], most = 6): string {
  return items.length === 0 ? 'none' : list(items, 'and', items.length > most ? most - 1 : most);
}

/** `1 to 3 and 5`. */
export function ranges(numbers: readonly number[]): string {
  return listing(
    sideBySide(numbers).map(({ first, last }) => (first === last ? `${first}` : `${first} to ${last}`)),
  );
}
