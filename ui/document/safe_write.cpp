// SPDX-License-Identifier: MIT
#include "ui/document/safe_write.h"

#include "core/disk/whole_file.h"
#include "ui/document/native_path.h"

#include <string_view>

namespace stillbay::ui {

Result<void> safeWrite(const QString& path, const QByteArray& bytes, std::optional<mode_t> mode)
{
    const std::string_view view(bytes.constData(), static_cast<std::size_t>(bytes.size()));
    return writeWhole(nativePath(path), view, {mode, {}});
}

}  // namespace stillbay::ui
