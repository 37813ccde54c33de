// A screw block → ScrewSpecification; without outside diameter or pitch there is no specification.

import type * as ast from '../generated/ast.js';
import type { ScrewSpecification } from '../../domain/model/specifications.js';
import type { Named } from '../sheet.js';
import { assumed } from './assumed.js';
import { stated, type FactAccount } from './block.js';
import { chainage, someLength } from './limits.js';
import { wordsOf, type Reader } from './reader.js';

type InnerFlight = NonNullable<ScrewSpecification['innerFlight']>;
type Facts = { -readonly [K in keyof Omit<ScrewSpecification, 'innerFlight'>]?: ScrewSpecification[K] } & {
  innerFlight?: Omit<InnerFlight, 'pitch'> & { readonly pitch?: InnerFlight['pitch'] };
};

export function lowerScrew(
  reader: Reader,
  block: FactAccount,
  node: ast.Screw,
  doc: string | undefined,
): Named<ScrewSpecification> {
  const facts: Facts = {};
  for (const fact of node.facts) lowerFact(reader, block, fact, facts);
  const { outsideDiameter, pitch } = facts;
  block.require('outside diameter', outsideDiameter, 'outside diameter 400 mm');
  block.require('pitch', pitch, 'pitch 350 mm');

  const { innerFlight, ...rest } = facts;
  const named = { name: block.name, origin: block.nameOrigin };
  if (!block.stands || !outsideDiameter || !pitch) return named;
  return {
    ...named,
    value: {
      ...stated({ title: node.title, doc }),
      kind: { kind: 'shaftless' },
      density: assumed.screwDensity(block.nameOrigin),
      ...rest,
      ...stated({
        innerFlight: innerFlight && {
          ...innerFlight,
          pitch: innerFlight.pitch ?? {
            ...pitch,
            assumed: 'The pitch of the screw: the inner flight turns with it.',
          },
        },
      }),
      name: block.name,
      origin: reader.origin(node),
      nameOrigin: block.nameOrigin,
      outsideDiameter,
      pitch,
    },
  };
}

function lowerFact(reader: Reader, block: FactAccount, fact: ast.ScrewFact, facts: Facts): void {
  const keep = <K extends keyof Facts>(name: K, value: Facts[K]): void => {
    if (value !== undefined) facts[name] = value;
  };
  const origin = reader.origin(fact);
  switch (fact.$type) {
    case 'ScrewMeasure': {
      const key = wordsOf(fact, 'key') as ast.ScrewMeasure['key'] | undefined; // the grammar takes these words only
      if (key === undefined || !block.first(key, fact)) return;
      if (key === 'outside diameter')
        keep('outsideDiameter', reader.quantity(fact, 'value', 'length', key, someLength));
      else if (key === 'density') keep('density', reader.quantity(fact, 'value', 'density', key));
      else if (key === 'condemn flight at')
        keep('condemnFlight', reader.quantity(fact, 'value', 'length', key));
      else keep('price', reader.quantity(fact, 'value', 'money', key));
      return;
    }
    case 'ScrewPitch': {
      const pitch = reader.quantity(fact, 'value', 'length', 'pitch', someLength);
      if (fact.from === undefined) return block.first('pitch', fact) ? keep('pitch', pitch) : undefined;
      const along = reader.range(fact, 'length', 'stretch of the pitch', chainage);
      return pitch && along && keep('pitches', [...(facts.pitches ?? []), { pitch, along }]);
    }
    case 'ScrewKind': {
      if (!block.first('shaft', fact)) return;
      if (fact.shaftless) return keep('kind', { kind: 'shaftless' });
      const shaft = reader.quantity(fact, 'shaft', 'length', 'shaft', someLength);
      return shaft && keep('kind', { kind: 'shafted', shaft });
    }
    case 'Hand':
      return block.first('hand', fact) ? keep('hand', fact.hand) : undefined;
    case 'Material':
      return block.first('material', fact) ? keep('material', fact.material) : undefined;
    case 'Flight': {
      if (!block.first('flight', fact)) return;
      const width = reader.quantity(fact, 'width', 'length', 'flight width', someLength);
      const thickness = reader.quantity(fact, 'thickness', 'length', 'flight thickness', someLength);
      return width && thickness && keep('flight', { width, thickness, origin });
    }
    case 'InnerFlight': {
      if (!block.first('inner flight', fact)) return;
      const outside = reader.quantity(
        fact,
        'outside',
        'length',
        'outside diameter of the inner flight',
        someLength,
      );
      const inside = reader.quantity(
        fact,
        'inside',
        'length',
        'inside diameter of the inner flight',
        someLength,
      );
      const pitch = reader.quantity(fact, 'pitch', 'length', 'pitch of the inner flight', someLength);
      const thickness = reader.quantity(
        fact,
        'thickness',
        'length',
        'thickness of the inner flight',
        someLength,
      );
      return (
        outside &&
        inside &&
        thickness &&
        keep('innerFlight', { outside, inside, thickness, origin, ...stated({ pitch }) })
      );
    }
    case 'DrivePlate': {
      if (!block.first('drive plate', fact)) return;
      const bolts = reader.count(fact, 'bolts', 'bolts of the drive plate');
      return bolts && keep('drivePlate', { bolts, size: fact.size ?? '', origin });
    }
  }
}
