import { once } from 'node:events';
import { connect, createServer } from 'node:net';
import type { AddressInfo, Server, Socket } from 'node:net';

/** A way to a port that can be shut, as a cable can be pulled, and opened again. */
export class Gate {
  private readonly open = new Set<Socket>();
  private shutNow = false;

  private constructor(private readonly server: Server) {}

  static async before(port: number): Promise<Gate> {
    const server = createServer();
    const gate = new Gate(server);
    server.on('connection', (inner) => {
      if (gate.shutNow) {
        inner.destroy();
        return;
      }
      const outer = connect(port, '127.0.0.1');
      for (const [one, other] of [
        [inner, outer],
        [outer, inner],
      ] as const) {
        gate.open.add(one);
        one.pipe(other);
        one.on('error', () => other.destroy());
        one.on('close', () => {
          gate.open.delete(one);
          other.destroy();
        });
      }
    });
    server.listen(0, '127.0.0.1');
    await once(server, 'listening');
    return gate;
  }

  get port(): number {
    return (this.server.address() as AddressInfo).port;
  }

  /** How many connections go through now. */
  get passing(): number {
    return this.open.size / 2;
  }

  shut(): void {
    this.shutNow = true;
    for (const socket of this.open) socket.destroy();
  }

  reopen(): void {
    this.shutNow = false;
  }

  async remove(): Promise<void> {
    this.shut();
    this.server.close();
    await once(this.server, 'close');
  }
}
