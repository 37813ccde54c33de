// Liner and screw as bought, with what follows from them.

import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { unitOf } from '../../domain/units/length-words.js';
import { formatNumber } from '../../domain/units/format.js';
import { edgeLength, flatBlank, flightMassPerMetre } from '../../domain/geometry/helix.js';
import type { Estate } from '../../domain/model/estate.js';
import type { LinerSpecification, ScrewSpecification } from '../../domain/model/specifications.js';
import { attempt, hoverMarkdown, line, plain } from './markdown.js';
import { assumptions, mm, shown, shownToleranced } from './stated.js';

export function linerHover(estate: Estate, liner: LinerSpecification): string {
  const unit = unitOfMachine({ liner });
  let depth = 0;
  const layers = liner.layers.map((layer) => {
    const from = depth;
    depth += layer.thickness.value;
    return `${plain(layer.name)} ${layer.thickness.text} (shows from ${mm(unit, from, 1)} of wear)`;
  });
  const used = estate.conveyors
    .filter((conveyor) => conveyor.liner === liner)
    .map((conveyor) => plain(conveyor.name));
  return hoverMarkdown(
    `**liner ${plain(liner.name)}**${liner.title ? ` ${plain(liner.title)}` : ''}`,
    [
      ...line('material', plain(liner.material)),
      ...line('layers, screw side first', layers.join('; ')),
      ...line('thickness', shown(liner.thickness, unit)),
      ...line(
        'condemned at',
        `${shown(liner.condemn, unit)} left, after ${mm(unit, liner.thickness.value - liner.condemn.value, 1)} of wear`,
      ),
      ...line(
        'panels',
        `${liner.panelLengths.map(({ text }) => text).join(', ')} ± ${shown(liner.panelTolerance, unit)}`,
      ),
      ...line('joint', liner.joint.policy === 'gap' ? `gap ${liner.joint.gap.text}` : liner.joint.policy),
      ...line('density', shown(liner.density)),
      ...line('expansion', shown(liner.expansion)),
      ...line('modulus', shown(liner.modulus)),
      ...line('maximum temperature', shown(liner.maximumTemperature)),
      ...(liner.expectedLife ? line('expected life', shownToleranced(liner.expectedLife)) : []),
      ...line('used by', used.length > 0 ? used.join(', ') : 'no conveyor yet'),
    ],
    [
      ...assumptions([
        liner.thickness,
        liner.condemn,
        liner.panelTolerance,
        liner.density,
        liner.expansion,
        liner.modulus,
        liner.maximumTemperature,
      ]),
      ...(liner.doc ? [plain(liner.doc)] : []),
    ],
  );
}

export function screwHover(estate: Estate, screw: ScrewSpecification): string {
  const used = estate.conveyors
    .filter((conveyor) => conveyor.screw === screw)
    .map((conveyor) => plain(conveyor.name));
  const unit = unitOf([screw.outsideDiameter.text]);
  const flight = screw.flight;
  const outside = screw.outsideDiameter.value;
  const shape = flight && { outside, inside: outside - 2 * flight.width.value, pitch: screw.pitch.value };
  const mass = shape && attempt(() => flightMassPerMetre(shape, flight.thickness.value, screw.density.value));
  const edge = attempt(() => edgeLength(outside, screw.pitch.value));
  const blank = shape && screw.kind.kind === 'shafted' ? attempt(() => flatBlank(shape)) : undefined;
  return hoverMarkdown(
    `**screw ${plain(screw.name)}**${screw.title ? ` ${plain(screw.title)}` : ''}`,
    [
      ...line(
        'kind',
        screw.kind.kind === 'shafted' ? `on a shaft of ${shown(screw.kind.shaft)}` : 'shaftless',
      ),
      ...line('outside diameter', shown(screw.outsideDiameter)),
      ...line('pitch', `${shown(screw.pitch)}, ${formatNumber(screw.pitch.value / outside, 2)} × diameter`),
      ...(screw.hand ? line('hand', screw.hand) : []),
      ...(flight ? line('flight', `${flight.width.text} by ${flight.thickness.text}`) : []),
      ...(edge === undefined ? [] : line('outer edge a turn', mm(unit, edge), 'L = √((πD)² + S²)')),
      ...(blank === undefined
        ? []
        : line(
            'flat blank of a turn',
            `${mm(unit, 2 * blank.outerRadius)} outside, ${mm(unit, 2 * blank.innerRadius)} inside`,
            `${formatNumber(blank.gap, 1)}° cut out`,
          )),
      ...(mass === undefined
        ? []
        : line(
            'flight mass',
            `${formatNumber(mass, 1)} kg/m`,
            `area of the helicoid a turn × thickness × density ${shown(screw.density)} / pitch`,
          )),
      ...line('used by', used.length > 0 ? used.join(', ') : 'no conveyor yet'),
    ],
    [...assumptions([screw.density]), ...(screw.doc ? [plain(screw.doc)] : [])],
  );
}
