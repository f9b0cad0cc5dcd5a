#!/usr/bin/env bash
# The README's commands on a bare Debian 12 that is made on the spot: no fonts, no OpenGL library, nothing installed by hand.
#
#   bash tests/fresh/debian12.sh FOLDER           both commands of “Run it”, first without the OpenGL library
#   bash tests/fresh/debian12.sh FOLDER --test    and the command of “Test it”
#
# COMMIT=… takes another commit than the newest. Needs root, debootstrap, git and poppler-utils; FOLDER must not exist yet, and is left as it is at the end.
set -euo pipefail
cd "$(dirname "$0")/../.."

if [[ ${SEAMREST_FRESH_MOUNTS:-} != own ]]; then
    # What is mounted for the new root goes away with this process, however it ends.
    SEAMREST_FRESH_MOUNTS=own exec unshare --mount --pid --fork --kill-child --propagation private bash "$0" "$@"
fi
root=${1:?name a folder that does not exist yet}
[[ ! -e $root ]] || { echo "$root exists already"; exit 2; }

say() { printf '== %s\n' "$*"; }
fail() { printf 'FAILED: %s\n' "$*"; exit 1; }
readme_command() {
    awk -v tag="<!-- $1 -->" '$0 == tag {found = 1} found && /^```$/ {exit} inside {print} found && /^```sh/ {inside = 1}' README.md
}
inside() { chroot "$root" /usr/bin/env -i HOME=/root LANG=C.UTF-8 PATH=/usr/sbin:/usr/bin:/sbin:/bin "${passed_on[@]}" \
    bash -euo pipefail -c "cd /seamrest; $1"; }
status_of() { inside ".venv/bin/python - '$1' '$2'" <<'PROGRAM'
# Ask the server for one file: print its status, and keep what came.
import sys
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import urlopen

try:
    answer = urlopen(sys.argv[1], timeout=60)
except HTTPError as error:
    answer = error
Path(sys.argv[2]).write_bytes(answer.read())
print(answer.status)
PROGRAM
}
started() { # Start the server by a command; the address of its example stands in $example.
    inside "$1" >"$root/server.out" 2>"$root/server.log" &
    server=$!
    for _ in $(seq 1800); do
        grep -q "A worked example" "$root/server.out" && break
        kill -0 "$server" 2>/dev/null || { tail -20 "$root/server.log"; fail "the server did not start"; }
        sleep 0.5
    done
    example=$(sed -n 's/^A worked example: //p' "$root/server.out")
}
stopped() {
    # The brackets keep the pattern from finding the command that it stands in.
    inside 'for p in /proc/[0-9]*; do if tr "\0" " " <"$p/cmdline" 2>/dev/null | grep -q -e "python [-]m server"; then
        kill -TERM "${p#/proc/}"; fi; done; true'
    wait "$server" || true
}

say "a bare Debian 12"
mirror=$(apt-get indextargets --format '$(REPO_URI)|$(RELEASE)' | awk -F'|' '$2 == "bookworm" {print $1; exit}')
debootstrap --variant=minbase bookworm "$root" "${mirror:-https://deb.debian.org/debian}" >"$root.log" 2>&1 \
    || { tail -5 "$root.log"; fail "debootstrap"; }
mount -t proc proc "$root/proc"
mount --rbind /dev "$root/dev"
cp /etc/resolv.conf /etc/hosts "$root/etc/"
# A network with a certificate authority of its own, or with a proxy, is the machine's business and passed on.
passed_on=(PIP_DEFAULT_TIMEOUT=180)
for name in http_proxy https_proxy no_proxy PIP_INDEX_URL; do
    [[ -z ${!name:-} ]] || passed_on+=("$name=${!name}")
done
authority=${PIP_CERT:-${SSL_CERT_FILE:-}}
if [[ -n $authority ]]; then
    cp -L "$authority" "$root/etc/authority.pem"
    passed_on+=(PIP_CERT=/etc/authority.pem)
fi
mkdir "$root/seamrest"
git archive "${COMMIT:-HEAD}" | tar -x -C "$root/seamrest"
[[ ! -e $root/usr/share/fonts ]] || fail "there are fonts"
[[ -z $(find "$root" -xdev -name 'libGL.so*') ]] || fail "there is an OpenGL library"

run_command=$(readme_command run)
[[ $run_command == *" libgl1 "* ]] || fail "README.md has no command that installs libgl1"
say "Run it, as a machine without the OpenGL library"
started "${run_command/ libgl1 / }"
pad=${example/\/pad?/\/pad.PLACE?}
[[ $(status_of "$example" page.html) == 200 ]] || fail "the working sheet"
[[ $(status_of "${pad/PLACE/pdf}" drawing.pdf) == 200 ]] || fail "the drawing"
pdftotext "$root/seamrest/drawing.pdf" - | grep -q "ISO 2768" || fail "the drawing's words"
# The letters of the shipped font are in the file, so that no machine that shows it needs them.
pdffonts "$root/seamrest/drawing.pdf" | awk 'NR > 2 {n++; if ($(NF-4) != "yes") bad = 1} END {exit !(n > 0 && !bad)}' \
    || fail "the drawing's font"
[[ $(status_of "${pad/PLACE/step}" no.json) == 503 ]] || fail "a model where none can be built"
grep -q "apt-get install libgl1" "$root/seamrest/no.json" || fail "what to install is not said"
stopped
say "the pages and the drawing with its words are there; for models it says: apt-get install libgl1"

say "Run it, word for word"
started "$run_command"
pad=${example/\/pad?/\/pad.PLACE?}
[[ $(status_of "${pad/PLACE/step}" pad.step) == 200 ]] || fail "the model"
head -c 13 "$root/seamrest/pad.step" | grep -q "ISO-10303-21;" || fail "the model's first line"
stopped
say "the model is there: $(stat -c %s "$root/seamrest/pad.step") bytes"

say "the command without the web, word for word"
inside "$(grep -m1 -- '-m geometry sample_data' README.md)"
for ending in json svg dxf pdf step stl; do
    [[ -n $(find "$root/seamrest/build/van" -name "*.$ending" -size +1k) ]] || fail "no $ending"
done

if [[ ${2:-} == --test ]]; then
    say "Test it, word for word"
    inside "$(readme_command test)"
fi
say "fresh machine: all of it works"
