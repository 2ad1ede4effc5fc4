import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));
export const program = process.env.STRANDLINE ?? join(root, 'build/release/cli/strandline');
const built = process.env.WEB_DIST ?? join(root, 'web/dist');

/** The real server on a free loopback port with a salon file of its own; stop and start it as a person would. */
export class Salon {
  readonly folder = mkdtempSync(join(tmpdir(), 'strandline-e2e-'));
  #process: ChildProcess | undefined;
  #port = 0;
  /** More words for the server's command line. */
  readonly more: readonly string[];
  constructor(more: readonly string[] = []) {
    this.more = more;
  }

  get url(): string {
    return `http://127.0.0.1:${this.#port}/`;
  }

  /** Where paired devices are answered, once started with --listen. */
  lan = '';

  /** Starts on the port of last time, so that a reload finds it again. */
  async start(): Promise<void> {
    if (!existsSync(program)) throw new Error(`${program} is not built`);
    const child = spawn(
      program,
      [
        ...['serve', '--port', String(this.#port), '--demo', '--db', join(this.folder, 'salon.sqlite')],
        ...['--knowledge', join(root, 'knowledge'), '--web', built, ...this.more],
      ],
      { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] },
    );
    this.#process = child;
    let said = '';
    await new Promise<void>((resolve, reject) => {
      child.on('error', reject);
      child.on('exit', (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
      child.stderr.on('data', (text: Buffer) => (said += text));
      child.stdout.on('data', (text: Buffer) => {
        said += text;
        this.lan = /Paired devices, encrypted, at ([\d.:]+)\./.exec(said)?.[1] ?? '';
        const port = /http:\/\/127\.0\.0\.1:(\d+)\//.exec(said)?.[1];
        if (port) {
          this.#port = Number(port);
          resolve();
        }
      });
    });
  }

  async stop(): Promise<void> {
    const child = this.#process;
    this.#process = undefined;
    if (!child || child.exitCode !== null) return;
    const ended = new Promise((resolve) => child.on('exit', resolve));
    child.removeAllListeners('error');
    child.kill('SIGTERM');
    await ended;
  }

  async remove(): Promise<void> {
    await this.stop();
    rmSync(this.folder, { recursive: true, force: true });
  }
}
