// SPDX-License-Identifier: MIT
#include "app/commands/save_craft.h"

#include "app/commands/command.h"
#include "core/disk/whole_file.h"
#include "core/setup/text.h"

namespace stillbay {

Result<void> saveCraft(const Setup& setup, const std::string& path, bool replace)
{
    const auto text = writeSetup(setup);
    if (!text)
        return tl::unexpected(text.error());
    sweepBeside(path);
    WriteOptions options;
    if (!replace)
        options.taken = alreadyThere();
    return writeWhole(path, *text, options);
}

}  // namespace stillbay
