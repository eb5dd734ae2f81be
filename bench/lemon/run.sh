#!/bin/sh
# Compiles matching.cpp against LEMON and runs it with the words given: bench/lemon/run.sh optima, bench/lemon/run.sh time 200 25.
# LEMON is Debian's liblemon-dev 1.3.1+dfsg-6. Where it is not installed, say where its packages were unpacked (apt-get download
# liblemon-dev liblemon1.3.1, then dpkg -x each into one folder): LEMON_ROOT=that/folder.
set -eu
here=$(dirname "$0")
root=${LEMON_ROOT:-}
built=${TMPDIR:-/tmp}/keikocho-lemon-$(id -u)
mkdir -p "$built"
if [ ! -x "$built/matching" ] || [ "$here/matching.cpp" -nt "$built/matching" ]; then
    g++ -O2 -std=c++14 -w ${root:+-I"$root/usr/include"} "$here/matching.cpp" -o "$built/matching"
fi
exec "$built/matching" "$@"
