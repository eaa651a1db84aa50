/** Which stream of a site was probed: by the address, or by the name of its SDP file. */

import { type Site, type Stream, isRtsp } from '../../site/model.ts';
import { parseAddress } from '../../standards/ipv4.ts';
import { RTSP_PORT } from '../../standards/rtp.ts';
import { visible } from '../../text/visible.ts';
import { list } from '../../text/words.ts';
import { Untold } from '../unreadable.ts';

/** Drops user and password before the host and behind a question mark: they must not be shown. */
const ADDRESS = /^([a-z][a-z0-9+.-]*):\/\/(?:[^/?#]*@)?([^:/?#@]*)(?::(\d{1,5}))?(\/[^#]*)?/i;

/** @throws Untold where it matches no stream, or several */
export function probedStream(site: Site, filename: string | undefined): Stream {
  if (filename === undefined)
    throw new Untold(
      'it does not say what was probed: add -show_format, or name the stream by --stream.',
      names(site.streams),
    );
  const address = ADDRESS.exec(filename);
  const shown = visible(address === null ? filename : withoutSecrets(address), 100);
  const found = address === null ? byName(site, filename) : byAddress(site, address);
  const [only, ...others] = found;
  if (only === undefined)
    throw new Untold(`${shown} is no stream of the site: name the stream by --stream.`, names(site.streams));
  if (others.length > 0)
    throw new Untold(`${shown} may be ${list(names(found), 'or')}: name the stream by --stream.`, names(found));
  return only;
}

function withoutSecrets([, scheme = '', host = '', port, path = '']: readonly (string | undefined)[]): string {
  return `${scheme}://${host}${port === undefined ? '' : `:${port}`}${path.replace(/\?.*/, '')}`;
}

function names(streams: readonly Stream[]): string[] {
  return streams.map(({ name }) => name);
}

/** `announcements/paddock-live.sdp` is paddock-live. */
function byName(site: Site, filename: string): Stream[] {
  const base = filename.split(/[\\/]/).pop() ?? '';
  const stream = site.streamByName.get(base.replace(/\.[^.]*$/, '')) ?? site.streamByName.get(base);
  return stream === undefined ? [] : [stream];
}

function byAddress(
  site: Site,
  [, scheme = '', host = '', portText, path = '']: readonly (string | undefined)[],
): Stream[] {
  const port = portText === undefined ? undefined : Number(portText);
  const address = parseAddress(host);
  const isAt = (name: string): boolean => {
    const device = site.deviceByName.get(name);
    if (device === undefined) return false;
    if (address === undefined) return name.toLowerCase() === host.toLowerCase();
    return device.ports.some(({ addresses }) => addresses.some((own) => own.address === address));
  };
  if (/^rtsps?$/i.test(scheme)) {
    const asked = site.streams.filter(
      (stream) =>
        isRtsp(stream.transport) &&
        (stream.port ?? RTSP_PORT) === (port ?? RTSP_PORT) &&
        stream.source !== undefined &&
        isAt(stream.source),
    );
    const exact = asked.filter((stream) =>
      [path === '' ? '/' : path, path.replace(/\?.*/, '')].includes(stream.path ?? '/'),
    );
    return exact.length > 0 ? exact : asked.filter((stream) => stream.path === undefined);
  }
  return site.streams.filter((stream) => {
    if (isRtsp(stream.transport) || (port !== undefined && stream.port !== undefined && stream.port !== port))
      return false;
    return stream.group === undefined ? stream.receivers.some(isAt) : stream.group === address;
  });
}
