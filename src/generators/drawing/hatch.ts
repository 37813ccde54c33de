// Hatches that tell materials apart without colour. A drawing declares the ones it uses; ids carry the drawing's own
// prefix because many drawings share one page.

export type HatchPattern = 'dots' | 'left' | 'right' | 'cross' | 'level' | 'steel' | 'worn';

/** For liner layers from the screw side outwards: neighbours never look alike. */
export const layerHatches: readonly HatchPattern[] = ['dots', 'left', 'level', 'cross', 'right'];

export function hatchOfLayer(index: number): HatchPattern {
  return layerHatches[index % layerHatches.length] ?? 'dots';
}

export function hatchFill(prefix: string, hatch: HatchPattern): string {
  return `url(#${prefix}-${hatch})`;
}

export function hatchDefinitions(prefix: string, hatches: readonly HatchPattern[]): string {
  return [...new Set(hatches)]
    .map(
      (hatch) => `<pattern id="${prefix}-${hatch}" patternUnits="userSpaceOnUse" ${drawnAs[hatch]}</pattern>`,
    )
    .join('');
}

const stripes = (turn: number, step: number, width: number): string =>
  `width="${step}" height="${step}" patternTransform="rotate(${turn})"><path d="M0 0V${step}" stroke="#000" stroke-width="${width}"/>`;

const drawnAs: Readonly<Record<HatchPattern, string>> = {
  dots: 'width="1.6" height="1.6"><circle cx="0.4" cy="0.4" r="0.2"/><circle cx="1.2" cy="1.2" r="0.2"/>',
  left: stripes(-45, 1.3, 0.2),
  right: stripes(45, 1.3, 0.2),
  cross:
    'width="1.8" height="1.8" patternTransform="rotate(45)"><path d="M0 0V1.8M0 0H1.8" stroke="#000" stroke-width="0.3" fill="none"/>',
  level: stripes(90, 1, 0.18),
  steel: stripes(45, 0.7, 0.35),
  worn: stripes(20, 2, 0.22),
};
