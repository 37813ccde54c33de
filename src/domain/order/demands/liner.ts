// The liner, and what the order tells of in its own words: stripped, cleaned, patched; `fit` is followed panel by panel in ../front.ts.

import { cleaned, newPanel, states, stripped } from '../states.js';
import { need, nothing, to } from './demand.js';
import { bare, takenOff, type DemandsByAction } from './site.js';

export const linerDemands: DemandsByAction<'strip' | 'clean' | 'patch' | 'other work' | 'fit'> = {
  strip: ({ panels, opened }) => ({
    needs: opened,
    effects: to(panels, stripped),
    done: { pieces: panels, states: states(stripped, cleaned, newPanel), by: 'any' },
  }),
  clean: ({ panels, opened }) => ({
    needs: [...opened, ...need(panels, bare, stripped, 'liner not stripped', 'cannot be built')],
    effects: to(panels, cleaned),
    done: { pieces: panels, states: states(cleaned), by: 'any' },
  }),
  patch: ({ opened }) => ({ needs: opened, effects: [], done: nothing }),
  // In the trough where it names a stretch, and then under open covers; braces and blocks may stay.
  'other work': ({ step, safe, covers }) => ({
    needs: step.stretch ? [...safe, ...takenOff(covers)] : [],
    effects: [],
    done: nothing,
  }),
  fit: ({ opened }) => ({ needs: opened, effects: [], done: nothing }),
};
