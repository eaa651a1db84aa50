/** The standards of the headers of a packet, by the names of the headers in the rates. */

export const HEADER_SOURCES: Readonly<Record<string, string>> = {
  'IPv4': 'RFC 791 §3.1',
  'UDP': 'RFC 768',
  'TCP with timestamps': 'RFC 9293 §3.1, RFC 7323 §3.2',
  'RTP': 'RFC 3550 §5.1',
  'RTP and interleaving': 'RFC 3550 §5.1, RFC 7826 §14',
  'interleaving': 'RFC 7826 §14',
  'payload format': 'RFC 3640 §3.3.6 (AAC), RFC 2250 §3.5 (MPEG audio), RFC 4184 §4.1.1 (AC-3)',
};

export const ETHERNET = 'IEEE 802.3';
export const TAG = 'IEEE 802.1Q';
/** Preamble, start delimiter and the gap between frames. */
export const LINE = 'IEEE 802.3, as in RFC 5180 App. A.1';
export const GROUP_MAC = 'RFC 1112 §6.4';
export const ACKNOWLEDGING = 'RFC 1122 §4.2.3.2, RFC 5681 §4.2';
export const TRANSPORT_STREAM = 'ISO/IEC 13818-1 §2.4.3, RFC 2250 §2';
export const POWER_CLASSES = 'IEEE 802.3bt';
