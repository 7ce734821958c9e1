// SPDX-License-Identifier: MIT
#include "core/setup/text.h"

#include "core/setup/from_json.h"
#include "core/setup/migrate.h"
#include "core/setup/size_limit.h"
#include "core/setup/strict_json.h"
#include "core/setup/to_json.h"
#include "core/setup/validate.h"

#include <string>
#include <utility>

namespace stillbay {
namespace {

// Written without indent, a text grows to less than four times (1e14 becomes 100000000000000.0) and
// by the defaults that it left out.
constexpr std::size_t kSurelyFits = kMaxSetupBytes / 8;

Number megabytes(std::size_t bytes)
{
    return whole((bytes + (1U << 20U) - 1) >> 20U);
}

}  // namespace

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
    if (text.size() > kSurelyFits && !writeSetup(loaded.setup))
        loaded.warnings.push_back(
            {"too-large-to-save",
             phrase("This craft cannot be saved: written out it is larger than the %1 MB that a "
                    "setup file may have.",
                    megabytes(kMaxSetupBytes))});
    return loaded;
}

Result<std::string> writeSetup(const Setup& setup)
{
    if (Result<void> valid = validate(setup); !valid)
        return tl::unexpected<Error>(std::move(valid.error()));
    const Json root = setupToJson(setup);
    std::string text = root.dump(1) + '\n';
    if (text.size() > kMaxSetupBytes)
        text = root.dump() + '\n';
    if (text.size() > kMaxSetupBytes)
        return fail(Errc::BadInput,
                    phrase("The craft takes %1 MB as text, a setup file may have %2",
                           megabytes(text.size()), megabytes(kMaxSetupBytes)));
    return text;
}

}  // namespace stillbay
