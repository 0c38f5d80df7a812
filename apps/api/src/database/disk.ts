import { statfs } from 'node:fs/promises';

const MEGABYTE = 1_048_576;
/** Below this the next entries may find no room; PostgreSQL itself needs some to put its log of changes away. */
const TOO_LITTLE = 64 * MEGABYTE;
const SOON_TOO_LITTLE = 1024 * MEGABYTE;

/** Room on the disk of the built-in server. A database elsewhere is watched there. */
export class Disk {
  constructor(
    private readonly place: string | null,
    private readonly look: (place: string) => Promise<{ readonly bavail: number; readonly bsize: number }> = statfs,
  ) {}

  /** @returns bytes left for the server's user; null where the database is not on this computer */
  async free(): Promise<number | null> {
    if (this.place === null) return null;
    const { bavail, bsize } = await this.look(this.place);
    return bavail * bsize;
  }

  async state(): Promise<{ readonly full: boolean; readonly says: string | null }> {
    const free = await this.free();
    if (free === null || free >= SOON_TOO_LITTLE) return { full: false, says: null };
    const says = `the disk of the database has ${Math.floor(free / MEGABYTE)} MB left`;
    return { full: free < TOO_LITTLE, says };
  }
}
