// What /proc shows of the processes of this machine: arguments to everybody, the environment to their user and root.
import { readFileSync, readdirSync } from 'node:fs';

/** Milliseconds from one look to the next. */
const EVERY = 250;

export class ProcessList {
  /** Where a secret was seen. */
  readonly seen: string[] = [];
  /** Every command that was seen, its arguments parted by spaces. */
  readonly commands = new Set<string>();
  private readonly secrets: readonly string[];
  private timer: NodeJS.Timeout | undefined;

  constructor(secrets: readonly string[]) {
    this.secrets = secrets;
  }

  /** Looks again and again: programs that run before another one takes their place are there for a moment. */
  watch(): void {
    this.timer = setInterval(() => this.look(), EVERY);
    this.timer.unref();
  }

  end(): void {
    clearInterval(this.timer);
  }

  look(): void {
    for (const pid of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
      for (const what of ['cmdline', 'environ'] as const) {
        const text = readIfThere(`/proc/${pid}/${what}`).replaceAll('\0', ' ');
        if (what === 'cmdline') this.commands.add(text);
        if (this.secrets.some((secret) => text.includes(secret))) this.seen.push(`${pid} ${what}: ${text}`);
      }
    }
  }
}

function readIfThere(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    // The process has ended meanwhile.
    return '';
  }
}
