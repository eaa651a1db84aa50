/** Stands in for cameras: GStreamer's RTSP server, which plays films made by FFmpeg. */

import { run } from './run.ts';

/** The system's own Python, which has the bindings of GStreamer. */
export const PYTHON = '/usr/bin/python3';

/** Why there can be no cameras here; `undefined` where there can. @param tools other programs of the test */
export async function whyNoCameras(...tools: readonly string[]): Promise<string | undefined> {
  try {
    await run('which', ['ffmpeg', 'ffprobe', ...tools]);
    await run(PYTHON, [
      '-c',
      'import gi; gi.require_version("GstRtspServer", "1.0"); from gi.repository import GstRtspServer',
    ]);
    return undefined;
  } catch (error) {
    const why = error instanceof Error ? error.message.split('\n').at(-1) : '';
    return `${['FFmpeg', ...tools].join(', ')} or GStreamer's RTSP server is not installed (${why ?? ''})`;
  }
}

/** bit/s of the video in a film, over its seconds. */
export async function rateOfVideo(film: string, seconds: number): Promise<number> {
  const entries = ['-select_streams', 'v', '-show_entries', 'packet=size', '-of', 'csv=p=0'];
  const sizes = await run('ffprobe', ['-loglevel', 'error', ...entries, film]);
  return (sizes.split('\n').reduce((total, size) => total + Number(size.replace(',', '')), 0) * 8) / seconds;
}
