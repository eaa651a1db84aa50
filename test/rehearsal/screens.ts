// Screens: FFmpeg that takes a stream by its description and decodes it, picture by picture.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import type { Device, Stream } from '../../server/src/site/model.ts';
import { formatAddress } from '../../server/src/standards/ipv4.ts';
import type { HostProgram } from '../lab/host-program.ts';
import type { Lab } from '../lab/lab.ts';
import type { House } from './house.ts';

/**
 * One to each stream that is sent to a screen or a computer: to a group, or a copy of its own.
 *
 * @param descriptions the folder of those that were made
 */
export function screensOf(house: House, descriptions: string): Screen[] {
  const { plan, lab } = house;
  return plan.network.deliveries.flatMap(({ stream, reaches }) =>
    stream.transport === 'rtsp'
      ? []
      : reaches
          .map((name) => house.host(name))
          .filter(({ kind }) => kind === 'display' || kind === 'computer')
          .map((screen) => {
            const [at] = plan.network.interfaces.of(screen);
            const frameRate = plan.site.media(stream)?.video?.frameRate ?? assert.fail(stream.name);
            return new Screen(lab, screen, {
              stream,
              frameRate,
              description: join(descriptions, `${stream.name}.sdp`),
              address: formatAddress(at?.address ?? 0),
            });
          }),
  );
}

interface Shown {
  readonly stream: Stream;
  readonly frameRate: number;
  /** The file that was made for the stream. */
  readonly description: string;
  /** The host joins by its interface. */
  readonly address: string;
}

export class Screen {
  readonly name: string;
  readonly frameRate: number;
  private readonly player: HostProgram;
  private from = 0;

  constructor(lab: Lab, host: Device, { stream, frameRate, description, address }: Shown) {
    this.name = `${stream.name} at ${host.name}`;
    this.frameRate = frameRate;
    // The switches and senders go first.
    this.player = lab.start(host, 'nice', [
      '-n',
      '12',
      'ffmpeg',
      '-nostdin',
      '-hide_banner',
      '-loglevel',
      'error',
      '-protocol_whitelist',
      'file,rtp,udp',
      '-localaddr',
      address,
      // A decoder that has to wait for the processor loses nothing that comes meanwhile. With the buffer that FFmpeg
      // takes by itself, some thousands of packets were lost on a busy machine, and with this one none.
      '-buffer_size',
      '4000000',
      // Until a keyframe has come: every ten seconds, for the rarest.
      '-analyzeduration',
      '12000000',
      '-probesize',
      '20000000',
      '-fpsprobesize',
      '0',
      '-i',
      description,
      '-map',
      '0:v:0',
      '-fps_mode',
      'passthrough',
      '-flush_packets',
      '1',
      '-f',
      'framecrc',
      '-',
    ]);
  }

  /** Counts from now on: a player that joins between two keyframes cannot decode what comes before the next. */
  beginAnew(): void {
    this.from = this.player.output.length;
  }

  get pictures(): number {
    return this.lines.filter((line) => line.startsWith('0,')).length;
  }

  /** How far it is, and the last of what it complains of. */
  get said(): string {
    return `${this.name}: ${this.pictures}; ${this.complaints.slice(-2).join(' ')}`;
  }

  get complaints(): readonly string[] {
    return this.lines.filter((line) => !/^(?:0,|#|$)/.test(line));
  }

  /** What it did not show as it was sent in the `seconds` since `beginAnew`; `undefined` where all is right. */
  wrong(seconds: number): readonly string[] | undefined {
    const { name, complaints, pictures, frameRate } = this;
    // A picture waits in buffers, half a second for packets out of order; a busy machine shows it later.
    const few = Math.abs(pictures - seconds * frameRate) > 2 * frameRate;
    const wrong = [
      ...complaints.map((line) => `${name}: ${line}`),
      ...(few ? [`${name} showed ${pictures} pictures of ${Math.round(seconds * frameRate)}`] : []),
    ];
    return wrong.length === 0 ? undefined : wrong;
  }

  private get lines(): readonly string[] {
    // The last line may not be whole yet.
    return this.player.output.slice(this.from).split('\n').slice(0, -1);
  }
}
