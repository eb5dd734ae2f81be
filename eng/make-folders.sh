#!/usr/bin/env bash
# Makes one folder per system that runs without an SDK or a runtime: eng/make-folders.sh OUT [linux-x64 win-x64 ...]
set -euo pipefail
cd "$(dirname "$0")/.."
out=${1:?Say where the folders go, for example: eng/make-folders.sh artifacts/folders}
shift
systems=("$@")
[[ ${#systems[@]} -gt 0 ]] || systems=(linux-x64 win-x64)
mkdir -p "$out"
for system in "${systems[@]}"; do
  rm -rf -- "${out:?}/keikocho-$system"
  # The lock files speak of the machine's own system; a folder for another one restores beside them.
  dotnet publish src/Keikocho.App -c Release -v q -r "$system" --self-contained true \
    -p:UseCurrentRuntimeIdentifier=false -p:RestoreLockedMode=false -p:RestorePackagesWithLockFile=false \
    -p:PublishReadyToRun=true -p:DebugType=none -p:PublishDocumentationFiles=false -p:SatelliteResourceLanguages=en --artifacts-path "$out/.made" -o "$out/keikocho-$system"
  cp README.md "$out/keikocho-$system/"
  echo "$out/keikocho-$system: $(du -sm "$out/keikocho-$system" | cut -f1) MiB"
done
rm -rf -- "${out:?}/.made"
