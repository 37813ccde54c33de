// What a job renews, in words: its scope as asked for, what its panels make of it, and what its order works on beyond it.

import { panelsText } from '../../../domain/model/runs.js';
import { beyondScope } from '../../../domain/order/beyond-scope.js';
import { touches, type Ground } from '../../../domain/order/ground.js';
import { ranges, stretchText } from '../../../domain/order/words.js';
import { chainageWords, type LengthUnit } from '../../../domain/units/length-words.js';

/** What the order renews that nobody asked for: counted in the lists below, and for the author to settle (TL536). */
function beyondWords(ground: Ground): readonly string[] {
  return beyondScope(ground).map(({ run, panels }) => {
    const which = `${panels.length === 1 ? 'panel' : 'panels'} ${ranges(panels)} of run ${run.run.number}`;
    return `The order works on ${which} too, which the job does not ask for: settle it before anything is ordered.`;
  });
}

/** The panels of a stretch by chainage where they do not end where it does: they come off and go in whole. */
function otherwise(ground: Ground, index: number, unit: LengthUnit): string {
  const area = ground.scope[index];
  if (!area || ground.job.relines[index]?.stretch.kind !== 'chainage') return '';
  const told = ground.runs.flatMap(({ run, panels }) => {
    const taken = panels.filter((panel) => touches(panel, area));
    const [first, last] = [taken[0], taken.at(-1)];
    if (!first || !last) return [];
    const [from, to] = [Math.max(area.from, run.from), Math.min(area.to, run.to)];
    if (Math.abs(first.from - from) <= 1 && Math.abs(last.to - to) <= 1) return [];
    const which = panelsText(first.panel, last.panel, run.number);
    return [`${which}, ${chainageWords(first.from, unit)} to ${chainageWords(last.to, unit)}`];
  });
  return told.length === 0 ? '' : `: panels come off and go in whole, so ${told.join('; ')}`;
}

export function scopeWords(ground: Ground, unit: LengthUnit): readonly string[] {
  const { job } = ground;
  const places = ground.scope.map(
    (area) => `${chainageWords(area.from, unit)} to ${chainageWords(area.to, unit)}`,
  );
  const words = job.relines.map(({ stretch, liner }, index) => {
    const what = stretch.kind === 'all' ? 'the whole conveyor' : stretchText(stretch);
    const where = places[index] && stretch.kind !== 'chainage' ? `, ${places[index]}` : '';
    return `Reline ${what}${where}, with ${liner.name}${otherwise(ground, index, unit)}.`;
  });
  if (job.screwChange) words.push(`Change the screw to ${job.screwChange.screw.name}.`);
  return [...words, ...beyondWords(ground)];
}
