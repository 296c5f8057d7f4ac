#!/bin/sh
# Publishes a manual, and sends its pages to a web server that only has to serve files.
#   sh to-host.sh <folder of the manual> <where to: user@host:/srv/www/manual/ or a folder>
set -eu
manual=${1:?which folder is the manual?}
target=${2:?where do the pages go?}
pages=$(mktemp -d)
trap 'rm -rf "$pages"' EXIT
trap 'exit 2' HUP INT TERM

npx --no -- tallybolt publish "$manual" --to "$pages/site" || exit $?

# New pages first, then offline.js, which tells devices of them; what is gone goes last. So whoever reads
# meanwhile always gets a page.
rsync -rt --checksum --exclude=/offline.js "$pages/site/" "$target"
rsync -rt --checksum "$pages/site/offline.js" "$target"
rsync -rt --checksum --delete-after "$pages/site/" "$target"
