#!/usr/bin/env bash
# A conversation piped into the first command of the README: each line is answered, the end of input ends it with 0.
set -euo pipefail
cd "$(dirname "$0")/../.."
state="$(mktemp -d)"; trap 'rm -rf "$state"' EXIT
answers="$(printf '%s\n' "my heater: contraflow, max 14 kg from the sheet, 2400 kg" "log: 4 kg birch 27% wet basis lit yesterday 18:10, air closed 19:00" "why did my glass go black last night?" | XDG_DATA_HOME="$state" npm start --silent)"
echo "$answers" | tail -n 40
grep -q "Written down" <<<"$answers"
grep -q "27 %" <<<"$answers"
