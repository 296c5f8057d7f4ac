import { type Jobs, noJobs } from './jobs.ts';
import { asStored, fromStored } from './stored-jobs.ts';

/** Where the jobs of one sheet are kept. Nothing leaves the device. */
export class JobStore {
  readonly #key: string;
  #jobs: Jobs = noJobs;
  #isKept: boolean;

  constructor(key: string) {
    this.#key = key;
    this.#isKept = works(key);
  }

  /** False where the browser keeps nothing for this page; the jobs then last until it is closed. */
  get isKept(): boolean {
    return this.#isKept;
  }

  /** The jobs as they are now, with what another tab has written. */
  read(): Jobs {
    if (this.#isKept) this.#jobs = fromStored(localStorage.getItem(this.#key));
    return this.#jobs;
  }

  write(jobs: Jobs): void {
    this.#jobs = jobs;
    if (!this.#isKept) return;
    try {
      if (jobs.kept.length === 0) localStorage.removeItem(this.#key);
      else localStorage.setItem(this.#key, asStored(jobs));
    } catch {
      this.#isKept = false;
    }
  }

  /** Calls back when another tab has written jobs of this sheet. */
  onOthers(tell: () => void): void {
    addEventListener('storage', ({ key }) => {
      if (key === this.#key || key === null) tell();
    });
  }
}

/** Whether the browser lets this page keep anything; it is asked, since some say so only by refusing. */
function works(key: string): boolean {
  const probe = `${key}?`;
  try {
    localStorage.setItem(probe, '');
    localStorage.removeItem(probe);
    return true;
  } catch {
    return false;
  }
}
