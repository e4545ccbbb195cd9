import { expect, it } from 'vitest';
import { claimDesign } from '../../../notebooks/page/keeping/claim.ts';

it('a tab counts alone where the browser refuses locks, as some do for files from disk', async () => {
  const refused = () => Promise.reject(new DOMException('not at this address', 'SecurityError'));
  const locks = { request: refused } as unknown as LockManager;
  const claim = await claimDesign(locks, 'one');
  expect(claim.own).toBe(true);
  claim.release();
});

it('a tab waits for another that has the design, and giving up is no claim', async () => {
  const request = (_: string, { signal }: LockOptions) =>
    new Promise((_, reject) => {
      signal!.addEventListener('abort', () => reject(new DOMException('given up', 'AbortError')));
    });
  const claim = await claimDesign({ request } as unknown as LockManager, 'one');
  expect(claim.own).toBe(false);
  let got = false;
  void claim.later.then(() => {
    got = true;
  });
  claim.release();
  await new Promise((resolve) => setTimeout(resolve, 5));
  expect(got).toBe(false);
});
