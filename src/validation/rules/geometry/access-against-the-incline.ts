// Does a machine that is said to fall have its high platforms at the head, or one that is said to rise at the tail? The sign of the
// incline decides from which end panels are fitted, what slides where, and which gate holds back what is above people.

import type { Access, Conveyor } from '../../../domain/model/conveyor.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import { replace } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

/** mm; less than that is uneven ground, or a step [judgement]. */
const told = 1000;

export const accessAgainstTheIncline: Rule = {
  code: 'TL558',
  title: 'Incline that goes the other way than the heights of the access',
  severity: 'warning',
  restsOn: ['machine'],
  why:
    'Above and below change places with the sign of the incline: panels would be fitted from the lower end, and the gate that is shut ' +
    'would lie below the people.',
  todo: 'A positive incline rises in the direction of flow, from tail to head; correct its sign, or the heights.',
  given: 'conveyor',
  example: `
  incline «-20 deg|20 deg»
  access Low at 0 m to 5 m ground
  access High at 5 m to 12 m platform height 3 m`,
  cases: [
    {
      name: 'by less than the ground may differ',
      text: `
  incline -2 deg
  access Low at 0 m to 5 m ground
  access High at 5 m to 12 m platform height 0.9 m`,
    },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const { incline, name } = conveyor;
      const [low, high] = endsOf(conveyor);
      if (!low || !high) return;
      const rise = heightOf(high) - heightOf(low);
      const said = Math.sin((incline.value * Math.PI) / 180) * (middleOf(high) - middleOf(low));
      if (Math.abs(rise) < told || Math.abs(said) < told || Math.sign(rise) === Math.sign(said)) return;
      yield {
        origin: incline.origin,
        message:
          `${name} is said to ${said > 0 ? 'rise' : 'fall'} in the direction of flow, and its access is ` +
          `${lengthOn(conveyor, Math.abs(rise))} ${rise > 0 ? 'higher' : 'lower'} at ${high.name} than at ${low.name}.`,
        related: [low, high].map((zone) => ({ origin: zone.origin, message: `access ${zone.name}` })),
        fixes: [
          replace(incline.origin, incline.text.startsWith('-') ? incline.text.slice(1) : `-${incline.text}`),
        ],
      };
    },
  ),
};

/** The zones with a known height that lie nearest to tail and head. */
function endsOf({ access }: Conveyor): readonly [Access | undefined, Access | undefined] {
  const known = access
    .filter(({ kind, height }) => kind === 'ground' || height !== undefined)
    .sort((a, b) => middleOf(a) - middleOf(b));
  return [known[0], known.at(-1)];
}

/** Above the ground, mm. */
function heightOf({ height }: Access): number {
  return height?.value ?? 0;
}

function middleOf({ from, to }: Access): number {
  return (from.value + to.value) / 2;
}
