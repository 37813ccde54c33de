// The usual cautions, chosen by what the job does. They advise: the law, the site's permits, the makers' instructions and
// competent, licensed people decide. Figures are from the sources named with each.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import {
  carriesGerms,
  causticOf,
  isDust,
  isMineralDust,
  type Caustic,
} from '../../../domain/model/product-dangers.js';
import { hoppersWords } from '../../../domain/model/stands-above.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import type { Caution } from '../pack.js';

export interface CautionFacts {
  readonly conveyor: Conveyor;
  readonly unit: LengthUnit;
  /** What keeps people from the screw and is out of order, in words; undefined where nothing is. */
  readonly safeguardsOut: string | undefined;
  readonly changesScrew: boolean;
  /** Of the order, by its steps. */
  readonly heat: 'hot' | 'cold' | undefined;
  /** Whether a step runs the trough empty before it is isolated. */
  readonly empties: boolean;
  readonly heaviestByHand: number | undefined;
  /** Force down the slope of the unbolted spiral, N; undefined where the screw stays or its mass is not known. */
  readonly downSlope: number | undefined;
}

export const standingCaution =
  'This pack is advice worked out from records. ' +
  'It does not clear a machine for work and is no permit: local law, the site’s rules and permits, ' +
  'the makers’ instructions and competent, licensed people come first. ' +
  'If what you find differs from what stands here, stop and ask.';

export function cautionsFor(facts: CautionFacts): readonly Caution[] {
  const { conveyor } = facts;
  return [
    ...(facts.safeguardsOut === undefined ? [] : [safeguards(facts.safeguardsOut)]),
    isolation(facts),
    ...above(facts),
    enclosedSpace(facts),
    ...burnsSkin(conveyor),
    ...germsOf(conveyor),
    ...(conveyor.access.some((zone) => zone.kind !== 'ground') ? [height] : []),
    lifting(facts),
    facts.heat === 'cold' ? coldWork : hotWork(facts),
  ];
}

function safeguards(out: string): Caution {
  return {
    heading: 'Safeguards out of order',
    text: [
      `Found and not closed: ${out}. Count on none of them: nobody stands where only these would keep them from the screw or stop it.`,
      'Settle before the first step who puts them right. Before the trial run each is tried; ' +
        'whether the machine may run without one is for the site’s competent person to decide.',
    ],
    sources: 'EN ISO 14120 for guards, EN ISO 13850 for stops, EN ISO 14119 for interlocks',
  };
}

function isolation(facts: CautionFacts): Caution {
  return {
    heading: 'Isolation and stored energy',
    text: [
      'A screw conveyor can start from a distance and can move when nobody starts it: ' +
        'the spiral is a spring, material above can slide, and parts on a slope want to go down it.',
      facts.changesScrew && facts.downSlope !== undefined
        ? `The unbolted spiral pulls down the slope with about ${(facts.downSlope / 1000).toFixed(2)} kN ` +
          'before friction. Restrain it before the drive plate is undone.'
        : 'Hands, feet and tools stay out of the spiral until it is isolated and proved dead.',
      'A spiral that has jammed stays wound up between the blockage and its gearbox, ' +
        'and turns by itself when the blockage goes, also when it is isolated. ' +
        'A competent person lets the twist out, turning it back under control, ' +
        'before anybody reaches in or loosens the drive.',
      facts.empties
        ? 'Run empty before isolation, with the guards on: what is left in the trough can slide, and has to come out by hand.'
        : 'No step runs the trough empty before isolation. ' +
          'Where that cannot be done, what lies in it is weight on the spiral and can slide: ' +
          'say in the method how it is held and taken out.',
    ],
    sources: 'EN ISO 14118; 29 CFR 1910.147 in the USA',
  };
}

/** A hopper opens onto the screw: what hangs in it waits for whoever touches it from below. */
function above({ conveyor, unit }: CautionFacts): readonly Caution[] {
  const hoppers = hoppersWords(conveyor, unit);
  if (hoppers.length === 0) return [];
  return [
    {
      heading: 'Material above',
      text: [
        `Over the screw: ${hoppers.join('; ')}. What bridges or sticks there comes down without a sign, and more than a person can bear.`,
        'It is emptied, or held off by what the site trusts, and looked into from outside before anybody goes in or reaches in below it; ' +
          'nobody pokes at it from below, and what feeds it is isolated too.',
      ],
      sources: 'EN ISO 14118 for stored energy; the site’s own isolation procedure',
    },
  ];
}

function enclosedSpace({ conveyor, heat }: CautionFacts): Caution {
  return {
    heading: conveyor.confinedSpace ? 'Confined space, declared for this conveyor' : 'Enclosed space and gas',
    text: [
      ...gasesOf(conveyor),
      'Air counts as dangerous above 10 % of the lower flammable limit, ' +
        'below 19.5 % or above 23.5 % oxygen, or above the site’s limit for any toxic gas. ' +
        (heat === 'cold' ? 'That is for going in.' : 'That is for going in; hot work needs less, see there.'),
      conveyor.confinedSpace
        ? 'No entry without the site’s entry permit, a person outside, and rescue arranged beforehand.'
        : 'Whether this trough counts as a confined space is for a competent person to judge before work.',
    ],
    sources:
      'Confined Spaces Regulations 1997 in the UK; 29 CFR 1910.146 in the USA; NIOSH pocket guide for the limits (from memory)',
  };
}

const rotting = /sludge|digest|manure|slurry|sewage/i;
const composting = /compost|mulch|green waste/i;

/** What is declared, and what a known product gives off besides; of sludge and heaps only where nothing else is known. */
function gasesOf(conveyor: Conveyor): readonly string[] {
  const { givesOff, conveys } = conveyor;
  const product = conveys?.material ?? '';
  if (!givesOff) return gasOf(product);
  const isKnown = rotting.test(product) || composting.test(product) || isWooden(product);
  return [...declaredGas(givesOff, conveyor), ...(isKnown ? gasOf(product) : [])];
}

/** What is known of each that is declared; the rest stands as it was written. */
function declaredGas(all: readonly string[], product: Pick<Conveyor, 'conveys'>): readonly string[] {
  const known = all.flatMap((each) =>
    isDust(each) && isMineralDust(each, product)
      ? mineralDust
      : (knownOf.find(([name]) => name.test(each))?.[1] ?? []),
  );
  return [`Declared for this machine: it gives off ${all.join(', ')}.`, ...new Set(known)];
}

const mineralDust =
  'Mineral dust does not burn; it harms the lungs, that of sand, stone and concrete for good: no sweeping dry, no blowing down; ' +
  'breathing protection as the site has assessed it.';

/** Limits as in NIOSH’s pocket guide, from memory, as those below. */
const knownOf: readonly (readonly [RegExp, string])[] = [
  [
    /carbon monoxide|\bCO\b/i,
    'Carbon monoxide has no smell: usual limit over a shift 20 ppm, dangerous to life at 1200 ppm.',
  ],
  [
    /hydrogen sul(ph|f)ide|H2S/i,
    'Hydrogen sulphide comes more when material is disturbed. Smell gives no warning: it numbs it.',
  ],
  [
    /carbon dioxide|CO2/i,
    'Carbon dioxide is heavier than air and lies in the low end: usual limit over a shift 0.5 %, dangerous to life at 4 %.',
  ],
  [
    /ammonia|NH3/i,
    'Ammonia burns eyes and lungs: usual limit over a shift 25 ppm, dangerous to life at 300 ppm.',
  ],
  [
    /methane|biogas/i,
    'Methane burns and explodes, is lighter than air and lies under covers at the high end.',
  ],
  [
    /dust/i,
    'Fine dust burns and explodes, and harms the lungs: no flame, no sweeping dry, no blowing down; breathing protection as the site has assessed it.',
  ],
  [
    /smoulder|smolder|smoke|heat/i,
    'What smoulders inside shows as a warm place or smoke: look for it before anything is stirred, with water at hand.',
  ],
  [
    /solvent|vapou?r/i,
    'Vapours may be heavier than air and burn: ask for their data sheet and test for them.',
  ],
];

/** By the product that is declared; of sludge and of heaps where none is, or where it may be either. */
function gasOf(product: string): readonly string[] {
  const [rots, composts] = [rotting.test(product), composting.test(product)];
  const wooden = isWooden(product);
  const low = rots && !composts ? ' Carbon dioxide is heavier than air and lies in the low end.' : '';
  const wet =
    `${rots || composts ? 'Sludge and digestate give off' : 'What is wet and rots gives off'} hydrogen sulphide, carbon dioxide and methane, ` +
    `more when ${rots || composts ? 'they are' : 'it is'} disturbed. Smell gives no warning: hydrogen sulphide numbs it.${low}`;
  const heaps =
    'Composting material takes up oxygen and gives off carbon dioxide, ' +
    'which is heavier than air and lies in the low end, and ammonia, which burns eyes and lungs: ' +
    'usual limits over a shift 0.5 % and 25 ppm, dangerous to life at 4 % and 300 ppm.';
  if (wooden && !rots && !composts) return [wood];
  return [
    ...(composts && !rots ? [] : [wet]),
    ...(rots && !composts ? [] : [heaps]),
    ...(wooden ? [wood] : []),
  ];
}

function isWooden(product: string): boolean {
  return /\b(wood|bark|saw ?dust|shavings|wood ?chips?|chippings|pellets)\b/i.test(product);
}

const wood =
  'Wood and bark take up oxygen and give off carbon monoxide, which nobody smells: usual limit over a shift 20 ppm, dangerous to ' +
  'life at 1200 ppm. Damp heaps heat up and smoulder inside, and fine dust burns and explodes: look for warm places and smoke before ' +
  'anything is stirred, no flame and no blowing down.';

/** What common practice is with lime and its kin; no figure here is a limit. */
function burnsSkin(conveyor: Conveyor): readonly Caution[] {
  const caustic = causticOf(conveyor);
  if (!caustic) return [];
  const { name, hot } = caustic;
  return [
    {
      heading: `${name}: burns eyes and skin`,
      text: [
        `${name} burns eyes, skin and airways, worst where they are wet or sweating, and can blind; the pain may come late. ` +
          'Tight goggles, gloves, sleeves and trousers closed at the ends, breathing protection, all as the safety data sheet of the product says; ' +
          'running water or an eye rinse that was tried in reach before anything is opened.',
        'In an eye or on the skin: brush off what is dry, then at once rinse with much running water, and go on rinsing; ' +
          'take off what is soaked; a doctor at once for an eye.',
        ...(hot ? [hotWithWater(name)] : []),
      ],
      sources:
        'common practice; the safety data sheet of the product, the site’s assessment and its permits come first',
    },
  ];
}

function hotWithWater(name: string): string {
  return (
    `${name === 'Lime' ? 'Unless the data sheet says that it is slaked, lime' : name} gets hot with water, enough to scald, spatter and light what burns: ` +
    'do not wet it down and do not hose it out. Take it up dry, with what raises no dust. ' +
    'Mixed into what is wet it goes on reacting: it stays hot inside, steams, and drives ammonia off sludge and manure. ' +
    'Where hot work asks for wetting, the lime is out of that place first.'
  );
}

/** Mould and dust of wood, where nothing else is declared. */
function germsOf(conveyor: Conveyor): readonly Caution[] {
  const product = conveyor.conveys?.material ?? '';
  const caustic = causticOf(conveyor);
  const usual = usualGerms(product);
  if (!caustic) return [usual];
  if (product !== '' && !carriesGerms(product)) return [];
  return [caustic.hot ? { ...usual, text: usual.text.map((text) => keptDry(text, caustic)) } : usual];
}

function keptDry(text: string, { name }: Caustic): string {
  return text
    .replace(
      'Wet it down rather than sweep; ',
      `No water on it while ${name.toLowerCase()} is in it, and no sweeping; `,
    )
    .replace('no pressure washer without protection against the spray', 'no pressure washer');
}

function usualGerms(product: string): Caution {
  const isOther = /sludge|digest|manure|slurry|sewage|compost|mulch|green waste|food/i.test(product);
  if (!isWooden(product) || isOther) return germs;
  const [, ...rest] = germs.text;
  return {
    ...germs,
    text: [
      'Damp wood and bark carry mould, and what is dry gives fine dust; splinters and cuts bring both into the body. ' +
        'Wet it down rather than sweep; no compressed air.',
      ...rest,
    ],
  };
}

const germs: Caution = {
  heading: 'Germs, mould, dust',
  text: [
    'Sludge, digestate, food waste and compost carry germs, mould and what they leave behind: ' +
      'splashes, dust and cuts from sharp rubbish bring them into the body. ' +
      'Wet it down rather than sweep; ' +
      'no compressed air, and no pressure washer without protection against the spray.',
    'Gloves, eyes covered, cuts covered; breathing protection as the site has assessed it. ' +
      'No eating, drinking or smoking at the place; wash before every break. ' +
      'Fever or a rash in the weeks after: tell the doctor where you worked.',
  ],
  sources: 'directive 2000/54/EC; COSHH 2002 in the UK (from memory)',
};

const height: Caution = {
  heading: 'Work at height',
  text: [
    'Covers off means an open edge. Guard it, keep tools on lanyards, close off the ground below. ' +
      'Nobody works below an open lift or below loose panels on the slope.',
  ],
  sources: 'Work at Height Regulations 2005 in the UK; the maker’s handbook of the platform',
};

function lifting(facts: CautionFacts): Caution {
  return {
    heading: 'Lifting and handling',
    text: [
      facts.heaviestByHand === undefined
        ? 'Weigh up each load before it is lifted.'
        : `The heaviest new panel is about ${facts.heaviestByHand.toFixed(1)} kg; ` +
          'above about 25 kg one person alone is too few even in a good posture, ' +
          'and on a platform there is rarely a good posture.',
      'Liner panels are slippery, springy and sharp-edged. On the slope a loose panel slides: ' +
        'hold it until it rests on its neighbour or on an end that carries it.',
      ...(facts.changesScrew
        ? [
            'Lifts by crane need a competent person’s lift plan. Masses here are calculated; wear and clinging material change them.',
          ]
        : []),
    ],
    sources: 'Manual Handling Operations Regulations 1992 and LOLER 1998 in the UK; ISO 11228-1',
  };
}

const coldWork: Caution = {
  heading: 'Cold work',
  text: [
    'The order has it done cold: no flame, arc or sparks, and no grinding. ' +
      'PE burns and drips burning, and what burns runs down the trough.',
    'If it cannot be done cold, stop and ask: another way is not part of this pack and needs a permit of its own.',
  ],
  sources: 'DSEAR 2002 in the UK and directive 1999/92/EC where gas or dust can explode',
};

function hotWork(facts: CautionFacts): Caution {
  return {
    heading: facts.heat === 'hot' ? 'Hot work' : 'Hot work, only if it comes up',
    text: [
      'PE burns and drips burning. No welding, ' +
        'cutting or grinding over fitted liner without taking liner away locally, ' +
        'or shielding and wetting it, with a fire watch of at least an hour afterwards.',
      'Gas test first, and go on measuring at the flame. ' +
        '10 % of the lower flammable limit is a limit for going in, not for flame, arc or sparks: ' +
        'common practice is none that the instrument can show, below 1 %. ' +
        'The hot-work permit says which; the stricter figure holds.',
    ],
    sources:
      'the site’s hot-work permit; DSEAR 2002 in the UK and directive 1999/92/EC where gas or dust can explode',
  };
}
