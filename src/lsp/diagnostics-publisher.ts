// Says what is wrong: findings of every text of every estate a moment after the last keystroke, only where they changed;
// and, once nobody has typed for a while, forecasts for lenses, hints and hovers.

import { DiagnosticSeverity, type Connection, type Diagnostic } from 'vscode-languageserver';
import { estateChanged, type EstateChanged } from '../protocol/messages.js';
import type { Background } from './background.js';
import type { Sessions } from './sessions.js';
import { diagnosticsOf, source } from './providers/diagnostic-provider.js';

export interface DiagnosticsPublisher {
  /** Judges soon; calls in quick succession count as one. */
  soon(): void;
  stop(): void;
}

/** Waits after a keystroke, in milliseconds; longer only where judging takes longer. */
const pause = 40;
const longestPause = 400;
const rest = 1500;

export function createDiagnosticsPublisher(
  connection: Connection,
  sessions: Sessions,
  background: Background,
  unread: () => ReadonlyMap<string, string>,
  refreshHints: () => void,
): DiagnosticsPublisher {
  const published = createPublished(connection);
  let timer: ReturnType<typeof setTimeout> | undefined;
  let restTimer: ReturnType<typeof setTimeout> | undefined;
  let wait = pause;
  let stopped = false;
  let news: EstateChanged | undefined;

  function judge(): void {
    if (stopped) return;
    const started = performance.now();
    try {
      news = publish(sessions, unread(), published);
      void connection.sendNotification(estateChanged, news);
    } catch (fault) {
      complain(connection, 'check the estate', fault);
    }
    wait = Math.min(longestPause, Math.max(pause, performance.now() - started));
    refreshHints();
    clearTimeout(restTimer);
    restTimer = setTimeout(() => void forecast(), rest);
  }

  async function forecast(): Promise<void> {
    for (const session of sessions.all()) {
      if (
        stopped ||
        session.forecasts?.revision === session.revision ||
        session.estate().inspections.length === 0
      )
        continue;
      try {
        session.forecasts = await background.forecasts(session);
      } catch (fault) {
        // eslint-disable-next-line @typescript-eslint/no-unnecessary-condition -- may be stopped meanwhile
        if (!stopped) complain(connection, 'forecast', fault);
      }
    }
    if (stopped) return;
    refreshHints();
    // What is urgent is known only now.
    if (news) void connection.sendNotification(estateChanged, news);
  }

  return {
    soon() {
      if (stopped) return;
      clearTimeout(timer);
      timer = setTimeout(judge, wait);
    },
    stop() {
      stopped = true;
      clearTimeout(timer);
      clearTimeout(restTimer);
    },
  };
}

/** What the client shows now, so that only what changed is sent. */
interface Published {
  tell(uri: string, diagnostics: Diagnostic[], version?: number): void;
  /** Takes back what was said of texts that are not among these. */
  clearOthers(uris: ReadonlySet<string>): void;
}

function createPublished(connection: Connection): Published {
  const published = new Map<string, string>();
  const tell: Published['tell'] = (uri, diagnostics, version) => {
    const now = JSON.stringify(diagnostics);
    if ((published.get(uri) ?? '[]') !== now)
      void connection.sendDiagnostics({ uri, diagnostics, ...(version === undefined ? {} : { version }) });
    if (diagnostics.length > 0) published.set(uri, now);
    else published.delete(uri);
  };
  return {
    tell,
    clearOthers(uris) {
      for (const uri of published.keys()) if (!uris.has(uri)) tell(uri, []);
    },
  };
}

function publish(
  sessions: Sessions,
  unread: ReadonlyMap<string, string>,
  published: Published,
): EstateChanged {
  const told = new Set<string>();
  const counts = { errors: 0, warnings: 0, information: 0 };
  let revision = 0;
  let conveyors = 0;
  let texts = 0;
  for (const session of sessions.all()) {
    for (const { uri, version } of session.documents()) {
      told.add(uri);
      texts += 1;
      published.tell(uri, diagnosticsOf(session, uri), version);
    }
    const { findings } = session.analysis();
    for (const { severity } of findings)
      counts[severity === 'error' ? 'errors' : severity === 'warning' ? 'warnings' : 'information'] += 1;
    // Those that are named, as the estate view shows them, complete or not.
    conveyors += session.symbols().declared('conveyor').length;
    revision += session.revision;
  }
  for (const [uri, reason] of unread) {
    told.add(uri);
    counts.errors += 1;
    published.tell(uri, [atTheTop(reason)]);
  }
  published.clearOthers(told);
  return { revision, texts, conveyors, ...counts };
}

function atTheTop(message: string): Diagnostic {
  const start = { line: 0, character: 0 };
  return { range: { start, end: start }, severity: DiagnosticSeverity.Error, source, message };
}

function complain(connection: Connection, what: string, fault: unknown): void {
  const detail = fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
  connection.console.error(`Troughline could not ${what}: ${detail}`);
}
