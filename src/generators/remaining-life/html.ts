// Prints the report as one self-contained HTML page: the manager's page first, then a page or more a conveyor, then where the
// numbers come from. Same report, same bytes.

import { unreadIn } from './unread-words.js';
import { formatDay } from '../../domain/units/calendar.js';
import { element } from '../page/markup.js';
import { htmlPage, type PageOptions, type Paper } from '../page/page.js';
import { appendix } from './print/appendix.js';
import { conveyorPage } from './print/conveyor-page.js';
import { decisionPages } from './print/decisions.js';
import type { PhotoBytes } from './print/photos.js';
import { programmeSection } from './print/programme-page.js';
import { frontPage } from './print/front-page.js';
import { reportStyles } from './print/styles.js';
import type { RemainingLife } from './remaining-life.js';

export interface ReportPageOptions {
  readonly paper?: Paper;
  /** Photos as `data:` addresses; left out, their names stand where they would. */
  readonly photo?: PhotoBytes | undefined;
}

export function remainingLifeHtml(report: RemainingLife, options: ReportPageOptions = {}): string {
  return htmlPage(remainingLifePage(report, options));
}

/** The programme over all outages by itself. */
export function programmePage(report: RemainingLife): PageOptions {
  const unread = unreadIn(report);
  const title = `Programme over all outages${report.asOf === undefined ? '' : `, ${formatDay(report.asOf)}`}`;
  return {
    title,
    styles: reportStyles,
    paper: 'A4',
    body: element(
      'main',
      {},
      unread !== undefined && element('p', {}, element('strong', {}, 'Not all was read. '), unread),
      programmeSection(report.programmes ?? []),
    ),
    footer: `${title}. Advises; a competent person decides.`,
  };
}

export function remainingLifePage(report: RemainingLife, options: ReportPageOptions = {}): PageOptions {
  const title = `Remaining life of liners${report.asOf === undefined ? '' : `, ${formatDay(report.asOf)}`}`;
  return {
    title,
    styles: reportStyles,
    paper: options.paper ?? 'A4',
    body: element(
      'main',
      {},
      frontPage(report),
      programmeSection(report.programmes ?? []),
      decisionPages(report),
      report.conveyors.map((life, i) => conveyorPage(life, i, options.photo)),
      appendix(),
    ),
    footer: `${title}. Advises; a competent person decides.`,
  };
}
