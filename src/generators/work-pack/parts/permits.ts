// Which permits and tests the job is likely to ask for, and why the model says so. A list to start the talk with the permit
// office from, never a permit.

import { troughSteel } from '../../../domain/model/trough-steel.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import { isDust } from '../../../domain/model/product-dangers.js';
import { formatHours, formatMass } from '../../../domain/units/format.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { lengthWords } from '../../../domain/units/length-words.js';
import type { Permit } from '../pack.js';

export interface PermitFacts {
  readonly unit: LengthUnit;
  readonly conveyor: Conveyor;
  readonly changesScrew: boolean;
  readonly patches: boolean;
  /** Of the order: cold work asks for no permit for a flame. */
  readonly heat: 'hot' | 'cold' | undefined;
  /** A step of the order tests the air. */
  readonly testsAir: boolean;
  readonly heaviestLift: number | undefined;
  readonly handLimit: number;
  /** Something is declared to lift with where the job works. */
  readonly saysWhatLifts: boolean;
}

export function permitsFor(facts: PermitFacts): readonly Permit[] {
  const { conveyor } = facts;
  const high = conveyor.access.filter((zone) => zone.kind !== 'ground');
  const top = Math.max(0, ...high.map((zone) => zone.height?.value ?? 0));
  const interval = conveyor.plant.gasTestInterval;
  const heavy = facts.changesScrew || (facts.heaviestLift ?? 0) > facts.handLimit;
  return [
    {
      name: 'Isolation',
      need: 'needed',
      why:
        conveyor.isolations.length > 0
          ? `${conveyor.isolations.length} isolation point${conveyor.isolations.length === 1 ? '' : 's'} declared.`
          : 'No isolation point is declared for this conveyor: find and list them before the job.',
      ask: 'Person in charge of the isolation; lock and tag numbers.',
    },
    {
      name: 'Confined-space entry',
      need: conveyor.confinedSpace ? 'needed' : 'to be judged on site',
      why: conveyor.confinedSpace
        ? 'Declared a confined space.'
        : 'Not declared a confined space; a covered trough can still be one.',
      ask: 'Entry permit, person outside, rescue plan.',
    },
    {
      name: 'Gas test',
      need: conveyor.confinedSpace || facts.testsAir ? 'needed' : 'to be judged on site',
      why: airWords(conveyor.confinedSpace || facts.testsAir, interval?.value),
      ask: `${gasesAsked(conveyor)}; instrument and its check date.`,
    },
    ...hotWork(facts),
    {
      name: 'Work at height',
      need: high.length > 0 ? 'needed' : 'to be judged on site',
      why:
        high.length > 0
          ? `Access by ${[...new Set(high.map((zone) => zone.kind))].join(', ')}${top > 0 ? `, up to ${lengthWords(top, facts.unit)} above the ground` : ''}.`
          : 'Only ground access is declared.',
      ask: 'Inspection tags, operator’s licence, weather limits, rescue from height.',
    },
    {
      name: 'Lifting',
      need: heavy ? 'needed' : 'to be judged on site',
      why:
        (facts.changesScrew
          ? 'The spiral comes out and goes in by crane.'
          : facts.heaviestLift === undefined
            ? 'No mass is known.'
            : `Heaviest single piece about ${formatMass(facts.heaviestLift)}${heavy ? ', more than one person should lift' : ''}.`) +
        gearWords(facts, heavy),
      ask: 'Lift plan, gear certificates, person in charge of lifting.',
    },
  ];
}

/** What is declared to come off the material, and what comes off what rots; no gas test measures dust. */
function gasesAsked({ givesOff }: Conveyor): string {
  const gases = (givesOff ?? []).filter((each) => !isDust(each));
  const usual = ['hydrogen sulphide', 'carbon dioxide', 'ammonia'];
  return ['Flammable', 'oxygen', ...new Set([...gases, ...usual])].join(', ');
}

/** What is asked for has to be there: whoever issues the pack says what lifts, or is told that nobody has said it. */
function gearWords({ saysWhatLifts }: PermitFacts, heavy: boolean): string {
  return heavy && !saysWhatLifts ? ' What lifts there is not written: name it before the job.' : '';
}

function hotWork({ heat, patches, changesScrew, conveyor }: PermitFacts): readonly Permit[] {
  if (heat === 'cold') return [];
  const hot = heat === 'hot';
  return [
    {
      name: 'Hot work',
      need: hot ? 'needed' : 'only if it comes up',
      why: !hot
        ? 'If the bare trough turns out to need a patch.'
        : patches
          ? 'The order holds patching of the trough.'
          : changesScrew
            ? 'The spiral is cut or welded.'
            : 'A step of the order is hot work.',
      ask: `Welder’s qualification, gas test, shielding, fire watch and its length. ${weldingWords(conveyor)}`,
    },
  ];
}

/** What the trough's steel asks of a weld and of the air about it; common knowledge of the trade, a competent welder decides. */
function weldingWords({ trough }: Conveyor): string {
  const { family, named } = troughSteel(trough.material);
  if (!named) return 'The trough’s steel is not known here: find out before welding.';
  switch (family) {
    case 'carbon':
      return `Trough of ${trough.material}: plate and filler to suit; paint the weld’s back.`;
    case 'galvanised':
      return `Trough of ${trough.material}: grind the zinc off first, its fumes make ill; extraction.`;
    case 'austenitic':
    case 'ferritic':
      return (
        `Trough of ${trough.material}: plate and filler to suit, tools free of carbon steel; ` +
        'fumes hold chromium(VI) and nickel: extraction.'
      );
  }
}

/** @param interval between two tests, h */
function airWords(tested: boolean, interval: number | undefined): string {
  if (!tested)
    return (
      'No step tests the air. If the site judges this a confined space: ' +
      `${interval === undefined ? 'before covers come off' : `every ${formatHours(interval)}`} and after every break.`
    );
  return interval === undefined
    ? 'Before covers come off, after every break, and when material is moved.'
    : `The plant asks for a test every ${formatHours(interval)}, and again after every break and when material is moved.`;
}
