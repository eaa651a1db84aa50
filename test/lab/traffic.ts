/** Who sends what to whom in a lab, and the process that does it. */

import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { formatAddress } from '../../server/src/standards/ipv4.ts';
import { MAXIMUM_SEGMENT } from '../../server/src/standards/tcp.ts';
import { oppositePort } from '../../server/src/network/link.ts';
import { type PacketRun, headerBytes } from '../../server/src/network/rates.ts';
import { trafficAsStream } from '../../server/src/network/traffic.ts';
import type { Plan } from '../../server/src/plan.ts';
import type { Device, Stream } from '../../server/src/site/model.ts';
import type { Addresses } from './addresses.ts';
import { addressFor } from './hosts.ts';
import { type Place, URGENT } from './place.ts';

export interface Asker {
  readonly namespace: string;
  readonly interface: string;
  readonly source: string;
  /** Seconds after which it begins to ask, if it has heard nobody. */
  readonly delay: number;
}

/** A router that forwards groups between its interfaces. */
export interface Forwarder {
  readonly namespace: string;
  readonly interfaces: readonly { readonly name: string; readonly address: string }[];
}

interface Sender {
  readonly namespace: string;
  readonly address: string;
  readonly port: number;
  readonly ttl: number;
  /** Waits for a connection at its address, instead of sending datagrams to it. */
  readonly serves: boolean;
  readonly runs: readonly {
    readonly media: number;
    readonly around: number;
    readonly perSecond: number;
    readonly full: boolean;
  }[];
}

interface Receiver {
  readonly namespace: string;
  readonly address: string;
  readonly port: number;
  readonly connects: boolean;
}

/** One receiver of one stream, and whether the computation has it reached. */
export interface Reception {
  readonly stream: Stream;
  readonly receiver: Device;
  readonly expected: boolean;
  readonly at: Receiver;
  /** The sender that it hears. */
  readonly sender: number;
}

export interface Traffic {
  readonly senders: readonly Sender[];
  readonly receptions: readonly Reception[];
}

/** Headers that the kernel of the sender puts on by itself. */
const UDP_HEADERS = 28;
const TCP_HEADERS = 52;
const FIRST_PORT = 20_000;

export function trafficOf(plan: Plan, addresses: Addresses, namespaceOf: (device: Device) => string): Traffic {
  const senders: Sender[] = [];
  const receptions: Reception[] = [];
  let port = FIRST_PORT;
  for (const { stream, source, reaches } of plan.network.deliveries) {
    if (source === undefined || plan.network.interfaces.of(source).length === 0) continue;
    const runs = plan.network.rates(stream)?.runs ?? [];
    const receivers = stream.receivers
      .flatMap((name) => plan.site.deviceByName.get(name) ?? [])
      .filter((device) => isHost(device) && shows(plan, device, stream));
    const namespace = namespaceOf(source);
    const { ttl } = stream;
    if (stream.group !== undefined) {
      const address = formatAddress(stream.group);
      senders.push({ namespace, address, port, ttl, serves: false, runs: runs.map((r) => packets(r, UDP_HEADERS)) });
      for (const receiver of receivers) {
        const at = { namespace: namespaceOf(receiver), address, port, connects: false };
        receptions.push({
          stream,
          receiver,
          expected: reaches.includes(receiver.name),
          at,
          sender: senders.length - 1,
        });
      }
      port++;
      continue;
    }
    for (const receiver of receivers) {
      const pulled = stream.transport === 'rtsp';
      const [asked, asking] = pulled ? [source, receiver] : [receiver, source];
      const address = addressFor(plan, addresses, asked, asking);
      if (receiver === source || address === undefined) continue;
      senders.push({
        namespace,
        address,
        port,
        ttl,
        serves: pulled,
        runs: runs.map((r) => packets(r, pulled ? TCP_HEADERS : UDP_HEADERS)),
      });
      const at = { namespace: namespaceOf(receiver), address, port, connects: pulled };
      receptions.push({ stream, receiver, expected: reaches.includes(receiver.name), at, sender: senders.length - 1 });
      port++;
    }
  }
  for (const { traffic, from, to, obstacle } of plan.network.traffic) {
    if (from === undefined || to === undefined || obstacle !== undefined) continue;
    // What comes back is sent over a connection of its own: the same segments, and the same acknowledgements.
    for (const [source, receiver, rate] of [
      [from, to, traffic.rate ?? 0],
      [to, from, traffic.back ?? 0],
    ] as const) {
      const address = rate === 0 ? undefined : addressFor(plan, addresses, source, receiver);
      if (address === undefined) continue;
      const perSecond = rate / (8 * MAXIMUM_SEGMENT);
      const runs = [{ media: MAXIMUM_SEGMENT, around: 0, perSecond, full: true }];
      senders.push({ namespace: namespaceOf(source), address, port, ttl: 1, serves: true, runs });
      const at = { namespace: namespaceOf(receiver), address, port, connects: true };
      const sender = senders.length - 1;
      receptions.push({ stream: trafficAsStream(traffic, to), receiver, expected: true, at, sender });
      port++;
    }
  }
  return { senders, receptions };
}

/** Whether a screen that shows some of its streams at a time is to show this one: the largest, as they are counted. */
function shows({ network }: Plan, receiver: Device, stream: Stream): boolean {
  return !network.interfaces
    .of(receiver)
    .some(({ link, port }) => network.waiting(link, oppositePort(link, port)).some((each) => each.stream === stream));
}

function isHost(device: Device): boolean {
  return (!device.bridging || device.routing) && device.kind !== 'patch-panel';
}

function packets(run: PacketRun, kernelHeaders: number): Sender['runs'][number] {
  const around = headerBytes(run) - kernelHeaders;
  const media = run.media.nominal;
  return { media, around, perSecond: run.perSecond.nominal, full: Math.round(media + around) === MAXIMUM_SEGMENT };
}

export interface RunResult {
  readonly sent: readonly number[];
  readonly failed: readonly number[];
  readonly got: readonly number[];
  /** Seconds by which the latest packet missed its time. */
  readonly latest: number;
}

const SCRIPT = fileURLToPath(new URL('./traffic.py', import.meta.url));

/** The process that holds all sockets. */
export class TrafficProcess {
  private readonly child: ChildProcessByStdio<Writable, Readable, Readable>;
  private readonly answers: AsyncIterator<string>;
  private complaints = '';

  constructor(place: Place) {
    this.child = spawn('nice', [...URGENT, 'python3', '-B', SCRIPT, place.folder], { stdio: 'pipe' });
    place.atEnd(() => this.child.kill('SIGKILL'));
    this.child.stderr.on('data', (data: Buffer) => (this.complaints += data.toString()));
    this.child.stdin.on('error', () => undefined);
    this.answers = createInterface({ input: this.child.stdout })[Symbol.asyncIterator]();
  }

  async setUp(traffic: Traffic, queriers: readonly Asker[], routers: readonly Forwarder[]): Promise<void> {
    const receivers = traffic.receptions.map(({ at }) => at);
    await this.command({ do: 'set-up', queriers, routers, receivers, senders: traffic.senders, settle: 0.3 });
  }

  /** Everybody joins, and every pair that talks has talked. Gives what the kernel said to each who cannot join. */
  async meet(): Promise<readonly (string | null)[]> {
    const { refused } = (await this.command({ do: 'join', settle: 0.9 })) as { refused: (string | null)[] };
    await this.command({ do: 'meet', settle: 0.8 });
    return refused;
  }

  /** Sends what `seconds` of every stream come to; `scale` is the part of the declared rate. */
  async run(seconds: number, scale: number): Promise<RunResult> {
    return (await this.command({ do: 'run', seconds, scale, settle: 0.25 })) as RunResult;
  }

  private async command(command: object): Promise<object> {
    this.child.stdin.write(`${JSON.stringify(command)}\n`);
    const { value, done } = await this.answers.next();
    if (done === true) throw new Error(`the senders and receivers ended: ${this.complaints.trim()}`);
    const answer = JSON.parse(value) as { error?: string };
    if (answer.error !== undefined) throw new Error(`the senders and receivers: ${answer.error}`);
    return answer;
  }
}
