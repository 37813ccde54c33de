// Hatches that tell materials apart without colour. A drawing declares the ones it uses; ids carry the drawing's own
// prefix because many drawings share one page.

import { element, group, type Markup } from '../page/markup.js';
import { circle, path, type Stroke } from '../page/svg.js';

export type HatchPattern = 'dots' | 'left' | 'right' | 'cross' | 'level' | 'steel' | 'worn';

/** For liner layers from the screw side outwards: neighbours never look alike. */
export const layerHatches: readonly HatchPattern[] = ['dots', 'left', 'level', 'cross', 'right'];

export function hatchOfLayer(index: number): HatchPattern {
  return layerHatches[index % layerHatches.length] ?? 'dots';
}

export function hatchFill(prefix: string, hatch: HatchPattern): string {
  return `url(#${prefix}-${hatch})`;
}

export function hatchDefinitions(prefix: string, hatches: readonly HatchPattern[]): Markup {
  return group([...new Set(hatches)].map((hatch) => tile(`${prefix}-${hatch}`, drawnAs[hatch])));
}

/** What is repeated: its side, mm, how far it is turned, degrees clockwise, and what stands in it. */
interface Tile {
  readonly step: number;
  readonly turn?: number;
  readonly drawn: Markup;
}

function tile(id: string, { step, turn, drawn }: Tile): Markup {
  return element(
    'pattern',
    {
      id,
      patternUnits: 'userSpaceOnUse',
      width: step,
      height: step,
      patternTransform: turn === undefined ? undefined : `rotate(${turn})`,
    },
    drawn,
  );
}

const stripes = (turn: number, step: number, width: number): Tile => ({
  step,
  turn,
  drawn: path(`M0 0V${step}`, { width }),
});

const dot: Stroke = { width: 0, fill: '#000' };
const drawnAs: Readonly<Record<HatchPattern, Tile>> = {
  dots: { step: 1.6, drawn: group(circle([0.4, 0.4], 0.2, dot), circle([1.2, 1.2], 0.2, dot)) },
  left: stripes(-45, 1.3, 0.2),
  right: stripes(45, 1.3, 0.2),
  cross: { step: 1.8, turn: 45, drawn: path('M0 0V1.8M0 0H1.8', { width: 0.3 }) },
  level: stripes(90, 1, 0.18),
  steel: stripes(45, 0.7, 0.35),
  worn: stripes(20, 2, 0.22),
};
