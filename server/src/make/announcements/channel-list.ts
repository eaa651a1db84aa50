/**
 * The programmes of the site that come over the network, as a playlist (XSPF, version 1) like `playlist` for one screen.
 */

import type { Plan } from '../../plan.ts';
import type { Site, Stream } from '../../site/model.ts';
import { skyFrequency } from '../../site/television/channel.ts';
import type { Service } from '../../site/television/facts.ts';
import { megahertz } from '../../text/radio-words.ts';
import { textAt } from '../../text/syntax.ts';
import { few } from '../../text/words.ts';
import { header } from '../header.ts';
import type { Output } from '../output.ts';
import { xmlText } from '../quoting/xml.ts';
import { groupLocation } from './playlist.ts';

export const channelList: Output = {
  kind: 'channel-list',
  title: 'Channel list (XSPF)',
  summary: 'the programmes that are sent as groups, by the names of the services, as a playlist in an open format',
  subjects: () => [],
  make(plan) {
    const { site } = plan;
    const sent = site.services.map((service) => ({ service, locations: locationsOf(site, service) }));
    const channels = sent.filter(({ locations }) => locations.length > 0);
    const silent = sent.filter(({ locations }) => locations.length === 0).map(({ service }) => service.name);
    const notes =
      silent.length === 0
        ? []
        : [`channel-list: no group is sent of ${few(silent, 5)}: what only comes by coax has no address.`];
    if (channels.length === 0) return { files: [], refused: [], notes };
    const tracks = channels.flatMap(({ service, locations }) => [
      '    <track>',
      ...locations.map((location) => `      <location>${xmlText(location)}</location>`),
      `      <title>${xmlText(textAt(service.item.data, ['description']) ?? service.name)}</title>`,
      `      <annotation>${xmlText(onAir(plan, service))}</annotation>`,
      '    </track>',
    ]);
    const lines = [
      '<?xml version="1.0" encoding="UTF-8"?>',
      '<playlist version="1" xmlns="http://xspf.org/ns/0/">',
      `  <title>${xmlText(`${site.name ?? 'Site'}: television`)}</title>`,
      `  <annotation>${xmlText(header(site, 'make channel-list').join(' '))}</annotation>`,
      '  <trackList>',
      ...tracks,
      '  </trackList>',
      '</playlist>',
    ];
    return { files: [{ path: 'channel-list.xspf', text: `${lines.join('\n')}\n` }], refused: [], notes };
  },
};

/** The addresses of groups that carry the service alone; else of those that carry its whole multiplex. */
function locationsOf(site: Site, { name, multiplexes }: Service): string[] {
  const carrying = (is: (stream: Stream) => boolean): string[] => [
    ...new Set(site.streams.flatMap((stream) => (is(broadcastOf(site, stream)) ? (groupLocation(stream) ?? []) : []))),
  ];
  const alone = carrying(({ service }) => service === name);
  if (alone.length > 0) return alone;
  return carrying(({ service, multiplex }) => service === undefined && multiplexes.includes(multiplex ?? ''));
}

/** The original broadcast stream, where other streams carry it on. */
function broadcastOf({ streamByName }: Site, stream: Stream): Stream {
  const seen = new Set<Stream>();
  let at = stream;
  while (at.carries !== undefined && !seen.has(at)) {
    seen.add(at);
    const carried = streamByName.get(at.carries);
    if (carried === undefined) break;
    at = carried;
  }
  return at;
}

/** `news in mux-a (dvb-t, 674 MHz)` */
function onAir({ site }: Plan, { name, multiplexes }: Service): string {
  const where = multiplexes.flatMap((own) => {
    const multiplex = site.multiplexByName.get(own);
    if (multiplex === undefined) return [];
    const frequency = skyFrequency(site, multiplex);
    const facts = [multiplex.system, frequency === undefined ? undefined : megahertz(frequency)];
    return [`${own} (${facts.filter((fact) => fact !== undefined).join(', ')})`];
  });
  return where.length === 0 ? name : `${name} in ${where.join(' or ')}`;
}
