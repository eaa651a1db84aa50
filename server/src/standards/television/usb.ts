/**
 * The rate of transport streams that a USB controller carries, bits per second.
 *
 * Source: USB 2.0 §5.8.4 by a chip maker's training page: 13 packets of 512 bytes in a microframe of 125 µs; what a
 * controller sustains from a maker's post and memory.
 */

export type Bus = 'usb-2' | 'usb-3';

/** The most that bulk transfers can take of a bus at high speed. */
export const USB2_BULK = (13 * 512 * 8) / 125e-6;

/** The rates to plan with. USB 3: 5 Gb/s with 8b/10b coding, and the same share of it. */
export const USABLE: Readonly<Record<Bus, number>> = { 'usb-2': 320e6, 'usb-3': 3_000_000_000 };
