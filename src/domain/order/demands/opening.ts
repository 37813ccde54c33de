// Opening up and closing up: covers lie over braces and hold-downs, these over the spiral, the spiral over the liner.

import { piecesUnder } from '../contact.js';
import { within, type Piece } from '../ground.js';
import { off, on, states, tidy } from '../states.js';
import { need, nothing, to, type Demands, type Need } from './demand.js';
import { linedUnder, screwUnder, takenOff, watched, type DemandsByAction, type Site } from './site.js';

type OpeningAction =
  'covers off' | 'braces off' | 'hold-downs off' | 'hold-downs on' | 'braces on' | 'clear up' | 'covers on';

export const openingDemands: DemandsByAction<OpeningAction> = {
  'covers off': ({ covers, safe }) => takesOff(covers, safe),
  'braces off': (site) => takesOff(site.braces, [...site.safe, ...coversOffOver(site, site.braces)]),
  'hold-downs off': (site) =>
    takesOff(site.holdDowns, [...site.safe, ...coversOffOver(site, site.holdDowns)]),
  'hold-downs on': (site) =>
    putsOn(site.holdDowns, [
      ...site.safe,
      ...coversOffOver(site, site.holdDowns),
      ...linedUnder(site.ground, site.holdDowns),
      ...screwUnder(site.ground, site.holdDowns, 'screw out of turn'),
    ]),
  'braces on': (site) =>
    putsOn(site.braces, [
      ...site.safe,
      ...coversOffOver(site, site.braces),
      ...linedUnder(site.ground, site.braces),
      ...screwUnder(site.ground, site.braces, 'closed up too early'),
    ]),
  'clear up': ({ ground, areas, covers, safe }) => ({
    needs: [...safe, ...takenOff(covers)],
    effects: to(within(ground.litter, areas), tidy),
    done: nothing,
  }),
  'covers on': (site) =>
    putsOn(site.covers, [
      ...site.safe,
      ...watched(within(site.ground.heat, site.areas)),
      ...clearedUp(site),
      ...linedUnder(site.ground, site.covers),
      ...screwUnder(site.ground, site.covers, 'closed up too early'),
      ...need(acrossUnder(site, site.covers), states(on), on, 'closed up too early', 'cannot be built', true),
    ]),
};

/** Told where an order has steps that clear up, and not here. */
function clearedUp({ ground, areas, covers }: Site): Need[] {
  return need(piecesUnder(ground.litter, covers, areas), states(tidy), tidy, 'not cleared up', 'incomplete');
}

function takesOff(pieces: readonly Piece[], needs: readonly Need[]): Demands {
  return { needs, effects: to(pieces, off), done: { pieces, states: states(off), by: 'all' } };
}

function putsOn(pieces: readonly Piece[], needs: readonly Need[]): Demands {
  return { needs, effects: to(pieces, on), done: { pieces, states: states(on), by: 'all' } };
}

function coversOffOver({ ground, areas }: Site, parts: readonly Piece[]): Need[] {
  return takenOff(piecesUnder(ground.covers, parts, areas));
}

/** Braces and hold-downs lie across the trough. */
function acrossUnder({ ground, areas }: Site, covers: readonly Piece[]): Piece[] {
  return [...piecesUnder(ground.braces, covers, areas), ...piecesUnder(ground.holdDowns, covers, areas)];
}
