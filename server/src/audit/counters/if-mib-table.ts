/**
 * Counters of any equipment: values of the Interfaces MIB as CSV, a row for each interface and time.
 *
 * The header names the columns as the MIB does, in any order: `time`, `device` where the file is of several, `ifName`
 * or `ifDescr` or both, `ifHCInOctets` and `ifHCOutOctets` or the 32-bit `ifInOctets` and `ifOutOctets`, and any other
 * columns of `IF_MIB`. Others are ignored; an empty field counts as missing.
 */

import { type Counter, IF_MIB, SPEED_BEYOND } from '../../standards/if-mib.ts';
import { csvFields } from '../../standards/csv.ts';
import { visible } from '../../text/visible.ts';
import { Unreadable } from '../unreadable.ts';
import { type Readings, type Sample, type SampleReader, MOST_SAMPLES } from './sample.ts';
import { timeOf } from './time.ts';

const OCTETS = [IF_MIB.received.hc, IF_MIB.received.plain, IF_MIB.sent.hc, IF_MIB.sent.plain];

export class IfMibTable implements SampleReader {
  private readonly samples: Sample[] = [];
  private columns: ReadonlyMap<string, number> | undefined;
  private width = 0;

  line(text: string, number: number): void {
    if (text.trim() === '') return;
    const fields = csvFields(text)?.map((field) => field.trim());
    if (fields === undefined) throw new Unreadable(`Line ${number}: a quotation mark is not closed on its line.`);
    if (this.columns === undefined) {
      this.columns = columnsOf(fields);
      this.width = fields.length;
      return;
    }
    if (fields.length !== this.width)
      throw new Unreadable(`Line ${number} has ${fields.length} fields, and the first line ${this.width}.`);
    this.samples.push(sampleOf(this.columns, fields, `Line ${number}`));
    if (this.samples.length > MOST_SAMPLES)
      throw new Unreadable(`Line ${number}: more than ${MOST_SAMPLES} samples. Give less at a time.`);
  }

  end(): Readings {
    return { samples: this.samples, notes: [] };
  }
}

function columnsOf(header: readonly string[]): ReadonlyMap<string, number> {
  const columns = new Map<string, number>();
  header.forEach((name, index) => {
    if (columns.has(name)) throw new Unreadable(`The first line names ${visible(name, 40)} twice.`);
    columns.set(name, index);
  });
  const missing = [
    ...(columns.has('time') ? [] : ['time']),
    ...(IF_MIB.name.some((name) => columns.has(name)) ? [] : ['ifName or ifDescr']),
    ...(OCTETS.some((name) => columns.has(name))
      ? []
      : ['ifHCInOctets and ifHCOutOctets, or ifInOctets and ifOutOctets']),
  ];
  if (missing.length === 0) return columns;
  throw new Unreadable(
    `The first line does not name ${missing.join(', nor ')}. It is neither the header of IF-MIB values nor a line of ` +
      `JSON: it begins with ${visible(header.join(','), 60)}`,
  );
}

function sampleOf(columns: ReadonlyMap<string, number>, fields: readonly string[], at: string): Sample {
  const field = (column: string): string | undefined => {
    const index = columns.get(column);
    const text = index === undefined ? '' : (fields[index] ?? '');
    return text === '' ? undefined : text;
  };
  const whole = (column: string, bits: 32 | 64): bigint | undefined => {
    const text = field(column);
    if (text === undefined) return undefined;
    const value = /^\d{1,20}$/.test(text) ? BigInt(text) : -1n;
    if (value >= 0n && value < 1n << BigInt(bits)) return value;
    throw new Unreadable(`${at}: ${column} is ${visible(text, 40)}, no whole number of ${bits} bits.`);
  };
  const counter = ({ hc, plain }: { readonly hc: string; readonly plain: string }): Counter | undefined => {
    const long = whole(hc, 64);
    if (long !== undefined) return { value: long, bits: 64 };
    const short = whole(plain, 32);
    return short === undefined ? undefined : { value: short, bits: 32 };
  };
  const names = IF_MIB.name.flatMap((column) => field(column) ?? []);
  if (names.length === 0) throw new Unreadable(`${at} names no interface.`);
  const lost = new Map<string, number>();
  for (const column of IF_MIB.lost) {
    const value = whole(column, 32);
    if (value !== undefined) lost.set(column, Number(value));
  }
  const upTime = whole(IF_MIB.upTime, 32);
  return {
    time: timeOf(field('time'), at),
    device: field('device'),
    names,
    received: counter(IF_MIB.received),
    sent: counter(IF_MIB.sent),
    lost,
    withFcs: true,
    speed: speedOf(whole(IF_MIB.speed.high, 32), whole(IF_MIB.speed.plain, 32)),
    since: field(IF_MIB.discontinuity) ?? '',
    upTime: upTime === undefined ? undefined : Number(upTime),
    virtual: undefined,
    over: undefined,
  };
}

/** bit/s; an interface that is down, or has no speed, reports 0. */
function speedOf(high: bigint | undefined, plain: bigint | undefined): number | undefined {
  const inMillions = Number(high ?? 0n) * 1e6;
  if (inMillions > 0) return inMillions;
  return plain === undefined || plain === 0n || Number(plain) === SPEED_BEYOND ? undefined : Number(plain);
}
