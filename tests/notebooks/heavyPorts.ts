import { derived } from '../../lib/graph/define.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import { createHeavyJobs, type Patience } from '../../notebooks/page/heavy/heavyJobs.ts';
import type { HeavyPort, HeavyReply, HeavyRequest } from '../../notebooks/page/heavy/heavyMessages.ts';
import { plainNumber } from '../graph/plainQuantities.ts';

export const x = plainNumber('test.x');
const power = (id: string, exponent: number) =>
  derived({
    id,
    name: 'power',
    symbol: 's',
    unit: '1',
    about: '',
    from: { x },
    compute: ({ x }) => x ** exponent,
    formula: 'x^n',
    source: 'definition',
    heavy: 'picture',
  });
export const square = power('test.square', 2);
export const cube = power('test.cube', 3);
const graph = createGraph([square, cube]);

/** Jobs whose ports answer when the test says so. */
export function setUpJobs(patience?: Patience) {
  const ports: {
    requests: HeavyRequest[];
    closed: boolean;
    reply: (r: HeavyReply) => void;
    fail: () => void;
  }[] = [];
  const answers: [string, number][] = [];
  const heard: [string, number | undefined][] = [];
  const jobs = createHeavyJobs(
    graph,
    (reply, failed): HeavyPort => {
      const port = { requests: [] as HeavyRequest[], closed: false, reply, fail: () => failed('no worker') };
      ports.push(port);
      return { post: (request) => port.requests.push(request), close: () => (port.closed = true) };
    },
    {
      answered: (id, _outcome, inputs) => answers.push([id, inputs[x.id] as number]),
      progressed: (id, part) => heard.push([id, part]),
    },
    patience,
  );
  const ask = (id: string, value: number) => jobs.request(id, { [x.id]: value });
  const answerLast = () => {
    const port = ports.at(-1)!;
    port.reply({ job: port.requests.at(-1)!.job, outcome: { value: 0 } });
  };
  return { ports, answers, heard, jobs, ask, answerLast };
}
