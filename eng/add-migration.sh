#!/usr/bin/env bash
# Adds one migration to both engines: eng/add-migration.sh NameOfTheMigration
set -euo pipefail
cd "$(dirname "$0")/.."
name=${1:?Say the name of the migration, for example: eng/add-migration.sh AddPlaces}
dotnet tool restore > /dev/null
dotnet build src/Keikocho.Store -v q
for engine in Sqlite Postgres; do
  dotnet ef migrations add "$name" --no-build --project src/Keikocho.Store --startup-project src/Keikocho.Store \
    --context "${engine}KeikochoDb" --output-dir "Migrations/$engine" --namespace "Keikocho.Store.Migrations.$engine"
done
