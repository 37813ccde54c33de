// What changed since a revision, as a page: the estate as it stands in the editor, unsaved texts with it, against the revision.

import { analyse } from '../../analysis/analyse.js';
import type { Analysis } from '../../analysis/analysis.js';
import { estateLedger } from '../../analysis/estate-ledger.js';
import { keyedFindings } from '../../analysis/finding-keys.js';
import { changeSummary, type ComparedEstate } from '../../generators/change-summary/change-summary.js';
import { changeSummaryPage } from '../../generators/change-summary/html.js';
import type { PageOptions } from '../../generators/page/page.js';
import type { EstateRevision } from '../revisions.js';

export type ComparisonMade =
  { readonly ok: true; readonly page: PageOptions } | { readonly ok: false; readonly reason: string };

export function comparisonPage(now: Analysis, revision: EstateRevision): ComparisonMade {
  const then = analyse(revision.texts);
  const [conflict] = then.inConflict;
  const nameOf = (uri: string): string =>
    decodeURIComponent(uri.startsWith(`${revision.folder}/`) ? uri.slice(revision.folder.length + 1) : uri);
  if (conflict !== undefined)
    return {
      ok: false,
      reason: `${nameOf(conflict)} in ${revision.name} holds a merge conflict that is not settled.`,
    };
  const made = changeSummary(side(revision.name, then, nameOf), side('as it stands', now, nameOf));
  return made.ok
    ? { ok: true, page: changeSummaryPage(made.summary) }
    : { ok: false, reason: `${made.message}.` };
}

function side(name: string, analysis: Analysis, nameOf: (uri: string) => string): ComparedEstate {
  const { blocks, unreadable } = estateLedger(analysis, nameOf);
  return {
    kind: 'estate',
    name,
    estate: analysis.estate,
    ledger: blocks,
    unreadable,
    findings: keyedFindings(analysis, nameOf),
  };
}
