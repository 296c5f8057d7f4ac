#!/bin/sh
# Checks a manual, and keeps the reports for whoever and whatever reads them.
#   sh check.sh [folder of the manual] [folder for the reports]
# Ends with the exit code of the check: 0 clean, 1 findings, 2 could not run.
set -u
manual=${1:-manual}
reports=${2:-reports}

mkdir -p "$reports" || exit 2
npx --no -- tallybolt inspect "$manual" \
  --report sarif="$reports/report.sarif" \
  --report junit="$reports/report.xml" \
  --report markdown="$reports/report.md"
code=$?

case $code in
  0) echo "$manual balances." >&2 ;;
  1) echo "$manual does not balance: see above, or the files in $reports." >&2 ;;
  *) echo "$manual was not checked: see above." >&2 ;;
esac
exit $code
