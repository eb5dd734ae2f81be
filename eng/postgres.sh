#!/usr/bin/env bash
# A private, throw-away PostgreSQL server for the tests: loopback only, a free port, nothing synced to the disk.
#   eng/postgres.sh start [FOLDER]   starts it (once) and prints its connection string
#   eng/postgres.sh stop  [FOLDER]   stops it and deletes the folder
# FOLDER is made by 'start'; without it, one under the temporary folder that belongs to this user and this source tree.
# Exit codes: 0 done, 1 failed (the reason is printed), 2 wrong usage, 3 PostgreSQL is not installed.
set -euo pipefail

here=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")" && pwd)
verb=${1:-}
tree=$(printf %s "$here" | cksum | cut -d ' ' -f 1)
folder=${2:-${TMPDIR:-/tmp}/keikocho-postgres-$(id -u)-$tree}

if [[ $# -gt 2 || ($verb != start && $verb != stop) ]]; then
  echo "usage: eng/postgres.sh start|stop [FOLDER]" >&2
  exit 2
fi

# The newest server found: on the PATH, or where Debian keeps it off the PATH.
find_server() {
  local initdb
  initdb=$( { ls -d /usr/lib/postgresql/*/bin/initdb 2>/dev/null || true; } | sort -V | tail -n 1)
  [[ -n $initdb ]] || initdb=$(command -v initdb || true)
  [[ -n $initdb ]] && dirname -- "$(readlink -f -- "$initdb")"
}

# The server refuses to run as root: then a system user without rights of its own runs it.
as_user=()
owner=$(id -un)
if [[ $(id -u) -eq 0 ]]; then
  owner=nobody
  if getent passwd postgres >/dev/null; then owner=postgres; fi
  if command -v setpriv >/dev/null; then
    as_user=(setpriv "--reuid=$owner" "--regid=$(id -gn "$owner")" --clear-groups)
  else
    as_user=(runuser -u "$owner" --)
  fi
fi
run() { (cd / && env HOME="$folder" "${as_user[@]}" "$@"); }

if ! bin=$(find_server); then
  echo "PostgreSQL is not installed (no initdb on the PATH or under /usr/lib/postgresql)." >&2
  exit 3
fi
data=$folder/data

stop() {
  if [[ -f $data/postmaster.pid ]]; then
    run "$bin/pg_ctl" --pgdata="$data" --mode=immediate --wait --silent stop >&2 || true
  fi
  # Only ever a folder that 'start' made.
  if [[ -f $folder/made-by-keikocho ]]; then rm -rf -- "$folder"; fi
}

if [[ $verb == stop ]]; then
  stop
  exit 0
fi

if [[ -f $folder/connection ]] && run "$bin/pg_ctl" --pgdata="$data" status >/dev/null 2>&1; then
  cat "$folder/connection"
  exit 0
fi
stop

mkdir -m 700 -- "$folder" # fails where somebody else's folder is in the way
: >"$folder/made-by-keikocho"
if [[ $(id -u) -eq 0 ]]; then chown -R "$owner" "$folder"; fi

log=$folder/log
if ! run "$bin/initdb" --pgdata="$data" --username=keikocho --auth=trust --encoding=UTF8 --no-locale --no-sync \
  >"$log" 2>&1; then
  cat "$log" >&2
  stop
  exit 1
fi

# Somebody may take a free port between the look and the start: look again then.
for _ in 1 2 3 4 5; do
  port=$((20000 + RANDOM % 12000))
  if (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null; then continue; fi
  if run "$bin/pg_ctl" --pgdata="$data" --log="$folder/server.log" --wait --timeout=30 --silent --options="\
-c listen_addresses=127.0.0.1 -c port=$port -c unix_socket_directories='' -c max_connections=200 -c shared_buffers=64MB \
-c fsync=off -c synchronous_commit=off -c full_page_writes=off -c timezone=UTC" start >>"$log" 2>&1 </dev/null; then
    # No Kerberos: a machine without its library would print a warning for every connection.
    echo "Host=127.0.0.1;Port=$port;Username=keikocho;Database=postgres;SSL Mode=Disable;GSS Encryption Mode=Disable;Include Error Detail=true" \
      >"$folder/connection"
    cat "$folder/connection"
    exit 0
  fi
done

cat "$log" "$folder/server.log" >&2 || true
stop
exit 1
