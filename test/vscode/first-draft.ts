// The places in samples/first-draft that the tests in the editor use.

/** The fibre between the switches. */
export const uplink = { file: 'cables.site.yaml', from: 'core/16', to: 'stable/9', line: 'from: core/16' };

/** Two cameras with one address, and the second of them, where it is put right. */
export const addressClash = {
  file: 'devices.site.yaml',
  rule: 'duplicate-address',
  address: '192.168.20.31',
  line: 'yard-cam: {',
  fix: /^Use 192\.168\.20\.33\b/,
};
