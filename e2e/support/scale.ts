import { execFileSync } from 'node:child_process';
import { closeSync, constants, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * A scale that exists in tests only: a pipe that gives the reports of a USB weighing device, one write each, as a raw node
 * does. The server reads it as it reads any.
 */
export class SimulatedScale {
  readonly #folder = mkdtempSync(join(tmpdir(), 'strandline-scale-'));
  readonly #pipe: number;
  #says: Uint8Array | undefined;
  readonly #again: ReturnType<typeof setInterval>;
  /** Words for the server's command line. */
  readonly more: readonly string[];

  constructor() {
    const node = join(this.#folder, 'node');
    execFileSync('mkfifo', ['-m', '600', node]);
    this.#pipe = openSync(node, constants.O_RDWR);
    // One that never repeats itself would be taken for silent.
    this.#again = setInterval(() => this.#say(), 200);
    this.more = ['--scale', node, '--scale-form', 'usb'];
  }

  /** What stands on it, in grams to a tenth. */
  shows(grams: number, settled = true): void {
    const tenths = Math.round(grams * 10);
    // Report 3, status 4 = stable or 3 = in motion, unit 2 = gram, tenths.
    const report = [3, settled ? 4 : 3, 2, 0xff, tenths & 0xff, tenths >> 8];
    this.#says = Uint8Array.from(report);
    this.#say();
  }
  #say(): void {
    if (this.#says) writeSync(this.#pipe, this.#says);
  }

  remove(): void {
    clearInterval(this.#again);
    closeSync(this.#pipe);
    rmSync(this.#folder, { recursive: true, force: true });
  }
}
