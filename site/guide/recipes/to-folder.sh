#!/bin/sh
# Publishes a manual for a workshop without a server: a folder on a stick or a shared disk, or one file to send.
#   sh to-folder.sh <folder of the manual> <new name for the folder>
# Open index.html in it with any browser; nothing is installed, and no network is needed.
set -eu
manual=${1:?which folder is the manual?}
target=${2:?where do the pages go?}

npx --no -- tallybolt publish "$manual" --to "$target" || exit $?
tar -czf "$target.tar.gz" -C "$(dirname "$target")" "$(basename "$target")"
