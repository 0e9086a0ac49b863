#!/usr/bin/env bash
# Hosting as the README says, and nothing else: its commands, read out of it, run one after another in a clean copy with a home of its own.
# The folder after the last line must hold what was promised. The moves need a server: GLEED_TEST_POSTGRES.
set -euo pipefail
here="$(cd "$(dirname "$0")/../.." && pwd)"
cd "$here"
at="$(mktemp -d)"
group=
drop() { :; }
trap 'if [ -n "$group" ]; then kill -TERM -- "-$group" 2>/dev/null || true; fi; drop; rm -rf "$at"' EXIT

git ls-files -z --cached --others --exclude-standard | while IFS= read -r -d '' file; do [ -f "$file" ] && printf '%s\0' "$file"; done |
  tar --null -cf - -T - | (mkdir "$at/gleed" && tar -xf - -C "$at/gleed")
mkdir "$at/home"
awk '/^## Hosting/ { inside = 1 } /^### / { inside = 0 } inside && /^```sh$/ { block = 1; next } /^```$/ { block = 0 } block' README.md >"$at/commands"
[ "$(wc -l <"$at/commands")" -gt 10 ] || { echo "the README has no commands for hosting" >&2; exit 1; }
port="$(node -e 'const s = require("net").createServer().listen(0, "127.0.0.1", () => { console.log(s.address().port); s.close(); })')"
sed -i "s/9464/$port/" "$at/commands"

server="${GLEED_TEST_POSTGRES:-}"
if [ -n "$server" ]; then
  database="gleed_walk_$$"
  ask() { cd "$here" && node --input-type=module -e 'import pg from "pg"; const c = new pg.Client({ connectionString: process.argv[1] }); await c.connect(); await c.query(process.argv[2]); await c.end();' "$@"; }
  ask "$server" "create database $database"
  drop() { ask "$server" "drop database if exists $database with (force)" || true; }
  POSTGRES_URL="${server%/*}/$database"
else
  echo "no server named by GLEED_TEST_POSTGRES: the moves are left out"
  sed -i '/POSTGRES_URL/d' "$at/commands"
fi
# one message between starting and backing up, so that there is something to keep
echo '{"person":"ana","room":"private","text":"log: 12 kg birch 17 %, lit 18:10"}' >"$at/said.json"
sed -i "/backup/i env -u GLEED_MATRIX_HOMESERVER -u GLEED_MATRIX_USER -u GLEED_MATRIX_PASSWORD_FILE -u GLEED_HTTP_PORT npm run -s lines <$at/said.json" "$at/commands"

cd "$at/gleed"
unset "${!GLEED_@}"
# what it starts is of one group of processes, that of `timeout`
XDG_DATA_HOME="$at/home" XDG_CONFIG_HOME="$at/home" POSTGRES_URL="${POSTGRES_URL:-}" timeout 150 bash -euxo pipefail "$at/commands" >"$at/out" 2>&1 &
group=$!
wait "$group" || { cat "$at/out"; tail -n 5 gleed.log 2>/dev/null; exit 1; }
cat "$at/out"
for file in records.sqlite copy.sqlite ${POSTGRES_URL:+back.sqlite}; do
  GLEED_DATABASE="$PWD/$file" npm run -s check:records
  node_modules/.bin/node --input-type=module -e '
    import Database from "better-sqlite3";
    const { fires } = new Database(process.argv[1], { readonly: true }).prepare("select count(*) as fires from fires").get();
    if (fires !== 1) { console.error(process.argv[1] + " holds " + fires + " fires instead of the one that was logged"); process.exit(1); }' "$file"
done
grep -q '"msg"' gleed.log
! grep -q 'its-password' gleed.log
echo "as the README says"
