#!/usr/bin/env bash
# A throw-away PostgreSQL on a loopback port, for tests.
#
#   tests/servers/postgres.sh start [folder]   installs Debian's package when missing, starts a fresh cluster, prints its URL
#   tests/servers/postgres.sh stop  [folder]   stops it and removes the folder
#
# The folder defaults to $TMPDIR/gleed-postgres. Durability is left as in production (fsync on).
set -euo pipefail

folder="${2:-${TMPDIR:-/tmp}/gleed-postgres}"

as_server() { # PostgreSQL refuses to run as root
  if [ "$(id -u)" = 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi
}

programs() {
  local found
  found="$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -V | tail -n 1)"
  if [ -z "$found" ] && command -v initdb >/dev/null; then found="$(dirname "$(readlink -f "$(command -v initdb)")")"; fi
  [ -n "$found" ] && echo "$found"
}

install_package() {
  [ "$(id -u)" = 0 ] || { echo "PostgreSQL is missing and only root can install it (apt-get install postgresql)" >&2; exit 1; }
  export DEBIAN_FRONTEND=noninteractive
  apt-get update -qq >&2
  # the server's package would start a cluster of its own; ours is separate
  apt-get install -y -qq --no-install-recommends postgresql-common >&2
  sed -ri 's/^#?(create_main_cluster) .*$/\1 = false/' /etc/postgresql-common/createcluster.conf
  apt-get install -y -qq --no-install-recommends postgresql >&2
}

free_port() {
  local port
  for port in $(shuf -i 20000-29999 -n 50); do
    if ! (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null; then echo "$port"; return; fi
  done
  echo "no free port found" >&2; exit 1
}

case "${1:-}" in
  start)
    bin="$(programs || true)"
    if [ -z "$bin" ]; then install_package; bin="$(programs)"; fi
    if [ -f "$folder/url" ] && as_server "$bin/pg_ctl" -D "$folder/data" status >/dev/null 2>&1; then cat "$folder/url"; exit 0; fi
    rm -rf "$folder"
    mkdir -p "$folder"
    [ "$(id -u)" = 0 ] && chown postgres "$folder"
    as_server "$bin/initdb" -D "$folder/data" -U gleed --auth=trust --encoding=UTF8 --locale=C.UTF-8 >"$folder/log" 2>&1
    port="$(free_port)"
    as_server "$bin/pg_ctl" -D "$folder/data" -l "$folder/server.log" -w -t 60 start \
      -o "-p $port -c listen_addresses=127.0.0.1 -c unix_socket_directories='$folder'" >>"$folder/log" 2>&1 ||
      { cat "$folder/log" "$folder/server.log" >&2; exit 1; }
    "$bin/createdb" -h 127.0.0.1 -p "$port" -U gleed gleed
    echo "postgres://gleed@127.0.0.1:$port/gleed" | tee "$folder/url"
    ;;
  stop)
    bin="$(programs)"
    [ -d "$folder/data" ] && as_server "$bin/pg_ctl" -D "$folder/data" -m immediate stop >/dev/null 2>&1 || true
    rm -rf "$folder"
    ;;
  *)
    echo "usage: $0 start|stop [folder]" >&2
    exit 2
    ;;
esac
