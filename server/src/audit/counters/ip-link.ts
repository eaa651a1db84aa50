/**
 * Counters of Linux: lines of JSON, each with a time and what `ip -s -j link` printed then.
 *
 * `{"time": 1767261600.25, "links": […]}` — seconds since 1970 or a time of RFC 3339, and a `device` where the file
 * is of several. Counters have 64 bits; octets are those of the frame without its check sequence, as the lab counts
 * them over virtual cables; a driver may count the check sequence too, 0.3 % of a full frame.
 */

import { visible } from '../../text/visible.ts';
import { Unreadable } from '../unreadable.ts';
import { type Readings, type Sample, type SampleReader, MOST_SAMPLES } from './sample.ts';
import { timeOf } from './time.ts';
import { isMapping } from '../../text/syntax.ts';

/** The command that makes such a file, for the user. */
export const IP_LINK_COMMAND =
  "while sleep 10; do ip -s -j link | jq -c '{time: now, links: .}'; done >> counters.jsonl";

type Json = Readonly<Record<string, unknown>>;

export class LinkLines implements SampleReader {
  private readonly samples: Sample[] = [];
  private broken: number | undefined;

  line(text: string, number: number): void {
    if (text.trim() === '') return;
    if (this.broken !== undefined) throw new Unreadable(notJson(this.broken));
    let read: unknown;
    try {
      read = JSON.parse(text);
    } catch (error) {
      if (!(error instanceof SyntaxError)) throw error;
      // The last line may be incomplete.
      this.broken = number;
      return;
    }
    const at = `Line ${number}`;
    if (Array.isArray(read))
      throw new Unreadable(`${at} is what ip prints, without the time at which it did. Take it so: ${IP_LINK_COMMAND}`);
    if (!isMapping(read)) throw new Unreadable(`${at} is no JSON object. Take them so: ${IP_LINK_COMMAND}`);
    const time = timeOf(read['time'], at);
    const device = read['device'];
    if (device !== undefined && typeof device !== 'string') throw new Unreadable(`${at}: device is no text.`);
    if (!Array.isArray(read['links'])) throw new Unreadable(`${at}: links is not the list that ip -s -j link prints.`);
    for (const link of read['links'] as readonly unknown[]) {
      const sample = sampleOf(link, time, device, at);
      if (sample !== undefined) this.samples.push(sample);
    }
    if (this.samples.length > MOST_SAMPLES)
      throw new Unreadable(`${at}: more than ${MOST_SAMPLES} samples. Give less at a time.`);
  }

  end(): Readings {
    if (this.samples.length === 0 && this.broken !== undefined) throw new Unreadable(notJson(this.broken));
    const notes = this.broken === undefined ? [] : [`Line ${this.broken}, the last one, is cut off and was left out.`];
    return { samples: this.samples, notes };
  }
}

function notJson(line: number): string {
  return `Line ${line} is not whole JSON; each line is one object. Take them so: ${IP_LINK_COMMAND}`;
}

/** Missing keys are ignored: ip prints empty objects for filtered links, and no statistics without -s. */
function sampleOf(link: unknown, time: number, device: string | undefined, at: string): Sample | undefined {
  if (!isMapping(link)) throw new Unreadable(`${at}: a link is no object.`);
  const name = link['ifname'];
  if (typeof name !== 'string' || name === '') return undefined;
  const long = link['stats64'];
  const statistics = long ?? link['stats'];
  if (statistics === undefined) return undefined;
  const bits = long === undefined ? 32 : 64;
  const [rx, tx] = isMapping(statistics) ? [statistics['rx'], statistics['tx']] : [];
  if (!isMapping(rx) || !isMapping(tx))
    throw new Unreadable(`${at}: the statistics of ${visible(name, 40)} have no rx and tx.`);
  const whole = (of: Json, key: string): number | undefined => {
    const value = of[key];
    if (value === undefined) return undefined;
    if (typeof value === 'number' && Number.isInteger(value) && value >= 0) return value;
    throw new Unreadable(`${at}: ${key} of ${visible(name, 40)} is no whole number.`);
  };
  const octets = (of: Json): Sample['received'] => {
    const value = whole(of, 'bytes');
    return value === undefined ? undefined : { value: BigInt(value), bits };
  };
  const lost = new Map<string, number>();
  // `dropped` on receipt also counts frames of protocols that the host does not use, so it is left out.
  for (const [what, of, key] of [
    ['rx errors', rx, 'errors'],
    ['tx errors', tx, 'errors'],
    ['tx dropped', tx, 'dropped'],
  ] as const) {
    const value = whole(of, key);
    if (value !== undefined) lost.set(what, value);
  }
  const info = link['linkinfo'];
  const loopback = link['link_type'] === 'loopback';
  const over = link['link'];
  return {
    time,
    device,
    names: [name],
    received: octets(rx),
    sent: octets(tx),
    lost,
    withFcs: false,
    speed: undefined,
    since: String(link['ifindex']),
    upTime: undefined,
    virtual: loopback || (isMapping(info) && info['info_kind'] !== undefined) ? true : undefined,
    over: typeof over === 'string' ? over : undefined,
  };
}
