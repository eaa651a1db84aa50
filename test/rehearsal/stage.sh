#!/bin/bash
# Runs a command of a unit as systemd would, in a mount namespace of its own.
#
#   stage.sh ROOT UMASK USER [NAME=VALUE]... -- PROGRAM [ARGUMENT]...
#
# What is in ROOT/lib is seen in /usr/local/lib/plumbline, ROOT/etc in /etc/plumbline, ROOT/srv in /srv, ROOT/run in /run/credentials;
# programs in ROOT/bin are in /usr/local/bin. PATH is what systemd sets, systemd.exec(5).
set -euo pipefail
root=$1 mask=$2 user=$3
shift 3

# Shows a folder with one entry more.
add() {
  local folder=$1 entry=$2 from=$3 kept
  kept=/mnt/$(basename "$folder")
  mkdir "$kept"
  mount --rbind "$folder" "$kept"
  mount -t tmpfs -o mode=755 none "$folder"
  local each
  for each in "$kept"/*; do
    [[ $each == "$kept/$entry" ]] || ln -s "$each" "$folder/"
  done
  mkdir "$folder/$entry"
  mount --bind "$from" "$folder/$entry"
}

mount -t tmpfs -o mode=755 none /mnt
add /etc plumbline "$root/etc"
add /usr/local/lib plumbline "$root/lib"
add /run credentials "$root/run"
mount --bind "$root/srv" /srv
if [[ -d $root/bin ]]; then
  add /usr/local/bin .programs "$root/bin"
  for program in "$root"/bin/*; do ln -sf ".programs/$(basename "$program")" /usr/local/bin/; done
fi
umask "$mask"
environment=()
while [[ $1 != -- ]]; do
  environment+=("$1")
  shift
done
shift
cd /
exec setpriv --reuid="$user" --regid="$user" --clear-groups --inh-caps=-all --bounding-set=-all --no-new-privs \
  env --ignore-environment PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin "${environment[@]}" "$@"
