// What is known and what follows for a conveyor: runs and panels, liner mass, speed along the axis, capacity, power,
// clearance. The formulas are those of domain/geometry; each line names its source.

import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import type { LengthUnit } from '../../domain/units/length-words.js';
import { linerSide } from '../../domain/model/liner-side.js';
import { formatValue, formatNumber, formatMass } from '../../domain/units/format.js';
import { inclineBand, massFlow, volumeFlow, type Sweep } from '../../domain/geometry/capacity.js';
import { linerRadius, radialClearance } from '../../domain/geometry/clearance.js';
import { axialSpeed, conveyingPower, rise, spiralFriction, torque } from '../../domain/geometry/drive.js';
import { developedWidth, linerMassPerMetre } from '../../domain/geometry/trough.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { asDriven, driveChangesOf, presentDrive } from '../../domain/model/present-drive.js';
import { emptyDrag } from '../../domain/model/empty-drag.js';
import { historyOf } from '../../domain/model/history.js';
import { newestDay } from '../../domain/model/newest.js';
import { installedPanels } from '../../domain/model/panels.js';
import { runsOf, type Run } from '../../domain/model/runs.js';
import { formatDay } from '../../domain/units/calendar.js';
import { attempt, hoverMarkdown, line, plain, type HoverLine } from './markdown.js';
import { assumptions, metres, mm, shown, shownToleranced } from './stated.js';

export function conveyorHover(estate: Estate, conveyor: Conveyor, wear: readonly string[] = []): string {
  const { screw, liner, trough } = conveyor;
  const unit = unitOfMachine(conveyor);
  const driven = asDriven(estate, conveyor);
  const risen = attempt(() => rise(conveyor.length.value, conveyor.incline.value));
  return hoverMarkdown(
    `**conveyor ${plain(conveyor.name)}**${conveyor.title ? ` ${plain(conveyor.title)}` : ''}`,
    [
      ...line('plant', plain(conveyor.plant.name)),
      ...line(
        'length',
        `${shown(conveyor.length)} at ${shown(conveyor.incline)}${risen === undefined ? '' : `, rises ${metres(unit, risen)}`}`,
      ),
      ...line(
        'screw',
        `${plain(screw.name)}: ${screw.kind.kind}, ${shown(screw.outsideDiameter)} diameter, ` +
          `${shown(screw.pitch)} pitch${screw.hand ? `, ${screw.hand} hand` : ''}`,
      ),
      ...line(
        'liner',
        `${plain(liner.name)}: ${liner.layers.map((layer) => `${plain(layer.name)} ${layer.thickness.text}`).join(', ')}; condemned at ${shown(liner.condemn)}`,
      ),
      ...((conveyor.duty ?? conveyor.plant.duty)
        ? line('duty', shownToleranced(conveyor.duty ?? conveyor.plant.duty!))
        : []), // one of the two is there, by the condition
      ...driveLines(estate, conveyor),
      ...speedLines(driven),
      ...capacityLines(driven),
      ...linerLines(conveyor),
      ...clearanceLine(unit, trough.insideRadius.value, liner.thickness.value, screw.outsideDiameter.value),
      ...recordLines(estate, conveyor),
    ],
    [
      wear.map(plain).join(' '),
      runTable(estate, conveyor),
      ...assumptions([
        conveyor.length,
        conveyor.incline,
        screw.outsideDiameter,
        screw.pitch,
        liner.condemn,
        liner.density,
        conveyor.fill,
        conveyor.bulkDensity,
      ]),
      conveyor.doc ? plain(conveyor.doc) : '',
    ].filter((part) => part !== ''),
  );
}

/** Nothing where the drive is as it was built. */
function driveLines(estate: Estate, conveyor: Conveyor): HoverLine[] {
  const last = driveChangesOf(estate, conveyor, undefined).at(-1);
  const { power, speed } = presentDrive(estate, conveyor) ?? {};
  const now = [power && shown(power), speed && shown(speed)].filter(Boolean).join(', ');
  return last ? line('drive', `${now}, changed on ${formatDay(last.date.day)}`) : [];
}

function speedLines({ screw, drive }: Conveyor): HoverLine[] {
  const speed = drive?.speed;
  if (!speed) return [];
  const v = attempt(() => axialSpeed(screw.pitch.value, speed.value));
  return v === undefined
    ? []
    : line(
        'axial speed',
        formatValue(v, 'velocity', { digits: 3 }),
        `v = S·n/60 = ${shown(screw.pitch)} × ${shown(speed)} / 60; nothing slips back`,
      );
}

function capacityLines(conveyor: Conveyor): HoverLine[] {
  const { screw, drive, fill, bulkDensity } = conveyor;
  if (!drive?.speed || !fill) return [];
  const sweep: Sweep = {
    outside: screw.outsideDiameter.value,
    core: screw.kind.kind === 'shafted' ? screw.kind.shaft.value : 0,
    pitch: screw.pitch.value,
    speed: drive.speed.value,
    fill: fill.value,
  };
  const band = attempt(() => inclineBand(conveyor.incline.value));
  const level = attempt(() => volumeFlow(sweep));
  if (level === undefined) return [];
  const inclined =
    band && band.to < 1
      ? `; the incline leaves about ${formatNumber(band.from * 100, 0)} to ${formatNumber(band.to * 100, 0)} %`
      : '';
  const lines = line(
    'capacity, level',
    `${formatNumber(level, 1)} m³/h at ${shown(fill)} fill${inclined}`,
    'Q = 47.124·(D² − d²)·S·n·φ, the usual screw form (ISO 7119); the band for the incline is for warnings, not for design',
  );
  if (!bulkDensity) return lines;
  const flow = attempt(() => massFlow(sweep, bulkDensity.value));
  if (flow === undefined) return lines;
  lines.push(...line('mass flow, level', `${formatNumber(flow, 1)} t/h at ${shown(bulkDensity)}`));
  const factor = conveyor.resistanceFactor;
  if (factor) {
    const carried = conveyor.capacity?.value ?? flow;
    const power = attempt(() =>
      conveyingPower({
        massFlow: carried,
        length: conveyor.length.value,
        rise: rise(conveyor.length.value, conveyor.incline.value),
        resistanceFactor: factor.value,
        diameter: screw.outsideDiameter.value,
      }),
    );
    const drag = emptyDrag(conveyor);
    if (power) {
      lines.push(
        ...line(
          'power at the screw',
          `${formatNumber(power.material + power.lift + Math.max(power.empty, drag ?? 0), 2)} kW for ${formatNumber(carried, 1)} t/h`,
          drag === undefined
            ? 'P = Q(λL + H)/367 + D·L/20 (ISO 7119)'
            : 'P = Q(λL + H)/367 + D·L/20 (ISO 7119), with the drag of the spiral in place of the last term where that is more',
        ),
      );
      if (drag !== undefined)
        lines.push(
          ...line(
            'empty spiral',
            `${formatNumber(power.empty, 2)} kW by D·L/20, ${formatNumber(drag, 2)} kW by its drag on the liner`,
            `μ·m·g·cos α·π·D·n/60 with μ = ${spiralFriction}; too low where material wedges under the spiral, too high where material carries part of it`,
          ),
        );
    }
  }
  if (drive.power) {
    const rated = drive.power;
    const speed = drive.speed;
    const moment = attempt(() => torque(rated.value, speed.value));
    if (moment !== undefined)
      lines.push(...line('torque at rated power', `${formatNumber(moment, 0)} N·m`, 'T = 9550·P/n'));
  }
  return lines;
}

function linerLines(conveyor: Conveyor): HoverLine[] {
  const { trough, liner } = conveyor;
  const unit = unitOfMachine(conveyor);
  const section = {
    insideRadius: trough.insideRadius.value,
    sideHeight: linerSide(conveyor).value,
    thickness: liner.thickness.value,
  };
  const width = attempt(() => developedWidth(section));
  const perMetre = attempt(() => linerMassPerMetre(section, liner.density.value));
  if (width === undefined || perMetre === undefined) return [];
  const lined = runsOf(conveyor).reduce((sum, run) => sum + run.length, 0);
  return [
    ...line(
      'liner sheet',
      `${mm(unit, width)} wide unrolled`,
      `W = π(R − t/2) + 2h = π(${mm(unit, section.insideRadius)} − ${mm(unit, section.thickness, 1)}/2) + 2 × ${mm(unit, section.sideHeight)}`,
    ),
    ...line(
      'liner mass',
      `${formatNumber(perMetre, 2)} kg/m, ${formatMass((perMetre * lined) / 1000)} for ${metres(unit, lined)} lined`,
      `W·t·ρ with ρ = ${shown(liner.density)}`,
    ),
  ];
}

function clearanceLine(unit: LengthUnit, radius: number, thickness: number, diameter: number): HoverLine[] {
  const clearance = attempt(() => radialClearance(radius, thickness, diameter));
  const inside = attempt(() => linerRadius(radius, thickness));
  if (clearance === undefined || inside === undefined) return [];
  return line(
    'radial clearance, new',
    mm(unit, clearance, 1),
    `liner radius ${mm(unit, inside, 1)} less half the screw’s diameter`,
  );
}

function recordLines(estate: Estate, conveyor: Conveyor): HoverLine[] {
  const history = historyOf(estate, conveyor);
  const last = history.inspections.at(-1);
  const total = history.hours.knots.at(-1)?.total;
  return [
    ...line(
      'records',
      history.inspections.length === 0
        ? 'no inspection yet'
        : `${history.inspections.length} inspections, newest ${formatDay((last?.inspection.date.day ?? newestDay(estate))!)}`,
    ), // a list that is not empty has a last one
    ...(total === undefined
      ? []
      : line(
          'running hours',
          `${formatValue(total, 'duration', { digits: 0 })} ${history.start.kind === 'commissioned' ? 'since commissioning' : 'on record'}`,
        )),
  ];
}

function runTable(estate: Estate, conveyor: Conveyor): string {
  const unit = unitOfMachine(conveyor);
  const rows = runsOf(conveyor).map((run) => {
    const panels = panelWords(estate, run);
    const between = `${plain(run.tailBreak.name)} to ${plain(run.headBreak.name)}`;
    const chainage = `${metres(unit, run.from)} to ${metres(unit, run.to)}`;
    return `| ${run.number} | ${between} | ${chainage} | ${panels} |`;
  });
  return rows.length === 0
    ? ''
    : ['| run | between | chainage | panels |', '| --: | :-- | :-- | :-- |', ...rows].join('\n');
}

/** `9 × 1200 mm, closing 350 mm`, tail to head, as recorded or as it would be laid out. */
export function panelWords(estate: Estate, run: Run): string {
  const unit = unitOfMachine(run.conveyor);
  const installed = attempt(() => installedPanels(estate, run));
  if (!installed) return '';
  const { panels } = installed.layout;
  const whole = new Map<number, number>();
  for (const panel of panels) if (!panel.closing) whole.set(panel.length, (whole.get(panel.length) ?? 0) + 1);
  const closing = panels.find((panel) => panel.closing);
  const words = [...whole].map(([length, count]) => `${count} × ${mm(unit, length)}`);
  if (closing) words.push(`closing ${mm(unit, closing.length)}`);
  return `${panels.length}: ${words.join(', ')}${installed.recorded ? ', as recorded' : ''}`;
}
