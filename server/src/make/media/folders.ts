/** A timer that makes the folders of recordings, those named after the date a day ahead. */

import type { Plan } from '../../plan.ts';
import type { Device } from '../../site/model.ts';
import { refusedName } from '../file-name.ts';
import type { MadeFile } from '../output.ts';
import { mountUnits, unitCommand, unitPath } from '../quoting/unit.ts';
import type { Store } from './consumer.ts';
import { namePattern } from './name-pattern.ts';
import { hostedRecordings } from './recording-consumer.ts';
import { MAKE_FOLDERS, makeFoldersFile } from './scripts.ts';
import { NO_START_LIMIT, startedByMounts, wants, serviceFile, timerFile, zoneLines } from './service.ts';

/** Units that do not make their folders themselves start after this service. */
export const FOLDERS = 'plumbline-folders.service';

export function isDated({ names }: Store): boolean {
  return names.folder !== names.fixed;
}

/** One timer for all recordings of a host. */
export function folderUnits(plan: Plan, host: Device): readonly MadeFile[] {
  const all = hostedRecordings(plan)
    .filter((each) => each.host === host)
    .flatMap(({ recording, volume }) => {
      const names = namePattern(recording, volume);
      return 'message' in names || names.folder === '' || unitPath(names.volume) === undefined ? [] : [names];
    });
  const folders = new Map(all.map(({ volume, folder }) => [JSON.stringify([volume, folder]), [volume, folder]]));
  const exec = unitCommand([MAKE_FOLDERS, ...[...folders.values()].flat()]);
  if (folders.size === 0 || exec === undefined || refusedName(host.item) !== undefined) return [];
  const roots = [...new Set(all.map(({ volume }) => volume))];
  const command = `make recorders ${host.name}`;
  const text = serviceFile(plan.site, {
    command,
    description: 'Makes the folders that recordings are written to today and tomorrow',
    // A missing disk does not hold up the others.
    unit: [...wants([...new Set(roots.flatMap(mountUnits))]), NO_START_LIMIT],
    service: [
      'Type=oneshot',
      'User=plumbline',
      'Group=plumbline',
      ...zoneLines(plan),
      `ExecStart=${exec}`,
      ...roots.map((root) => `ReadWritePaths=${unitPath(root, '-') ?? ''}`),
    ],
    install: startedByMounts(roots),
  });
  return [
    { path: `${host.name}/${FOLDERS}`, text },
    {
      path: `${host.name}/plumbline-folders.timer`,
      text: timerFile(plan.site, command, 'Makes folders for recordings every hour', 'hourly'),
    },
    makeFoldersFile(host.name),
  ];
}
