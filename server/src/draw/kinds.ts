/** All kinds of pictures, in the order in which they are listed. */

import { aerialSystem } from './aerial.ts';
import type { DrawingKind } from './drawing.ts';
import { failurePicture } from './failure.ts';
import { networkPicture } from './network.ts';
import { panelPorts } from './panel.ts';
import { powerTree } from './power.ts';
import { portTime } from './port.ts';
import { rackFronts } from './rack.ts';
import { recordingTime } from './recording.ts';
import { streamWay } from './stream.ts';
import { subnetMap } from './subnet.ts';
import { switchPorts } from './switch.ts';
import { volumeFill } from './volume.ts';

export const KINDS: readonly DrawingKind[] = [
  streamWay,
  networkPicture,
  failurePicture,
  switchPorts,
  subnetMap,
  rackFronts,
  panelPorts,
  aerialSystem,
  volumeFill,
  recordingTime,
  portTime,
  powerTree,
];

/** Those that need nothing but the plan. */
export const OF_PLAN: readonly DrawingKind[] = KINDS.filter(({ measured }) => measured?.needed !== true);
