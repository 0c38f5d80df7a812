import type { Metrics } from '../common/metrics.js';
import type { Database } from '../database/database.js';
import type { Disk } from '../database/disk.js';
import { migrationsOf } from '../database/migrate.js';
import { probe } from '../database/probe.js';

export interface Readiness {
  /** Why nothing should be asked of this process now; empty when it is ready. */
  readonly because: readonly string[];
  /** What somebody should look at soon. */
  readonly remarks: readonly string[];
}

/** Tells what is, not what was at the start. */
export class HealthService {
  constructor(
    private readonly database: Database,
    private readonly disk: Disk,
    private readonly metrics: Metrics,
  ) {}

  async readiness(): Promise<Readiness> {
    const disk = await this.disk.state().catch(() => ({ full: false, says: 'the disk could not be looked at' }));
    const remarks = disk.says === null ? [] : [disk.says];
    try {
      const because = [...(await probe(this.database)), ...(await this.foreignMigrations())];
      return { because: disk.full ? [...because, ...remarks] : because, remarks: disk.full ? [] : remarks };
    } catch {
      return { because: ['the database does not answer', ...remarks], remarks: [] };
    }
  }

  /** What is looked up when it is asked for, beside what was counted meanwhile. */
  async figures(): Promise<string> {
    const { total, idle, waiting } = this.database.connections();
    this.metrics.connections.set({ state: 'lent' }, total - idle);
    this.metrics.connections.set({ state: 'idle' }, idle);
    this.metrics.connections.set({ state: 'waiting' }, waiting);
    const free = await this.disk.free().catch(() => null);
    if (free !== null) this.metrics.diskFree.set(free);
    const queue = await this.database.queue().catch(() => null);
    if (queue !== null) {
      this.metrics.queue.set({ state: 'waiting' }, queue.waiting);
      this.metrics.queue.set({ state: 'failing' }, queue.failing);
    }
    return await this.metrics.registry.metrics();
  }

  private async foreignMigrations(): Promise<string[]> {
    const applied = new Set(await this.database.appliedMigrations());
    const own = await migrationsOf();
    return [
      ...own.filter((name) => !applied.has(name)).map((name) => `the migration ${name} is missing from the database`),
      ...[...applied]
        .filter((name) => !own.includes(name))
        .map((name) => `the database is newer than this software: ${name}`),
    ];
  }
}
