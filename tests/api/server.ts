import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const built = (path: string): string => join(root, 'apps/api/dist', path);

const api = { program: 'main.js', ready: 'tallywing: open http' };

interface Launch {
  readonly port: number;
  readonly dataDir: string;
  readonly environment: Readonly<Record<string, string>>;
  readonly program: string;
  readonly ready: string;
}

/** The built API, or a worker, with a data directory of its own or on that of another. */
export class Server {
  private process: ChildProcess | null = null;
  private output = '';

  private constructor(private readonly how: Launch) {}

  static async start(environment: Readonly<Record<string, string>> = {}): Promise<Server> {
    const dataDir = await mkdtemp(join(tmpdir(), 'tallywing-test-'));
    await chmod(dataDir, 0o711);
    return await Server.launched({ ...api, port: await freePort(), dataDir, environment });
  }

  /** A second process on the data of the first, as several are put behind one address. */
  static async beside(first: Server, environment: Readonly<Record<string, string>> = {}): Promise<Server> {
    return await Server.launched({ ...api, port: await freePort(), dataDir: first.dataDir, environment });
  }

  /** A worker on the data of another; it serves nothing. */
  static async worker(first: Server): Promise<Server> {
    const how = { program: 'worker.js', ready: 'tallywing: worker started', port: 0, environment: {} };
    return await Server.launched({ ...how, dataDir: first.dataDir });
  }

  private static async launched(how: Launch): Promise<Server> {
    const server = new Server(how);
    await server.restart();
    return server;
  }

  get url(): string {
    return `http://127.0.0.1:${this.how.port}`;
  }

  get dataDir(): string {
    return this.how.dataDir;
  }

  /** What it has printed since it was started last. */
  get said(): string {
    return this.output;
  }

  get pid(): number {
    return this.process?.pid ?? 0;
  }

  async restart(): Promise<void> {
    this.output = '';
    this.process = await launch(this.how, (chunk) => {
      this.output += chunk;
      return this.output;
    });
  }

  /** As a power cut would: no handler runs. */
  async kill(): Promise<void> {
    this.process?.kill('SIGKILL');
    await ended(this.process);
  }

  async stop(): Promise<void> {
    this.process?.kill('SIGTERM');
    await ended(this.process);
  }

  async remove(): Promise<void> {
    await this.stop();
    await rm(this.dataDir, { recursive: true, force: true });
  }

  /** Runs one of the built commands against the same data. */
  async run(
    command: string,
    input = '',
    ...args: string[]
  ): Promise<{ readonly code: number; readonly output: string }> {
    return await runCommand(command, this.dataDir, input, args);
  }

  /** Starts one of the built commands against the same data and goes on: what it says can be waited for, and it can be killed. */
  begin(command: string, ...args: string[]): Running {
    return new Running(spawnCommand(command, this.dataDir, args));
  }
}

export class Running {
  private output = '';

  constructor(private readonly child: ChildProcess) {
    child.stdin?.end();
    for (const stream of [child.stdout, child.stderr])
      stream?.on('data', (chunk: Buffer) => (this.output += chunk.toString('utf8')));
  }

  /** Waits until the command says so. */
  async says(text: string): Promise<void> {
    while (!this.output.includes(text)) {
      if (this.child.exitCode !== null) throw new Error(`It ended without saying "${text}":\n${this.output}`);
      await new Promise((done) => setTimeout(done, 20));
    }
  }

  /** As a power cut would: no handler runs. */
  async kill(): Promise<void> {
    this.child.kill('SIGKILL');
    await ended(this.child);
  }

  /** As Ctrl+C does; waits for the end. */
  async interrupt(): Promise<{ readonly code: number; readonly output: string }> {
    this.child.kill('SIGINT');
    await ended(this.child);
    return { code: this.child.exitCode ?? -1, output: this.output };
  }
}

function spawnCommand(command: string, dataDir: string, args: readonly string[]): ChildProcess {
  return spawn(process.execPath, [built(command), ...args], {
    env: { ...process.env, DATA_DIR: dataDir, DATABASE_URL: '', DEMO: 'off' },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
}

/** @param hear takes what is printed and gives all of it so far */
async function launch(how: Launch, hear: (chunk: string) => string): Promise<ChildProcess> {
  const child = spawn(process.execPath, [built(how.program)], {
    env: {
      ...process.env,
      PORT: String(how.port),
      DATA_DIR: how.dataDir,
      DEMO: 'off',
      DATABASE_URL: '',
      HOST: '127.0.0.1',
      ...how.environment,
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await new Promise<void>((done, fail) => {
    let output = '';
    child.stdout?.on('data', (chunk: Buffer) => {
      output = hear(chunk.toString('utf8'));
      if (output.includes(how.ready)) done();
    });
    child.once('exit', () => {
      fail(new Error(`${how.program} did not start:\n${output}`));
    });
  });
  return child;
}

async function runCommand(command: string, dataDir: string, input: string, args: readonly string[]) {
  const child = spawnCommand(command, dataDir, args);
  let output = '';
  child.stdout?.on('data', (chunk: Buffer) => (output += chunk.toString('utf8')));
  child.stderr?.on('data', (chunk: Buffer) => (output += chunk.toString('utf8')));
  child.stdin?.end(input);
  await ended(child);
  return { code: child.exitCode ?? -1, output };
}

function ended(child: ChildProcess | null): Promise<void> {
  return new Promise((done) => {
    if (child === null || child.exitCode !== null || child.signalCode !== null) done();
    else child.once('close', () => done());
  });
}

/** Below what the system gives to whoever asks for any port, and apart from other test processes: nobody takes it before it is used, or between two starts. */
let nextPort = 20_000 + (process.pid % 600) * 20;

async function freePort(): Promise<number> {
  for (let tries = 0; tries < 200; tries += 1) {
    const port = nextPort++;
    if (await isFree(port)) return port;
  }
  throw new Error('No port between 20000 and 32200 is free. End what listens there.');
}

function isFree(port: number): Promise<boolean> {
  return new Promise((done) => {
    const probe = createServer();
    probe.once('error', () => {
      done(false);
    });
    probe.listen(port, '127.0.0.1', () => {
      probe.close(() => {
        done(true);
      });
    });
  });
}
