import type { Graph } from '../../../../lib/graph/graph.ts';
import type { Outcome } from '../../../../lib/graph/outcome.ts';
import { createStudyAnswers } from './answerStudy.ts';
import type {
  OpenStudyPort,
  StudyAnswers,
  StudyKind,
  StudyPort,
  StudyReply,
  StudyRequest,
} from './studyMessages.ts';

/** A study under way. */
export interface Study<T> {
  /** Resolves once, and never rejects: the answer, or a problem; of kind `stopped` after `stop` or a newer request. */
  readonly answer: Promise<Outcome<T>>;
  /** Ends the work at once. Does nothing where it is done. */
  stop(): void;
}

/** Who asks for a study. */
export interface StudyHearer {
  /** A new request of the same tool takes the place of the one before; the kind of study where left out. */
  readonly tool?: string;
  /** Called while it goes on with the part that is done, 0…1. */
  progressed?(part: number): void;
}

/** Starts studies: plain data in and out, away from the page where a worker starts. */
export type StartStudy = <K extends StudyKind>(
  request: StudyRequest<K>,
  hearer?: StudyHearer,
) => Study<StudyAnswers[K]>;

type Answer = Outcome<StudyAnswers[StudyKind]>;

interface Running {
  readonly job: number;
  readonly request: StudyRequest;
  readonly progressed: (part: number) => void;
  readonly finish: (outcome: Answer) => void;
  over: boolean;
  stop(): void;
}

interface Desk {
  readonly port: StudyPort;
  ready: boolean;
  running: Running | undefined;
}

/** Workers that wait for the next request; each holds the whole graph. */
const mostIdle = 1;

const stopped: Answer = {
  problem: { kind: 'stopped', message: 'Stopped before it was worked out.', parts: {}, at: 'study' },
};
const broken = (reason: string): Answer => ({
  problem: {
    kind: 'fault',
    message: `This could not be worked out: ${reason}. Try again, or with less at a time.`,
    parts: {},
    at: 'study',
  },
});

/**
 * Studies each in a worker of its own, which is kept for the next one; stopping ends the worker. Where none starts, the
 * page computes.
 */
export function createStudyDesk(graph: Graph, open: OpenStudyPort): StartStudy {
  const idle: Desk[] = [];
  const tools = new Map<string, Running>();
  let answerHere: ReturnType<typeof createStudyAnswers> | undefined;
  let noWorkers = false;
  let jobs = 0;

  const end = (running: Running, outcome: Answer) => {
    if (running.over) return;
    running.over = true;
    running.finish(outcome);
  };
  const computeHere = (running: Running) => {
    // In a task of its own: what the person pressed shows first, and a stop before it counts.
    setTimeout(() => {
      if (running.over) return;
      answerHere ??= createStudyAnswers(graph);
      end(running, answerHere(running.request, running.progressed));
    });
  };
  const openDesk = (): Desk => {
    const desk: Desk = { port: open(replied, failed), ready: false, running: undefined };
    function replied(reply: StudyReply) {
      if ('ready' in reply) {
        desk.ready = true;
        return;
      }
      const { running } = desk;
      if (reply.job !== running?.job) return;
      if ('part' in reply) return running.progressed(reply.part);
      desk.running = undefined;
      if (idle.length < mostIdle) idle.push(desk);
      else desk.port.close();
      end(running, reply.outcome);
    }
    function failed(reason: string) {
      const { running } = desk;
      desk.running = undefined;
      desk.port.close();
      if (idle.includes(desk)) idle.splice(idle.indexOf(desk), 1);
      noWorkers ||= !desk.ready;
      if (!running) return;
      if (desk.ready) end(running, broken(reason));
      else computeHere(running);
    }
    return desk;
  };
  const begin = (running: Running) => {
    if (noWorkers) return computeHere(running);
    try {
      const desk = idle.pop() ?? openDesk();
      desk.running = running;
      running.stop = () => {
        if (desk.running !== running) return;
        desk.running = undefined;
        desk.port.close();
      };
      desk.port.post({ job: running.job, request: running.request });
    } catch {
      running.stop();
      computeHere(running);
    }
  };
  return <K extends StudyKind>(request: StudyRequest<K>, { tool, progressed }: StudyHearer = {}) => {
    const name = tool ?? request.kind;
    let finish: (outcome: Answer) => void = () => {};
    const answer = new Promise<Outcome<StudyAnswers[K]>>((resolve) => {
      finish = resolve as (outcome: Answer) => void;
    });
    const running: Running = {
      job: ++jobs,
      request: request as StudyRequest,
      progressed: (part) => {
        if (!running.over) progressed?.(part);
      },
      finish,
      over: false,
      stop: () => {},
    };
    const stop = () => {
      if (running.over) return;
      running.stop();
      end(running, stopped);
    };
    const before = tools.get(name);
    if (before && !before.over) {
      before.stop();
      end(before, stopped);
    }
    tools.set(name, running);
    begin(running);
    return { answer, stop };
  };
}
