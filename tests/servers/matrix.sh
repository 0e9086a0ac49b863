#!/usr/bin/env bash
# A throw-away Matrix homeserver (matrix-synapse from PyPI) on a loopback port, without federation, for tests.
#
#   tests/servers/matrix.sh start [folder]   makes the Python environment when missing, starts a fresh server, prints its URL
#   tests/servers/matrix.sh stop  [folder]   stops it and removes its data (the environment stays)
#   tests/servers/matrix.sh halt  [folder]   kills it, data kept
#   tests/servers/matrix.sh again [folder]   starts it again on the same data and port
#
# The folder defaults to $TMPDIR/gleed-matrix. The environment lies in $GLEED_TEST_MATRIX_VENV or $TMPDIR/gleed-matrix-venv.
# Registration is open to everybody who reaches the port: for tests only.
set -euo pipefail

folder="${2:-${TMPDIR:-/tmp}/gleed-matrix}"
venv="${GLEED_TEST_MATRIX_VENV:-${TMPDIR:-/tmp}/gleed-matrix-venv}"

environment() {
  [ -x "$venv/bin/python" ] && "$venv/bin/python" -c 'import synapse, nio, vodozemac' 2>/dev/null && return
  python3 -m venv "$venv" >&2
  "$venv/bin/pip" install -q --disable-pip-version-check 'matrix-synapse==1.163.2' 'matrix-nio[e2e]==0.26.0' >&2
}

free_port() {
  local port
  for port in $(shuf -i 20000-29999 -n 50); do
    if ! (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null; then echo "$port"; return; fi
  done
  echo "no free port found" >&2; exit 1
}

configure() { # port
  local name
  cat >"$folder/homeserver.yaml" <<YAML
server_name: "test.invalid"
public_baseurl: "http://127.0.0.1:$1/"
pid_file: "$folder/pid"
listeners:
  - {port: $1, type: http, tls: false, bind_addresses: ['127.0.0.1'], resources: [{names: [client], compress: false}]}
database: {name: sqlite3, args: {database: "$folder/homeserver.db"}}
log_config: "$folder/log.yaml"
media_store_path: "$folder/media"
signing_key_path: "$folder/signing.key"
trusted_key_servers: []
federation_domain_whitelist: []
report_stats: false
url_preview_enabled: false
presence: {enabled: false}
enable_registration: true
enable_registration_without_verification: true
registration_shared_secret: "test"
macaroon_secret_key: "test"
form_secret: "test"
bcrypt_rounds: 4
caches: {sync_response_cache_duration: "0s"}
YAML
  for name in rc_message rc_registration rc_room_creation rc_key_requests rc_admin_redaction; do
    echo "$name: {per_second: 1000, burst_count: 1000}"
  done >>"$folder/homeserver.yaml"
  cat >>"$folder/homeserver.yaml" <<'YAML'
rc_login: {address: {per_second: 1000, burst_count: 1000}, account: {per_second: 1000, burst_count: 1000}, failed_attempts: {per_second: 1000, burst_count: 1000}}
rc_joins: {local: {per_second: 1000, burst_count: 1000}, remote: {per_second: 1000, burst_count: 1000}}
rc_joins_per_room: {per_second: 1000, burst_count: 1000}
rc_invites: {per_room: {per_second: 1000, burst_count: 1000}, per_user: {per_second: 1000, burst_count: 1000}, per_issuer: {per_second: 1000, burst_count: 1000}}
YAML
  cat >"$folder/log.yaml" <<YAML
version: 1
formatters: {plain: {format: '%(asctime)s %(levelname)s %(name)s %(message)s'}}
handlers: {file: {class: logging.FileHandler, filename: "$folder/homeserver.log", formatter: plain}}
root: {level: WARNING, handlers: [file]}
disable_existing_loggers: false
YAML
}

run() {
  local url
  url="$(cat "$folder/url")"
  (cd "$folder" && exec setsid "$venv/bin/python" -m synapse.app.homeserver -c homeserver.yaml >>"$folder/out" 2>&1 </dev/null) &
  echo $! >"$folder/process"
  for _ in $(seq 1 240); do
    if curl -fs "$url/_matrix/client/versions" >/dev/null 2>&1; then return; fi
    sleep 0.25
  done
  tail -n 30 "$folder/out" "$folder/homeserver.log" >&2; exit 1
}

halt() {
  [ -f "$folder/process" ] || return 0
  local pid; pid="$(cat "$folder/process")"
  kill -9 "$pid" 2>/dev/null || true
  for _ in $(seq 1 40); do kill -0 "$pid" 2>/dev/null || break; sleep 0.1; done
  rm -f "$folder/process"
}

case "${1:-}" in
  start)
    if [ -f "$folder/url" ] && curl -fs "$(cat "$folder/url")/_matrix/client/versions" >/dev/null 2>&1; then cat "$folder/url"; exit 0; fi
    environment
    rm -rf "$folder"
    mkdir -p "$folder"
    port="$(free_port)"
    configure "$port"
    (cd "$folder" && "$venv/bin/python" -m synapse.app.homeserver -c homeserver.yaml --generate-keys) >"$folder/out" 2>&1
    echo "http://127.0.0.1:$port" >"$folder/url"
    run
    cat "$folder/url"
    ;;
  again) run; cat "$folder/url" ;;
  halt) halt ;;
  stop) halt; rm -rf "$folder" ;;
  *)
    echo "usage: $0 start|stop|halt|again [folder]" >&2
    exit 2
    ;;
esac
