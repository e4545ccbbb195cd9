/** A worker as the page sees it; a test puts a plain object in its place. */
export interface WorkerPort<Job> {
  post(job: Job): void;
  /** Ends it at once, whatever it is doing. */
  close(): void;
}

/** Opens a worker; `replied` gets what it says, `failed` why it cannot work. May throw where there are no workers. */
export type OpenPort<Job, Reply> = (
  replied: (reply: Reply) => void,
  failed: (reason: string) => void,
) => WorkerPort<Job>;

/** Listens to a worker that was just opened. */
export function hearWorker<Job, Reply>(
  worker: Worker,
  replied: (reply: Reply) => void,
  failed: (reason: string) => void,
): WorkerPort<Job> {
  worker.addEventListener('message', (event: MessageEvent<Reply>) => replied(event.data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    failed(event.message || 'the worker could not be started');
  });
  return { post: (job) => worker.postMessage(job), close: () => worker.terminate() };
}
