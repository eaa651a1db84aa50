/** The mistakes of samples/first-draft: the rule that reports each, and the words that it marks. */

export interface Mistake {
  readonly file: string;
  readonly severity: 'error' | 'warning' | 'information';
  readonly rule: string;
  readonly words: string;
}

const TABLE = `
  cables     error       cable-length             118 m
  cables     error       port-cabled-twice        core/10
  cables     error       link-load                stable/9
  devices    error       rack-overlap             4
  devices    error       poe-budget               60 W
  devices    error       ups-overload             210 W
  devices    warning     address-in-dhcp-pool     192.168.10.120
  devices    error       duplicate-address        192.168.20.31
  devices    error       duplicate-address        192.168.20.31
  devices    error       poe-class                4
  devices    error       address-outside-subnet   192.168.2.45
  recording  error       file-name-collision      "gate/%Y-%m-%d_%H-%M.mp4"
  recording  warning     repeated-hour            "gate/%Y-%m-%d_%H-%M.mp4"
  recording  error       recorder-not-receiving   porch
  recording  warning     segment-keyframe         45 s
  recording  error       retention                7 d
  site       error       no-querier               video
  streams    error       quantity                 6 MB/s
  streams    error       unknown-key              framerate
  streams    error       unintended-egress        recorder
  streams    warning     group-mac-shared         239.192.20.31
  streams    warning     group-mac-shared         239.64.20.31
  streams    warning     group-reserved           239.64.20.31
  streams    error       unknown-name             kichen-screen
  streams    warning     group-always-flooded     239.128.0.41
  streams    warning     rtp-port                 5005
  streams    error       unintended-egress        cams
  television error       channel-frequency        682 MHz
  television error       lnb-plane                evening
  television warning     aerial-earth             {outside-protected-zone: true}
  television warning     amplifier-after-loss     set-amp
  television information mobile-band              set-amp
  television warning     carrier-to-noise         parlour-set
  television warning     carrier-to-noise         tv-tuner
  television error       carrier-to-noise         stable-set
  television warning     coax-between-buildings   loft-splitter/out-3
  television error       tuner-system             one
`;

/** In the order of files and lines. */
export const mistakes: readonly Mistake[] = TABLE.trim()
  .split('\n')
  .map((line) => {
    const [file, severity, rule, ...words] = line.trim().split(/ +/);
    if (
      file === undefined ||
      rule === undefined ||
      (severity !== 'error' && severity !== 'warning' && severity !== 'information')
    )
      throw new Error(`Not a row: ${line}`);
    return { file: `${file}.site.yaml`, severity, rule, words: words.join(' ') };
  });
