/** Keeps the screen on while it is wanted and the page can be seen, where the browser can. */
export class Awake {
  #isWanted = false;
  #lock: WakeLockSentinel | undefined;
  #isAsking = false;

  constructor() {
    document.addEventListener('visibilitychange', () => void this.#settle());
  }

  want(isWanted: boolean): void {
    this.#isWanted = isWanted;
    void this.#settle();
  }

  async #settle(): Promise<void> {
    if (!('wakeLock' in navigator) || this.#isAsking) return;
    const isDue = this.#isWanted && document.visibilityState === 'visible';
    if (isDue === (this.#lock !== undefined && !this.#lock.released)) return;
    this.#isAsking = true;
    try {
      if (isDue) this.#lock = await navigator.wakeLock.request('screen');
      else await this.#lock?.release();
    } catch {
      // A low battery or the device's settings refuse it; the job goes on without.
      this.#isAsking = false;
      return;
    }
    this.#isAsking = false;
    if (!isDue) this.#lock = undefined;
    await this.#settle();
  }
}
