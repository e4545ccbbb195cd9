import { startStudy } from './startStudy.ts';
import type { StartStudy, Study } from './studyDesk.ts';

/** Starts studies for a part of the page: those that still go on when it is left are stopped. */
export function studiesUntil(stops: (() => void)[]): StartStudy {
  const open = new Set<Study<unknown>>();
  stops.push(() => {
    for (const study of open) study.stop();
  });
  return (request, hearer) => {
    const study = startStudy(request, hearer);
    open.add(study);
    void study.answer.then(() => open.delete(study));
    return study;
  };
}
