// SPDX-License-Identifier: MIT
#include "ui/document/safe_write.h"

#include "core/disk/whole_file.h"
#include "ui/document/native_path.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <system_error>

namespace stillbay::ui {
namespace {

// Outside of a call's arguments, so that the translation tools find it.
Phrase appearedMeanwhile()
{
    return phrase("another program has put a file there just now");
}

}  // namespace

Result<void> safeWrite(const QString& path, const QByteArray& bytes, std::optional<mode_t> mode,
                       const FileStamp* replaced)
{
    const std::string_view view(bytes.constData(), static_cast<std::size_t>(bytes.size()));
    WriteOptions options{mode, {}, {}};
    std::error_code code;
    if (replaced && replaced->exists())
        options.mayGo = [replaced](const std::string& name) {
            return stampOnDisk(pathFrom(name)).sameContent(*replaced);
        };
    else if (replaced && !std::filesystem::is_symlink(nativePath(path), code))
        options.taken = Error{Errc::BadInput, appearedMeanwhile(), {}};
    return writeWhole(nativePath(path), view, options);
}

}  // namespace stillbay::ui
