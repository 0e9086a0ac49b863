#!/usr/bin/env bash
# Packs, installs the package in an empty folder with whatever Node is there, and talks to its `gleed` command on its own Node.
set -euo pipefail
cd "$(dirname "$0")/../.."
where="$(mktemp -d)"; trap 'rm -rf "$where"' EXIT
npm pack --silent --pack-destination "$where" >/dev/null
cd "$where"
echo '{"name":"elsewhere","private":true}' > package.json
npm install --loglevel=error --no-audit --no-fund ./gleed-*.tgz
answers="$(printf '%s\n' "help" "glass black again" | XDG_DATA_HOME="$where/state" ./node_modules/.bin/gleed)"
echo "$answers" | tail -n 30
grep -q "hot, clean fire" <<<"$answers"
grep -qi "glass" <<<"$answers"
echo '{"person":"a","room":"private","text":"the co alarm is going off"}' | ./node_modules/.bin/gleed lines | grep -q '"emergency":true'
./node_modules/.bin/gleed reckon fuel '{"load_kg":10,"moisture_pct_wet":17}' | grep -q useful_kWh
