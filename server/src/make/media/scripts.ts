/** The scripts that units run beside FFmpeg. They are the same for every site; the differences are in the arguments. */

import type { MadeFile } from '../output.ts';
import { LIBRARY, SETTINGS } from './service.ts';

export const WITH_CREDENTIALS = `${LIBRARY}/with-credentials`;
export const MAKE_FOLDERS = `${LIBRARY}/make-folders`;

/**
 * FFmpeg reads user and password from a list of its concat demuxer, on this descriptor. As arguments they would be
 * visible to everybody in the list of processes.
 */
export const LIST = 'pipe:3';

export function withCredentialsFile(host: string): MadeFile {
  return { path: `${host}/lib/with-credentials`, text: WITH_CREDENTIALS_TEXT, executable: true };
}

export function makeFoldersFile(host: string): MadeFile {
  return { path: `${host}/lib/make-folders`, text: MAKE_FOLDERS_TEXT, executable: true };
}

// FFmpeg 5.1 has room for 127 bytes of user and password, percent-encoded, and cuts off the rest without a message
// (libavformat/rtsp.c, ff_rtsp_connect, from memory).
const WITH_CREDENTIALS_TEXT = `#!/bin/bash
# Made by plumbline. Runs FFmpeg on an RTSP address with a user and a password that nobody else gets to see.
#
#   with-credentials NAME ADDRESS [OPTION=VALUE]... -- PROGRAM [ARGUMENT]...
#
# The program finds the address on descriptor 3, as a list for FFmpeg's concat demuxer: not among its arguments, not in
# its environment, not in a file. The password is taken out of what it says.
# The user is the first line of the credential NAME (systemd: LoadCredential=), the password the second.
# A camera that has refused them is asked again after a minute: some lock out who asks often. That it has is kept in a
# folder of the service (systemd: RuntimeDirectory=) until it asks again.
set -euo pipefail
export LC_ALL=C

fail() {
  printf '%s\\n' "credentials $name: $1" >&2
  exit 78
}

# Percent-encodes all but unreserved characters (RFC 3986 section 2.3).
encode() {
  local text=$1 at character code
  encoded=
  for ((at = 0; at < \${#text}; at++)); do
    character=\${text:at:1}
    case $character in
      [A-Za-z0-9._~-]) encoded+=$character ;;
      *)
        printf -v code %d "'$character"
        printf -v code '%%%02X' $((code & 255))
        encoded+=$code
        ;;
    esac
  done
}

name=$1
address=$2
shift 2
options=
while [[ $1 != -- ]]; do
  options+="option \${1%%=*} \${1#*=}"$'\\n'
  shift
done
shift

user='' password=''
{
  IFS= read -r user || true
  IFS= read -r password || true
} <"\${CREDENTIALS_DIRECTORY:?}/$name" || fail 'the file cannot be read'
user=\${user%$'\\r'}
password=\${password%$'\\r'}
[[ -n $user ]] || fail '${SETTINGS}/credentials/'"$name"' must have the user in its first line and the password in its second'
[[ $user != *:* ]] || fail 'a user with a colon in it cannot be sent (RFC 7617 section 2)'
encode "$user"
access=$encoded
encode "$password"
access+=:$encoded
((\${#access} <= 127)) || fail "user and password are \${#access} bytes long once encoded, and FFmpeg takes 127"

refused=\${RUNTIME_DIRECTORY:+$RUNTIME_DIRECTORY/refused}
if [[ -n $refused && -s $refused ]]; then
  echo "credentials $name: the camera refuses them, and is asked again in a minute" >&2
  # Nothing comes. A program that sleeps would have to be ended too.
  read -r -t 60 _ <> <(:) || true
fi

list="ffconcat version 1.0
file \${address/:\\/\\//://$access@}
$options"
exec "$@" 3<<<"$list" 2> >(trap '' TERM; exec sed --unbuffered --regexp-extended --expression='s#//[^/@[:space:]]*@#//#g' --expression="/401 Unauthorized/w \${refused:-/dev/null}" >&2)
`;

const MAKE_FOLDERS_TEXT = `#!/bin/bash
# Made by plumbline. Makes the folders that recordings are written to from now until this time tomorrow, and two hours
# more: FFmpeg makes none itself.
#
#   make-folders VOLUME PATTERN [VOLUME PATTERN]...
#
# PATTERN is a folder below VOLUME, with conversions of strftime. VOLUME must be there: it may be a disk that is not. Where
# one cannot be made, the others are, and it fails in the end.
set -uo pipefail
export LC_ALL=C
umask 0027
now=$(date +%s)
failed=0
while (($# >= 2)); do
  for ((hour = 0; hour <= 26; hour++)); do
    date --date="@$((now + hour * 3600))" "+$2"
  done | sort --unique | (
    cd -- "$1" || exit
    code=0
    while IFS= read -r folder; do mkdir --parents -- "./$folder" || code=$?; done
    exit "$code"
  ) || failed=1
  shift 2
done
exit "$failed"
`;
