import { Counter, Gauge, Histogram, Registry, collectDefaultMetrics } from 'prom-client';

/** What the house watches. Labels come from short fixed lists, never from data. */
export class Metrics {
  readonly registry = new Registry();
  readonly requests = new Histogram({
    name: 'tallywing_http_request_seconds',
    help: 'Time to answer a request.',
    labelNames: ['method', 'route', 'status'],
    buckets: [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10],
    registers: [this.registry],
  });
  readonly recordings = new Histogram({
    name: 'tallywing_record_work_seconds',
    help: 'Time to record work on one aircraft, judged and stored.',
    labelNames: ['outcome'],
    buckets: [0.01, 0.025, 0.05, 0.1, 0.2, 0.5, 1, 2, 5],
    registers: [this.registry],
  });
  readonly signIns = new Counter({
    name: 'tallywing_sign_ins_total',
    help: 'Tries to sign in.',
    labelNames: ['outcome'],
    registers: [this.registry],
  });
  readonly sockets = new Gauge({
    name: 'tallywing_live_sockets',
    help: 'Open connections of boards that are told of changes.',
    registers: [this.registry],
  });

  readonly problems = new Counter({
    name: 'tallywing_problems_total',
    help: 'Answers that told a problem, by its code.',
    labelNames: ['code'],
    registers: [this.registry],
  });
  readonly connections = new Gauge({
    name: 'tallywing_database_connections',
    help: 'Connections to the database: lent out, idle, and requests that wait for one.',
    labelNames: ['state'],
    registers: [this.registry],
  });
  readonly diskFree = new Gauge({
    name: 'tallywing_database_disk_free_bytes',
    help: 'Room left on the disk of the built-in server; absent where the database is elsewhere.',
    registers: [this.registry],
  });
  readonly queue = new Gauge({
    name: 'tallywing_queue_jobs',
    help: 'Work that waits for a worker; absent where there is no queue.',
    labelNames: ['state'],
    registers: [this.registry],
  });

  constructor() {
    collectDefaultMetrics({ register: this.registry });
  }
}
