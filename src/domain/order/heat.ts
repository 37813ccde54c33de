// Which steps weld, cut with a flame or throw sparks, what they say about it, and how long their place is watched after.
// Polyethylene burns and drips burning, and what burns runs down the trough: liner under the work counts, and all liner
// downhill of it. Whether it is to be renewed anyway does not matter to a fire.

import type { Step } from '../model/job.js';
import { within, type Area, type Ground, type Piece } from './ground.js';

/** Hours after hot work; judgement: site permits ask for half an hour to an hour, and burning drips run far. */
export const usualFireWatch = 1;

/** Hot unless the author says otherwise: a flame forgotten hurts more than a clause too many. */
export function isHot(ground: Pick<Ground, 'job' | 'joins'>, step: Step): boolean {
  if (step.heat) return step.heat.kind === 'hot';
  const change = ground.job.screwChange;
  switch (step.action) {
    case 'patch':
      return true;
    case 'remove screw':
      return change?.cut !== 'cold';
    case 'insert screw':
      return !ground.joins && change?.joints !== 'bolted';
    case 'join screw':
      return change?.joints !== 'bolted';
    default:
      return false;
  }
}

/** Of the steps that could weld: hot as soon as one is, cold where all are done so; undefined without any. */
export function heatOfOrder(ground: Pick<Ground, 'job' | 'joins' | 'steps'>): 'hot' | 'cold' | undefined {
  if (ground.steps.some((step) => isHot(ground, step))) return 'hot';
  return ground.steps.some((step) => step.heat?.kind === 'cold' || couldBeHot.has(step.action))
    ? 'cold'
    : undefined;
}

const couldBeHot: ReadonlySet<Step['action']> = new Set([
  'patch',
  'remove screw',
  'insert screw',
  'join screw',
]);

/** True where the step demands both shields and water over the liner. */
export function isProtected(step: Step): boolean {
  return step.heat?.kind === 'hot' && step.heat.shielded && step.heat.wet;
}

/** What may not be there: panels under the work, and below it as far as the trough goes down to an end plate. */
export function linerInReach(ground: Ground, areas: readonly Area[]): Piece[] {
  const { conveyor } = ground.job;
  const panels = ground.runs.flatMap((run) => run.panels);
  if (conveyor.incline.value === 0) return within(panels, areas);
  const up = conveyor.incline.value > 0;
  const plates = conveyor.breaks
    .filter((place) => place.kind === 'end plate')
    .map((place) => (place.from.value + place.to.value) / 2);
  return panels.filter((panel) =>
    areas.some((area) => {
      const middle = (panel.from + panel.to) / 2;
      const top = up ? area.to : area.from;
      if (up ? middle > top : middle < top) return false;
      return plates.every((at) => at <= Math.min(middle, top) || at >= Math.max(middle, top));
    }),
  );
}

/** Hours that the place is to be watched once the step has ended. */
export function watchAfter(step: Step): number {
  return step.heat?.kind === 'hot' ? (step.heat.fireWatch?.value ?? usualFireWatch) : usualFireWatch;
}
