/** A stream's rates, from its media to the line, and its receivers. */

import { obstacleWords } from '../../network/obstacle-words.ts';
import { type Load, type PacketRun, type WireRates, headerBytes, multiplexOf, wireRates } from '../../network/rates.ts';
import type { Plan } from '../../plan.ts';
import type { MediaRate, Stream } from '../../site/model.ts';
import {
  FCS,
  INTER_PACKET_GAP,
  MAC_HEADER,
  MIN_FRAME,
  PREAMBLE_AND_SFD,
  VLAN_TAG,
  frameBytes,
} from '../../standards/ethernet.ts';
import { formatAddress } from '../../standards/ipv4.ts';
import { count, list } from '../../text/words.ts';
import { type Explanation, type ExplanationLine, RATES } from './explanation.ts';
import { digitsGrouped, rates } from './figure.ts';
import { ACKNOWLEDGING, ETHERNET, HEADER_SOURCES, LINE, TAG, TRANSPORT_STREAM } from './sources.ts';
import { reachWords, streamAnswer } from '../answer/stream.ts';

export type WireKind = keyof WireRates;

export const WIRE_WORDS: Readonly<Record<WireKind, string>> = {
  payload: 'payload',
  frame: 'frames without FCS',
  frameWithFcs: 'frames with FCS',
  line: 'line rate',
};

/** From payload to line rate, a line for each step. */
export function streamRatesExplained(plan: Plan, stream: Stream): Explanation {
  const own = plan.network.rates(stream);
  const lines: ExplanationLine[] = [...mediaLines(plan, stream)];
  for (const run of own.runs) lines.push(packetLine(stream, run), headerLine(run));
  lines.push(
    {
      label: 'frames',
      cells: rates(own.untagged.frame),
      formula: `${MAC_HEADER} B of Ethernet header to each packet; without FCS`,
      source: ETHERNET,
    },
    { label: 'with FCS', cells: rates(own.untagged.frameWithFcs), formula: `${FCS} B more` },
  );
  const after: ExplanationLine[] = [
    { label: 'with a VLAN tag', cells: rates(own.tagged.line), formula: `${VLAN_TAG} B more, on trunks`, source: TAG },
  ];
  if (own.replies.length > 0) {
    after.push({
      label: 'back to the source',
      cells: rates(own.reply.untagged.line),
      formula: `acknowledgements, at most: ${ACKNOWLEDGED}`,
      source: ACKNOWLEDGING,
    });
    after.push({
      label: 'back, at least',
      cells: rates(wireRates(own.fewestReplies, { nominal: 0, peak: 0 }, false).line),
      formula: 'one for each picture and packet of sound, where the receiver reads what arrives together at once',
    });
  }
  return {
    answer: streamAnswer(plan, stream),
    title: `${stream.name}: ${streamWords(stream)}`,
    columns: RATES,
    lines,
    total: {
      label: 'line rate',
      cells: rates(own.untagged.line),
      formula: `${PREAMBLE_AND_SFD + INTER_PACKET_GAP} B more of preamble, start delimiter and gap`,
      source: LINE,
    },
    after,
  };
}

/** `rtp from recorder to 239.192.20.31 port 5004`. */
export function streamWords({ transport, source, group, port }: Stream): string {
  const to =
    group === undefined
      ? ', a copy to each receiver'
      : ` to ${formatAddress(group)}${port === undefined ? '' : ` port ${port}`}`;
  return `${transport ?? 'no transport'} from ${source ?? 'nowhere'}${to}`;
}

/** The parts of the payload. */
function mediaLines(plan: Plan, stream: Stream): ExplanationLine[] {
  const { video, audio } = plan.site.media(stream);
  const line = (label: string, rate: MediaRate | undefined, declared: MediaRate | undefined): ExplanationLine[] => {
    if (rate === undefined) return [];
    const carried = declared === undefined && stream.carries !== undefined ? `as in ${stream.carries}` : 'as declared';
    const anew =
      declared !== undefined && stream.carries !== undefined ? `, nor taken over from ${stream.carries}` : '';
    const peak = rate.peakDeclared ? '' : `; no peak is declared${anew}, so it is the same`;
    return [{ label, cells: rates(rate), formula: `${carried}${peak}` }];
  };
  const parts = [...line('video', video?.rate, stream.video?.rate), ...line('audio', audio?.rate, stream.audio?.rate)];
  const { payload } = plan.network.rates(stream);
  const sum: ExplanationLine = {
    label: 'payload',
    cells: rates(payload),
    ...(parts.length > 1 && { formula: 'video and audio' }),
  };
  const multiplex = stream.transport === 'ts-udp' || stream.transport === 'ts-rtp' ? [multiplexLine(plan, stream)] : [];
  return [...(parts.length === 1 ? parts : [...parts, sum]), ...multiplex];
}

function multiplexLine(plan: Plan, stream: Stream): ExplanationLine {
  return {
    label: 'transport stream',
    cells: rates(multiplexOf(stream, plan.site.media(stream))),
    formula:
      stream.muxRate !== undefined
        ? 'as declared, padding included'
        : stream.service !== undefined
          ? 'the programme with its PAT and PMT, each every 100 ms'
          : stream.multiplex !== undefined
            ? 'the whole multiplex'
            : 'with the headers, tables and stuffing of the multiplex',
    source: TRANSPORT_STREAM,
  };
}

function packetLine(stream: Stream, run: PacketRun): ExplanationLine {
  const { nominal, peak } = run.media;
  const size =
    nominal === peak
      ? `${digitsGrouped(peak, 1)} B`
      : `${digitsGrouped(nominal, 1)} B, at peak ${digitsGrouped(peak, 1)} B,`;
  const end =
    run.what === 'video'
      ? `: the last ${stream.transport === 'rtsp' ? 'TCP segment' : 'one'} of a picture ends with it`
      : '';
  return {
    label: `${run.what} packets`,
    cells: rates(run.perSecond, 'packets/s'),
    formula: `with ${size} of media each${end}`,
  };
}

function headerLine(run: PacketRun): ExplanationLine {
  const bytes = headerBytes(run);
  return {
    label: 'headers in each',
    cells: rates({ nominal: bytes, peak: bytes }, 'B'),
    formula: run.headers.map(({ name, bytes: each }) => `${name} ${digitsGrouped(each, 1)}`).join(' + '),
    source: [...new Set(run.headers.flatMap(({ name }) => HEADER_SOURCES[name] ?? []))].join(', '),
  };
}

/** One of a stream's rates, with each header of each packet. */
export function wireExplained(plan: Plan, stream: Stream, kind: WireKind, tagged = false): Explanation {
  const own = plan.network.rates(stream);
  const tag = tagged ? ', with a VLAN tag' : '';
  const total = (tagged ? own.tagged : own.untagged)[kind];
  if (kind === 'payload') {
    const lines = mediaLines(plan, stream).filter(({ label }) => label === 'video' || label === 'audio');
    return {
      title: `${stream.name}: payload`,
      columns: RATES,
      lines,
      total: { label: 'payload', cells: rates(total) },
    };
  }
  return {
    title: `${stream.name}: ${WIRE_WORDS[kind]} of one copy${tag}`,
    columns: RATES,
    lines: [...mediaLines(plan, stream), ...own.runs.flatMap((run) => runLines(run, kind, tagged))],
    total: { label: WIRE_WORDS[kind], cells: rates(total) },
  };
}

const ACKNOWLEDGED = 'one for two segments, and one for each packet of sound';
const FRAME_BYTES = { frame: 'withoutFcs', frameWithFcs: 'withFcs', line: 'line' } as const;

function runLines(run: PacketRun, kind: Exclude<WireKind, 'payload'>, tagged: boolean): ExplanationLine[] {
  const each = (label: string, bytes: Load | number, more: Partial<ExplanationLine> = {}): ExplanationLine => ({
    label,
    part: true,
    cells: rates(typeof bytes === 'number' ? { nominal: bytes, peak: bytes } : bytes, 'B'),
    ...more,
  });
  const of = (part: keyof Load): number => frameBytes(headerBytes(run) + run.media[part], tagged)[FRAME_BYTES[kind]];
  const padding = (part: keyof Load): number =>
    Math.max(0, MIN_FRAME - (MAC_HEADER + headerBytes(run) + run.media[part] + FCS));
  const bytes = { nominal: of('nominal'), peak: of('peak') };
  const bits = { nominal: run.perSecond.nominal * bytes.nominal * 8, peak: run.perSecond.peak * bytes.peak * 8 };
  const pad = { nominal: padding('nominal'), peak: padding('peak') };
  const divided =
    run.what === 'video'
      ? 'half of one more for each picture than fill them'
      : run.what === 'transport stream'
        ? 'the rate ÷ (8 × media in a packet)'
        : 'as many as its codec makes a second';
  return [
    {
      label: `${run.what} packets`,
      cells: rates(run.perSecond, 'packets/s'),
      ...(run.what === 'acknowledgements' ? { formula: ACKNOWLEDGED, source: ACKNOWLEDGING } : { formula: divided }),
    },
    each('media', run.media),
    ...run.headers.map(({ name, bytes: size }) =>
      each(name, size, { ...(HEADER_SOURCES[name] !== undefined && { source: HEADER_SOURCES[name] }) }),
    ),
    each('Ethernet header', MAC_HEADER, { source: ETHERNET }),
    ...(tagged ? [each('VLAN tag', VLAN_TAG, { source: TAG })] : []),
    ...(pad.nominal + pad.peak > 0
      ? [each('padding', pad, { formula: `to the shortest frame of ${MIN_FRAME} B`, source: ETHERNET })]
      : []),
    ...(kind === 'frame' ? [] : [each('FCS', FCS, { source: ETHERNET })]),
    ...(kind === 'line'
      ? [each('preamble, start delimiter and gap', PREAMBLE_AND_SFD + INTER_PACKET_GAP, { source: LINE })]
      : []),
    each('together', bytes),
    { label: `${run.what} in all`, cells: rates(bits), formula: 'packets × bytes × 8' },
  ];
}

/** The replies to a stream's source. */
export function replyExplained(
  plan: Plan,
  stream: Stream,
  kind: Exclude<WireKind, 'payload'>,
  tagged = false,
): Explanation {
  const own = plan.network.rates(stream);
  return {
    title: `${stream.name}: ${WIRE_WORDS[kind]} back to its source${tagged ? ', with a VLAN tag' : ''}`,
    columns: RATES,
    lines: own.replies.flatMap((run) => runLines(run, kind, tagged)),
    total: { label: WIRE_WORDS[kind], cells: rates((tagged ? own.reply.tagged : own.reply.untagged)[kind]) },
  };
}

/** Each receiver, reached or not, and why not. */
export function receiversExplained(plan: Plan, stream: Stream): Explanation {
  const delivery = plan.network.delivery(stream);
  const lines = stream.receivers.map((name): ExplanationLine => {
    if (delivery.reaches.includes(name)) return { label: name, cells: ['reached'] };
    const missed = delivery.unreached.find(({ receiver }) => receiver === name);
    if (missed === undefined) {
      return {
        label: name,
        cells: ['not reached'],
        formula: plan.site.deviceByName.has(name) ? 'the stream has no source' : 'there is no such device',
      };
    }
    const { what, remedy } = obstacleWords(missed.why, name, stream);
    return { label: name, cells: ['not reached'], formula: `${what}; ${remedy}` };
  });
  const networks = delivery.domains.map((domain) => domain.name);
  const route =
    delivery.leaves === undefined
      ? []
      : [`It leaves ${stream.source ?? ''} by port ${delivery.leaves.port.name}, into ${list(networks)}.`];
  return {
    answer: reachWords(plan, stream),
    title: `${stream.name} reaches ${delivery.reaches.length} of ${count(stream.receivers.length, 'receiver')}`,
    sentences: route,
    columns: [],
    lines,
  };
}
