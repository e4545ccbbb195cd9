/** Keeps the screen from going dark where the browser can; returns how to end that. */
export function keepAwake(document: Document): () => void {
  const lock = document.defaultView?.navigator.wakeLock;
  let held: WakeLockSentinel | undefined;
  let over = false;
  const ask = () => {
    if (over || !lock || document.visibilityState !== 'visible') return;
    lock.request('screen').then(
      (got) => {
        held = got;
        if (over) void got.release();
      },
      // Without it the screen goes dark as it always does.
      () => {},
    );
  };
  document.addEventListener('visibilitychange', ask);
  ask();
  return () => {
    over = true;
    document.removeEventListener('visibilitychange', ask);
    void held?.release();
  };
}

/** Fills the whole screen, or ends that; where the browser does not allow it nothing happens. */
export function toggleScreen(document: Document): void {
  const done = document.fullscreenElement
    ? document.exitFullscreen()
    : document.documentElement.requestFullscreen?.();
  done?.catch(() => {});
}
