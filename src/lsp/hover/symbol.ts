// The hover of whatever a name stands for.

import { formatDay } from '../../domain/units/calendar.js';
import { runsOf } from '../../domain/model/runs.js';
import type { Session } from '../session.js';
import { conveyorOf, modelOf, placeOf } from '../model-at.js';
import { keyOf } from '../forecasts.js';
import type { Declaration } from '../document-symbols.js';
import type { ResolvedSymbol } from '../symbol-index.js';
import { answersTo } from '../symbol-index.js';
import { hoverMarkdown, line, plain } from './markdown.js';
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
  const owner = declaration.owner;
  switch (declaration.kind) {
    case 'conveyor': {
      const conveyor = conveyorOf(session, declaration);
      return conveyor
        ? conveyorHover(estate, conveyor, wearWords(session, declaration))
        : asWritten(declaration);
    }
    case 'liner': {
      const liner = modelOf(session, estate.liners, declaration);
      return liner ? linerHover(estate, liner) : asWritten(declaration);
    }
    case 'screw': {
      const screw = modelOf(session, estate.screws, declaration);
      return screw ? screwHover(estate, screw) : asWritten(declaration);
    }
    case 'plant': {
      const plant = modelOf(session, estate.plants, declaration);
      if (!plant) return asWritten(declaration);
      return hoverMarkdown(`**plant ${plain(plant.name)}**${plant.title ? ` ${plain(plant.title)}` : ''}`, [
        ...(plant.duty ? line('duty', shownToleranced(plant.duty)) : []),
        ...line('accepted risk', shown(plant.risk)),
        ...line('accepted risk of contact', shown(plant.contactRisk)),
        ...line(
          'conveyors',
          estate.conveyors
            .filter((conveyor) => conveyor.plant === plant)
            .map((conveyor) => plain(conveyor.name))
            .join(', ') || 'none yet',
        ),
        ...plant.outages.flatMap((outage) =>
          line(
            `outage ${plain(outage.name)}`,
            `${formatDay(outage.from.day)} to ${formatDay(outage.to.day)}`,
          ),
        ),
        ...plant.crews.flatMap((crew) =>
          line(
            `crew ${plain(crew.name)}`,
            `${crew.size.count} people${crew.skills.length > 0 ? `: ${crew.skills.map(plain).join(', ')}` : ''}`,
          ),
        ),
      ]);
    }
    case 'point': {
      const conveyor = conveyorOf(session, owner);
      const place =
        conveyor &&
        placeOf(session, conveyor, declaration.row && name === declaration.name ? `${name}1` : name);
      const row =
        declaration.row && conveyor
          ? conveyor.points.filter((point) => answersTo(declaration, point.name))
          : [];
      if (row.length > 0 && name === declaration.name) {
        return `**points ${plain(row[0]?.name ?? '')} to ${plain(row.at(-1)?.name ?? '')}** of ${plain(conveyor?.name ?? '')}: ${row.length} points from ${metres(row[0]?.at.value ?? 0)} to ${metres(row.at(-1)?.at.value ?? 0)}.`;
      }
      return place
        ? pointHover(estate, place, owner ? wearWords(session, owner, place.name) : [])
        : asWritten(declaration);
    }
    case 'break': {
      const conveyor = conveyorOf(session, owner);
      const found = conveyor?.breaks.find((part) => part.nameOrigin?.start === declaration.start);
      if (!conveyor || !found) return asWritten(declaration);
      const [below, above] = [
        runsOf(conveyor).find((run) => run.headBreak === found),
        runsOf(conveyor).find((run) => run.tailBreak === found),
      ];
      return hoverMarkdown(`**break ${plain(found.name)}** of ${plain(conveyor.name)}: ${found.kind}`, [
        ...line(
          'chainage',
          found.from.value === found.to.value
            ? metres(found.from.value)
            : `${metres(found.from.value)} to ${metres(found.to.value)}`,
        ),
        ...line('allowance', shown(found.allowance)),
        ...(below
          ? line(
              'run below',
              `${plain(below.label)}, ${metres(below.length)}, panels ${panelWords(estate, below)}`,
            )
          : []),
        ...(above
          ? line(
              'run above',
              `${plain(above.label)}, ${metres(above.length)}, panels ${panelWords(estate, above)}`,
            )
          : []),
      ]);
    }
    case 'layer': {
      const liner = owner && modelOf(session, estate.liners, owner);
      const index = liner?.layers.findIndex((layer) => layer.name === declaration.name) ?? -1;
      const layer = liner?.layers[index];
      if (!liner || !layer) return asWritten(declaration);
      const from = liner.layers.slice(0, index).reduce((sum, each) => sum + each.thickness.value, 0);
      return `**layer ${plain(layer.name)}** of ${plain(liner.name)}, ${shown(layer.thickness)}: shows while the wear is between ${mm(from, 1)} and ${mm(from + layer.thickness.value, 1)}.${index === 0 ? ' It is on the screw side and wears first.' : ''}`;
    }
    default:
      return asWritten(declaration);
  }
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
