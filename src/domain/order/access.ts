// Whether people can stand where a step works: a stretch without declared access cannot be worked, and a zone served by a
// mobile platform needs a platform that reaches it. Each gap is told once, at the first step that runs into it.

import type { Access } from '../model/conveyor.js';
import type { AccessUnit } from '../model/plant.js';
import type { Step } from '../model/job.js';
import { areaOf, areasOf, overlaps, type Area } from './ground.js';
import { atTheMachine } from './side-by-side.js';
import type { Walk } from './walk-state.js';

export interface AccessSlip {
  readonly step: number;
  readonly gap: Area;
  /** Undefined where no access is declared at all there. */
  readonly zone?: Access;
  /** The platform named or at hand that does not reach. */
  readonly unit?: AccessUnit;
}

export function accessSlips(w: Walk): AccessSlip[] {
  const { job } = w.ground;
  const zones = job.conveyor.access;
  const found: AccessSlip[] = [];
  const told = new Set<Area>();
  const open = uncovered({ from: 0, to: job.conveyor.length.value }, zones.map(areaOf));
  const toldZones = new Set<Access>();
  for (const i of w.sequence.order) {
    const step = w.sequence.steps[i];
    if (!step || !atTheMachine(step) || step.action === 'gas test') continue;
    for (const area of areasOf(w.ground, i)) {
      for (const gap of open) {
        if (told.has(gap) || !overlaps(area, gap)) continue;
        found.push({ step: i, gap });
        told.add(gap);
      }
      for (const zone of zones) {
        if (toldZones.has(zone) || zone.kind !== 'mobile platform' || !overlaps(area, areaOf(zone))) continue;
        const slip = unitFor(step, zone, job.accessUnits);
        if (!slip) continue;
        found.push({ step: i, gap: areaOf(zone), zone, ...slip });
        toldZones.add(zone);
      }
    }
  }
  return found;
}

/** Undefined where a platform reaches the zone; units whose reach or whose zone's height is not stated are taken to. */
function unitFor(
  step: Step,
  zone: Access,
  units: Walk['ground']['job']['accessUnits'],
): { readonly unit?: AccessUnit } | undefined {
  const known = (step.unit ? [step.unit] : units).map(({ unit }) => unit);
  if (known.some((unit) => !unit || reaches(unit, zone))) return undefined;
  const [unit] = known;
  return unit ? { unit } : {};
}

export function reaches(unit: AccessUnit, zone: Access): boolean {
  return unit.reach === undefined || zone.height === undefined || unit.reach.value >= zone.height.value;
}

/** What is left of an area when others are taken away; slivers of a millimetre count as covered. */
function uncovered(area: Area, covers: readonly Area[]): Area[] {
  let left: Area[] = [area];
  for (const cover of covers) {
    left = left.flatMap(({ from, to }) =>
      [
        { from, to: Math.min(to, cover.from) },
        { from: Math.max(from, cover.to), to },
      ].filter((part) => part.to - part.from > 1),
    );
  }
  return left;
}
