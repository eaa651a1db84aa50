/** A timer that makes folders for recordings: those that bear the date, a day ahead. */

import type { Plan } from '../../plan.ts';
import type { Device } from '../../site/model.ts';
import { refusedName } from '../file-name.ts';
import type { MadeFile } from '../output.ts';
import { mountUnits, unitCommand, unitPath } from '../quoting/unit.ts';
import type { Store } from './consumer.ts';
import { namePattern } from './name-pattern.ts';
import { recordings } from './recorded.ts';
import { MAKE_FOLDERS, makeFoldersFile } from './scripts.ts';
import { NEVER_GIVES_UP, begunBy, rather, serviceFile, timerFile, zoneLines } from './service.ts';

/** The service that a unit begins after which does not make its folders itself. */
export const FOLDERS = 'plumbline-folders.service';

export function isDated({ names }: Store): boolean {
  return names.folder !== names.fixed;
}

/** Those of all recordings of a host, whichever of them is asked for: there is one timer. */
export function foldersOn(plan: Plan, host: Device): readonly MadeFile[] {
  const all = recordings(plan)
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
    // What one disk lacks, the others do not suffer.
    unit: [...rather([...new Set(roots.flatMap(mountUnits))]), NEVER_GIVES_UP],
    service: [
      'Type=oneshot',
      'User=plumbline',
      'Group=plumbline',
      ...zoneLines(plan),
      `ExecStart=${exec}`,
      ...roots.map((root) => `ReadWritePaths=${unitPath(root, '-') ?? ''}`),
    ],
    install: begunBy(roots),
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
