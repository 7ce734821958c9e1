// SPDX-License-Identifier: MIT
#include "core/setup/text.h"

#include "core/setup/from_json.h"
#include "core/setup/migrate.h"
#include "core/setup/strict_json.h"
#include "core/setup/to_json.h"
#include "core/setup/validate.h"

#include <utility>

namespace stillbay {

Result<LoadedSetup> readSetup(std::string_view text)
{
    Result<Json> root = parseStrictJson(text);
    if (!root)
        return tl::unexpected<Error>(std::move(root.error()));
    LoadedSetup loaded;
    if (Result<void> migrated = migrate(*root, loaded.warnings); !migrated)
        return tl::unexpected<Error>(std::move(migrated.error()));
    Result<Setup> setup = setupFromJson(*root, loaded.warnings);
    if (!setup)
        return tl::unexpected<Error>(std::move(setup.error()));
    if (Result<void> valid = validate(*setup); !valid)
        return tl::unexpected<Error>(std::move(valid.error()));
    loaded.setup = *std::move(setup);
    return loaded;
}

Result<std::string> writeSetup(const Setup& setup)
{
    if (Result<void> valid = validate(setup); !valid)
        return tl::unexpected<Error>(std::move(valid.error()));
    return setupToJson(setup).dump(1) + '\n';
}

}  // namespace stillbay
