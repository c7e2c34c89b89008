#!/bin/sh
# Opens Broodtide's page in the browser. macOS: double-click it. Linux: right-click, run as a program.
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd -P)
"$here/broodtide" ${page.command}
code=$?
if [ "$code" -ne 0 ] && [ -t 0 ]; then
  echo
  echo "Press Return to close this window."
  read -r line
fi
exit "$code"
