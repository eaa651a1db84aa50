import { execFileSync } from 'node:child_process';

/** Makes a picture of text smaller, by FFmpeg: it needs few colours. */
export function fewColours(from: string, to: string): void {
  const palette = 'palettegen=max_colors=64:reserve_transparent=0';
  const few = `split[all][some];[some]${palette}[few];[all][few]paletteuse=dither=none`;
  execFileSync('ffmpeg', ['-v', 'error', '-y', '-i', from, '-vf', few, to]);
}
