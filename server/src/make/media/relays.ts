/** Units by which servers send streams on: FFmpeg takes a stream in, and sends it to a group or to each receiver. */

import type { Plan } from '../../plan.ts';
import { headOf, placeOf } from '../../site/item.ts';
import type { Device, Stream } from '../../site/model.ts';
import { refusedName } from '../file-name.ts';
import { type Made, type Output, once, refusal, together } from '../output.ts';
import { unitCommand } from '../quoting/unit.ts';
import { credentialLines, credentialNotes } from './credentials.ts';
import { pullOf } from './pull.ts';
import { sendOf } from './send.ts';
import { AFTER_NETWORK, ALWAYS, ENDS_IN_ORDER, NEVER_GIVES_UP, serviceFile, whereTo } from './service.ts';

export const relays: Output = {
  kind: 'relays',
  title: 'Streams that a server sends on: FFmpeg in systemd units',
  summary: 'systemd units by which a server sends cameras on as multicast, with FFmpeg',
  subjects: (plan) => [...new Set(carrying(plan).flatMap(({ stream, host }) => [host.name, stream.name]))].sort(),
  make(plan, subject) {
    const wanted = carrying(plan).filter(({ stream, host }) => subject === undefined || stream.name === subject || host.name === subject);
    const made = together(wanted.map((relay) => relayOf(plan, relay)));
    return { ...made, files: once(made.files) };
  },
};

interface Relay {
  readonly stream: Stream;
  readonly host: Device;
}

function carrying({ site }: Plan): readonly Relay[] {
  return site.streams.flatMap((stream) => {
    const host = stream.source === undefined ? undefined : site.deviceByName.get(stream.source);
    return stream.carries === undefined || host?.kind !== 'server' ? [] : [{ stream, host }];
  });
}

function relayOf(plan: Plan, { stream, host }: Relay): Made {
  const unnamed = refusedName(stream.item) ?? refusedName(host.item);
  if (unnamed !== undefined) return refusal(unnamed);
  const carried = plan.site.streamByName.get(stream.carries ?? '');
  if (carried === undefined) return refusal({ at: placeOf(stream.item, ['carries']), message: `There is no stream for ${stream.name} to carry. Name one of the site.` });
  if (plan.site.carriedInCircle.includes(stream)) return refusal({ at: placeOf(stream.item, ['carries']), message: `${stream.name} carries itself. Name the stream of a camera.` });
  // What stands in the way of sending is told before what stands in the way of what it carries.
  const send = sendOf(plan, stream, carried, host);
  if ('message' in send) return refusal(send);
  const pull = pullOf(plan, carried, host);
  if ('message' in pull) return refusal(pull);
  const command = unitCommand([...pull.command, ...send]);
  if (command === undefined) return refusal({ at: headOf(stream.item), message: `${stream.name} cannot be written into a unit. Take the control characters out of what it says.` });
  const text = serviceFile(plan.site, {
    command: `make relays ${stream.name}`,
    description: `Sends ${carried.name} on as ${stream.name}`,
    unit: [...AFTER_NETWORK, NEVER_GIVES_UP],
    service: ['DynamicUser=yes', ...credentialLines(pull.credentials), `ExecStart=${command}`, ...ALWAYS, ...ENDS_IN_ORDER],
    install: ['WantedBy=multi-user.target'],
  });
  return { files: [{ path: `${host.name}/plumbline-relay-${stream.name}.service`, text }, ...pull.files], refused: [], notes: [whereTo('relays', host), ...credentialNotes(pull.credentials, host)] };
}
