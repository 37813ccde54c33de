// Pages and forecasts take seconds on a large estate, and nobody should wait for a hover meanwhile. They are made elsewhere:
// in a worker that holds a copy of the texts, or, where there is no worker, here and between other work.

import type { ProgrammeSolver } from '../domain/decision/integer-programme.js';
import type { MakePreview, MakePreviewAnswer } from '../protocol/messages.js';
import type { Analyser, Session } from './session.js';
import { createSession } from './session.js';
import { asksForProgramme, preview, type PagePhotos, type PreviewOrder } from './handlers/preview-handler.js';
import { forecasts } from './forecasts.js';
import type { EstateDocument } from './document.js';
import type { Forecasts } from './forecast-words.js';

/** The part of a cancellation token that is needed here. */
export interface Cancellation {
  readonly isCancellationRequested: boolean;
  onCancellationRequested(listener: () => void): unknown;
}

export interface Background {
  /** Undefined where it was cancelled before it began. */
  preview(
    session: Session,
    wanted: PreviewOrder,
    token: Cancellation,
  ): Promise<MakePreviewAnswer | undefined>;
  forecasts(session: Session): Promise<Forecasts>;
  end(): void;
}

/** Loads the solver of the programme when it is first needed; `bytes` are its binary where the client had to read it. */
export type LoadSolver = (bytes: SolverBytes | undefined) => Promise<ProgrammeSolver>;
export type SolverBytes = Uint8Array<ArrayBuffer>;

/** For a process without workers: the work is done here, after what is waiting. */
export function backgroundHere(
  load?: LoadSolver,
  readBytes?: () => Promise<SolverBytes>,
  photos?: PagePhotos,
): Background {
  const solver = solverWhenAsked(load, readBytes);
  const later = async <T>(work: () => T | Promise<T>): Promise<T> => {
    await new Promise((resolve) => setTimeout(resolve, 0));
    return work();
  };
  return {
    preview: (session, wanted, token) =>
      later(async () =>
        token.isCancellationRequested ? undefined : preview(session, wanted, await solver(wanted), photos),
      ),
    forecasts: (session) => later(() => forecasts(session)),
    end: () => undefined,
  };
}

/** Undefined for pages that need none, and where it cannot be loaded: then the page says so. */
function solverWhenAsked(
  load: LoadSolver | undefined,
  readBytes?: () => Promise<SolverBytes | undefined>,
): (wanted: MakePreview) => Promise<ProgrammeSolver | undefined> {
  let loaded: Promise<ProgrammeSolver | undefined> | undefined;
  return async (wanted) => {
    if (!load || !asksForProgramme(wanted)) return undefined;
    loaded ??= (async () => load(await readBytes?.()))().catch(() => undefined);
    const solver = await loaded;
    if (!solver) loaded = undefined; // perhaps next time
    return solver;
  };
}

/** One end of a line to a worker or back. */
export interface Port {
  send(message: unknown): void;
  listen(receive: (message: unknown) => void): void;
  end(): void;
}

type Task = { readonly kind: 'preview'; readonly wanted: PreviewOrder } | { readonly kind: 'forecasts' };

interface WorkerRequest {
  readonly number: number;
  readonly session: number;
  readonly put: readonly { readonly uri: string; readonly text: string }[];
  readonly remove: readonly string[];
  readonly revision: number;
  readonly task: Task;
}

/** The solver's binary, before the first request that needs it. */
interface WorkerSolver {
  readonly solver: SolverBytes;
}

/** Takes back a request that has not begun. */
interface WorkerCancel {
  readonly cancel: number;
}

interface WorkerResponse {
  readonly number: number;
  /** Left out where the request was taken back. */
  readonly result?: unknown;
  readonly fault?: string;
}

/** Hands the work to a worker on the other end of `port`, with the texts that changed since the last order. */
export function backgroundThere(port: Port, readBytes?: () => Promise<SolverBytes>): Background {
  let sent: Promise<void> | undefined;
  /** Once, and again where it failed: the page without a programme says what is missing. */
  const sendSolver = async (): Promise<void> => {
    sent ??= readBytes?.().then((solver) => port.send({ solver } satisfies WorkerSolver));
    await sent?.catch(() => (sent = undefined));
  };
  const sessions = new Map<
    Session,
    { readonly number: number; readonly sent: Map<string, EstateDocument> }
  >();
  const open = new Map<number, { resolve(value: unknown): void; reject(reason: Error): void }>();
  let count = 0;

  port.listen((message) => {
    const { number, result, fault } = message as WorkerResponse; // from the worker that this file started
    const waiting = open.get(number);
    open.delete(number);
    if (fault === undefined) waiting?.resolve(result);
    else waiting?.reject(new Error(fault));
  });

  const order = <T>(session: Session, task: Task, token?: Cancellation): Promise<T> => {
    const known = sessions.get(session) ?? { number: sessions.size, sent: new Map<string, EstateDocument>() };
    sessions.set(session, known);
    const put = session
      .documents()
      .filter((document) => known.sent.get(document.uri)?.text !== document.text);
    const remove = [...known.sent.keys()].filter((uri) => !session.document(uri));
    for (const document of put) known.sent.set(document.uri, document);
    for (const uri of remove) known.sent.delete(uri);
    const number = (count += 1);
    const message: WorkerRequest = {
      number,
      session: known.number,
      put: put.map(({ uri, text }) => ({ uri, text })),
      remove,
      revision: session.revision,
      task,
    };
    return new Promise<T>((resolve, reject) => {
      open.set(number, { resolve: (value) => resolve(value as T), reject }); // the worker answers a task with its own kind of result
      port.send(message);
      token?.onCancellationRequested(() => port.send({ cancel: number } satisfies WorkerCancel));
    });
  };

  return {
    preview: async (session, wanted, token) => {
      if (asksForProgramme(wanted)) await sendSolver();
      return order(session, { kind: 'preview', wanted }, token);
    },
    forecasts: (session) => order(session, { kind: 'forecasts' }),
    end: () => port.end(),
  };
}

/** The worker's side. One task a turn, so that a cancellation that has come meanwhile is heard before the next begins. */
export function serveBackground(
  port: Port,
  makeAnalyser: () => Analyser,
  load?: LoadSolver,
  photos?: PagePhotos,
): void {
  let bytes: SolverBytes | undefined;
  const solver = solverWhenAsked(load, async () => bytes);
  const sessions = new Map<number, Session>();
  const waiting: WorkerRequest[] = [];
  const cancelled = new Set<number>();
  let scheduled = false;
  const next = async (): Promise<void> => {
    const request = waiting.shift();
    if (request) port.send(await answer(request));
    scheduled = waiting.length > 0;
    if (scheduled) soon();
  };
  const soon = (): void => void setTimeout(() => void next(), 0);
  port.listen((message) => {
    const heard = message as WorkerRequest | WorkerCancel | WorkerSolver; // from backgroundThere
    if ('solver' in heard) {
      bytes = heard.solver;
      return;
    }
    if ('cancel' in heard) {
      if (waiting.some(({ number }) => number === heard.cancel)) cancelled.add(heard.cancel);
      return;
    }
    waiting.push(heard);
    if (!scheduled) soon();
    scheduled = true;
  });

  async function answer({
    number,
    session: name,
    put,
    remove,
    revision,
    task,
  }: WorkerRequest): Promise<WorkerResponse> {
    const session = sessions.get(name) ?? createSession(makeAnalyser());
    sessions.set(name, session);
    for (const { uri, text } of put) session.put(uri, text);
    for (const uri of remove) session.remove(uri);
    if (cancelled.delete(number)) return { number };
    try {
      const result =
        task.kind === 'preview'
          ? { ...preview(session, task.wanted, await solver(task.wanted), photos), revision }
          : { ...forecasts(session), revision };
      return { number, result };
    } catch (fault) {
      return { number, fault: fault instanceof Error ? (fault.stack ?? fault.message) : String(fault) };
    }
  }
}
