import { isIPv4 } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import { Command, InvalidArgumentError } from 'commander';
import { codeOf, reasonOf } from '../machine/failures.ts';
import { Announcer } from '../announce/announcer.ts';
import { announcerTools } from '../machine/sap-socket.ts';
import { visiblePath } from '../text/visible.ts';
import { DescriptionFiles } from './description-files.ts';
import { SAP_BANDWIDTH, SAP_INTERVAL, SAP_TTL } from '../standards/sap.ts';
import { CannotDo, Stopped } from '../machine/cannot-do.ts';
import { endOrderlyBy, print } from './print.ts';

interface Options {
  readonly interface: string;
  readonly bandwidth: number;
  readonly atLeast: number;
  readonly ttl: number;
}

/** How often the files are looked at. */
const LOOK_MS = 1000;

export function announceCommand(): Command {
  return new Command('announce')
    .description('Announce streams by SAP (RFC 2974) until stopped, so that players and recorders list them.')
    .argument(
      '<FOLDER_OR_FILE...>',
      'session descriptions, as `plumbline make sdp` writes them; of a folder, all *.sdp',
    )
    .requiredOption('--interface <address>', 'the IPv4 address of the interface to announce by', address)
    .option('--bandwidth <bit/s>', 'the limit for all announcements on a group together', positive, SAP_BANDWIDTH)
    .option('--at-least <seconds>', 'the shortest interval between announcements of a stream', positive, SAP_INTERVAL)
    .option('--ttl <hops>', 'time to live of the packets, 1 to 255', timeToLive, SAP_TTL)
    .addHelpText(
      'after',
      `
Each stream is announced at once, then every five minutes give or take a third, less often where many are announced.
A file that changes is announced anew, one that goes is withdrawn, and so is all at the end (SIGINT, SIGTERM).
Receivers must be able to join the group of the announcements: 239.255.255.255 for groups of 239.255.0.0/16,
239.195.255.255 for 239.192.0.0/14, else 224.2.127.254.

Example:
  plumbline make sdp --site home --out sdp && plumbline announce sdp --interface 192.168.20.5

Exit status: 0, ended by a signal; 2, it could not run.`,
    )
    .action(async (paths: string[], options: Options) => announce(paths, options));
}

async function announce(paths: readonly string[], { interface: at, bandwidth, atLeast, ttl }: Options): Promise<void> {
  const report = (line: string): void => print(`${visiblePath(line)}\n`);
  const options = { interface: at, ttl, pace: { bandwidth, leastInterval: atLeast }, report };
  const announcer = new Announcer(options, announcerTools(options));
  const ended = new AbortController();
  const files = new DescriptionFiles(paths, report, ended.signal);
  const end = (): void => ended.abort();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, end);
  endOrderlyBy(end);
  try {
    await announcer.take(await files.look());
    if (announcer.count === 0) report(`There is nothing to announce in ${paths.join(', ')} yet.`);
    while (!ended.signal.aborted) {
      await sleep(LOOK_MS, undefined, { signal: ended.signal }).catch(end);
      if (!ended.signal.aborted) await announcer.take(await files.look());
    }
  } catch (error) {
    if (error instanceof Stopped) return;
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw new CannotDo(`Nothing can be announced by ${at}: ${networkReason(code)}.`);
  } finally {
    await announcer.stop();
  }
}

function networkReason(code: string): string {
  if (code === 'EADDRNOTAVAIL' || code === 'ENODEV')
    return 'it is no address of this machine, or its interface is down';
  if (code === 'EADDRINUSE') return 'another program has the port of announcements for itself';
  return reasonOf(code);
}

function address(text: string): string {
  if (!isIPv4(text)) throw new InvalidArgumentError('It is an IPv4 address, such as 192.168.20.5.');
  return text;
}

function positive(text: string): number {
  const value = Number(text);
  if (!(value > 0 && value < 1e9)) throw new InvalidArgumentError('It is a number above 0.');
  return value;
}

function timeToLive(text: string): number {
  if (!/^\d{1,3}$/.test(text) || Number(text) < 1 || Number(text) > 255)
    throw new InvalidArgumentError('It is a number from 1 to 255.');
  return Number(text);
}
