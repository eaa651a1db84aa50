/**
 * Harrow Lane rehearsed, from its site to footage. Each file of examples/ is about one matter; all share one house, and
 * follow each other as they stand here.
 *
 * No systemd runs in a network namespace. In its place service.ts runs the units that were made: with their arguments,
 * credentials, environment, user, file mode and rights, and restarted as `Restart=` and `RestartSec=` say; without
 * their sandbox.
 */

import assert from 'node:assert/strict';
import { after, before, describe } from 'mocha';
import { unavailable } from '../availability.ts';
import { whyNoCameras } from '../lab/cameras.ts';
import { Place } from '../lab/place.ts';
import { whyNoLab } from '../lab/probe.ts';
import { announcements } from './examples/announcements.ts';
import { connections } from './examples/connections.ts';
import { counters } from './examples/counters.ts';
import { credentials } from './examples/credentials.ts';
import { deletion } from './examples/deletion.ts';
import { footage } from './examples/footage.ts';
import { loads } from './examples/loads.ts';
import { network } from './examples/network.ts';
import { pictures } from './examples/pictures.ts';
import { recordings } from './examples/recordings.ts';
import { site } from './examples/site.ts';
import { unplugged } from './examples/unplugged.ts';
import { House } from './house.ts';

const EXAMPLES = [
  site,
  network,
  connections,
  credentials,
  pictures,
  loads,
  counters,
  announcements,
  unplugged,
  recordings,
  footage,
  deletion,
];

describe('the rehearsal of Harrow Lane', function () {
  const place = new Place();
  let house: House | undefined;

  before(async function () {
    const reason = (await whyNoLab()) ?? (await whyNoCameras('setpriv', 'tcpdump'));
    if (reason !== undefined) unavailable(this, `no lab: ${reason}`);
    house = await House.build(place);
  });

  after(async () => {
    try {
      await house?.end();
    } finally {
      place.clear();
    }
  });

  for (const example of EXAMPLES) example(() => house ?? assert.fail('there is no house'));
});
