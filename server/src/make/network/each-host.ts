/** Outputs that are made for each host whose network can be set up, in the order of their names. */

import type { Plan } from '../../plan.ts';
import type { Device } from '../../site/model.ts';
import { refusedName } from '../file-name.ts';
import { type Made, type Output, together } from '../output.ts';

export function ofEachHost(make: (plan: Plan, host: Device) => Made): Pick<Output, 'subjects' | 'make'> {
  return {
    subjects: (plan) => setUpHosts(plan).map(({ name }) => name),
    make(plan, subject) {
      const wanted = setUpHosts(plan).filter(({ name }) => subject === undefined || name === subject);
      return together(
        wanted.map((host) => {
          const refused = refusedName(host.item);
          return refused === undefined ? make(plan, host) : { files: [], refused: [refused], notes: [] };
        }),
      );
    },
  };
}

/** Every server, and each other end host with several ports or with routes. */
export function setUpHosts({ site }: Plan): Device[] {
  const withNetwork = site.devices.filter(
    ({ kind, ports, routes }) => kind === 'server' || (isEndHost(kind) && (ports.length > 1 || routes.length > 0)),
  );
  return withNetwork.sort((a, b) => (a.name < b.name ? -1 : 1));
}

function isEndHost(kind: Device['kind']): boolean {
  return kind === 'computer' || kind === 'display' || kind === 'camera' || kind === 'tuner';
}
