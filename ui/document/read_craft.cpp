// SPDX-License-Identifier: MIT
#include "ui/document/read_craft.h"

#include "core/setup/text.h"
#include "ui/document/read_file.h"

#include <string_view>
#include <utility>

namespace stillbay::ui {

Result<Setup> readCraft(const QString& path)
{
    const Result<QByteArray> bytes = readFile(path);
    if (!bytes)
        return tl::unexpected<Error>(bytes.error());
    Result<LoadedSetup> loaded =
        readSetup(std::string_view(bytes->constData(), static_cast<std::size_t>(bytes->size())));
    if (!loaded)
        return tl::unexpected<Error>(loaded.error());
    return std::move(loaded->setup);
}

}  // namespace stillbay::ui
