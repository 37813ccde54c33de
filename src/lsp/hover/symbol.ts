// The hover of whatever a name stands for.

import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { formatDay } from '../../domain/units/calendar.js';
import type { Break, Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import type { Plant } from '../../domain/model/plant.js';
import { runsOf, type Run } from '../../domain/model/runs.js';
import type { Session } from '../session.js';
import { conveyorOf, modelOf, placeOf } from '../model-at.js';
import { keyOf } from '../forecasts.js';
import type { Declaration } from '../document-symbols.js';
import type { ResolvedSymbol } from '../symbol-index.js';
import { answersTo } from '../symbol-index.js';
import { hoverMarkdown, line, plain, type HoverLine } from './markdown.js';
import { conveyorHover, panelWords } from './conveyor.js';
import { pointHover } from './records.js';
import { linerHover, screwHover } from './specifications.js';
import { metres, mm, shown, shownToleranced } from './stated.js';

export function symbolHover(session: Session, symbol: ResolvedSymbol): string {
  if (symbol.declarations.length === 0)
    return `**${plain(symbol.name)}** is not declared in this estate${symbol.reference ? ` as a ${symbol.reference.kind}` : ''}.`;
  if (symbol.declarations.length > 1)
    return `**${plain(symbol.name)}** could be any of ${symbol.declarations.length} things called so.`;
  const [declaration] = symbol.declarations;
  return declaration ? describe(session, declaration, symbol.name) : '';
}

function describe(session: Session, declaration: Declaration, name: string): string {
  const estate = session.estate();
  const written = asWritten(declaration);
  switch (declaration.kind) {
    case 'conveyor': {
      const conveyor = conveyorOf(session, declaration);
      return conveyor ? conveyorHover(estate, conveyor, wearWords(session, declaration)) : written;
    }
    case 'liner': {
      const liner = modelOf(session, estate.liners, declaration);
      return liner ? linerHover(estate, liner) : written;
    }
    case 'screw': {
      const screw = modelOf(session, estate.screws, declaration);
      return screw ? screwHover(estate, screw) : written;
    }
    case 'plant': {
      const plant = modelOf(session, estate.plants, declaration);
      return plant ? plantHover(estate, plant) : written;
    }
    case 'point':
      return pointOrRow(session, declaration, name) ?? written;
    case 'break': {
      const conveyor = conveyorOf(session, declaration.owner);
      const found = conveyor?.breaks.find((part) => part.nameOrigin?.start === declaration.start);
      return conveyor && found ? breakHover(estate, conveyor, found) : written;
    }
    case 'layer':
      return layerHover(session, declaration) ?? written;
    default:
      return written;
  }
}

function plantHover(estate: Estate, plant: Plant): string {
  const conveyors = estate.conveyors.filter((conveyor) => conveyor.plant === plant);
  return hoverMarkdown(`**plant ${plain(plant.name)}**${plant.title ? ` ${plain(plant.title)}` : ''}`, [
    ...(plant.duty ? line('duty', shownToleranced(plant.duty)) : []),
    ...line('accepted risk', shown(plant.risk)),
    ...line('accepted risk of contact', shown(plant.contactRisk)),
    ...line('conveyors', conveyors.map(({ name }) => plain(name)).join(', ') || 'none yet'),
    ...plant.outages.flatMap(({ name, from, to }) =>
      line(`outage ${plain(name)}`, `${formatDay(from.day)} to ${formatDay(to.day)}`),
    ),
    ...plant.crews.flatMap(({ name, size, skills }) =>
      line(
        `crew ${plain(name)}`,
        `${size.count} people${skills.length > 0 ? `: ${skills.map(plain).join(', ')}` : ''}`,
      ),
    ),
  ]);
}

function pointOrRow(session: Session, declaration: Declaration, name: string): string | undefined {
  const { owner, row } = declaration;
  const conveyor = conveyorOf(session, owner);
  const isWholeRow = row && name === declaration.name;
  const points = isWholeRow
    ? (conveyor?.points.filter((point) => answersTo(declaration, point.name)) ?? [])
    : [];
  const unit = conveyor ? unitOfMachine(conveyor) : 'mm';
  const [first] = points;
  const last = points.at(-1);
  if (conveyor && first && last)
    return (
      `**points ${plain(first.name)} to ${plain(last.name)}** of ${plain(conveyor.name)}: ` +
      `${points.length} points from ${metres(unit, first.at.value)} to ${metres(unit, last.at.value)}.`
    );
  const place = conveyor && placeOf(session, conveyor, isWholeRow ? `${name}1` : name);
  return place && pointHover(session.estate(), place, owner ? wearWords(session, owner, place.name) : []);
}

function breakHover(estate: Estate, conveyor: Conveyor, found: Break): string {
  const { name, kind, from, to, allowance, drive } = found;
  const unit = unitOfMachine(conveyor);
  const runs = runsOf(conveyor);
  const beside = (label: string, run: Run | undefined): readonly HoverLine[] =>
    run
      ? line(label, `${plain(run.label)}, ${metres(unit, run.length)}, panels ${panelWords(estate, run)}`)
      : [];
  return hoverMarkdown(`**break ${plain(name)}** of ${plain(conveyor.name)}: ${kind}`, [
    ...line(
      'chainage',
      from.value === to.value
        ? metres(unit, from.value)
        : `${metres(unit, from.value)} to ${metres(unit, to.value)}`,
    ),
    ...line('allowance', shown(allowance)),
    ...line('driven by', drive),
    ...beside(
      'run below',
      runs.find((run) => run.headBreak === found),
    ),
    ...beside(
      'run above',
      runs.find((run) => run.tailBreak === found),
    ),
  ]);
}

function layerHover(session: Session, { owner, name }: Declaration): string | undefined {
  const liner = owner && modelOf(session, session.estate().liners, owner);
  const index = liner?.layers.findIndex((layer) => layer.name === name) ?? -1;
  const layer = liner?.layers[index];
  if (!liner || !layer) return undefined;
  const unit = unitOfMachine({ liner });
  const from = liner.layers.slice(0, index).reduce((sum, each) => sum + each.thickness.value, 0);
  return (
    `**layer ${plain(layer.name)}** of ${plain(liner.name)}, ${shown(layer.thickness)}: ` +
    `shows while the wear is between ${mm(unit, from, 1)} and ${mm(unit, from + layer.thickness.value, 1)}.` +
    (index === 0 ? ' It is on the screw side and wears first.' : '')
  );
}

/** What the wear model says of a conveyor or of one of its points; nothing until it has symbol. */
function wearWords(session: Session, conveyor: Declaration, point?: string): readonly string[] {
  const words = session.forecasts?.conveyors[keyOf(conveyor.document.uri, conveyor.start)];
  return (point === undefined ? words?.long : words?.points[point]?.long) ?? [];
}

/** The line as the author wrote it, where there is nothing to add or the model does not have it. */
function asWritten(declaration: Declaration): string {
  const text = declaration.node.$cstNode?.text ?? declaration.name;
  const first = text.split('\n')[0]?.replace(/\s*\{\s*$/, '') ?? '';
  return `\`\`\`troughline\n${first}\n\`\`\`\n${declaration.owner ? `${declaration.kind} of ${plain(declaration.owner.name)}` : declaration.kind}`;
}
