// SPDX-License-Identifier: MIT
#include "ui/document/own_presets.h"

#include "ui/document/read_file.h"
#include "ui/document/safe_write.h"
#include "ui/document/state_folder.h"

#include <QDir>
#include <QFileInfo>

#include <string_view>
#include <utility>

namespace stillbay::ui {
namespace {

QString presetFile()
{
    return QDir(stateFolder()).filePath(QStringLiteral("presets.json"));
}

Result<void> writePresets(const std::vector<OwnPreset>& presets)
{
    const std::string text = writeOwnPresets(presets);
    if (const auto back = readOwnPresets(text); !back)
        return tl::unexpected<Error>(back.error());
    return safeWrite(presetFile(), QByteArray::fromStdString(text));
}

void forget(std::vector<OwnPreset>& presets, PresetKind kind, const std::string& name)
{
    std::erase_if(presets, [&](const OwnPreset& preset) {
        return preset.kind() == kind && preset.name == name;
    });
}

// Says of which file the reader speaks, with its words.
tl::unexpected<Error> notReadable(Error error)
{
    error.what = phrase("The presets in %1 cannot be read: %2", presetFile().toStdString(),
                        std::move(error.what));
    return tl::unexpected<Error>(std::move(error));
}

}  // namespace

Result<std::vector<OwnPreset>> ownPresets()
{
    if (!QFileInfo::exists(presetFile()))
        return std::vector<OwnPreset>{};
    const Result<QByteArray> bytes = readFile(presetFile());
    if (!bytes)
        return notReadable(bytes.error());
    Result<std::vector<OwnPreset>> presets = readOwnPresets(
        std::string_view(bytes->constData(), static_cast<std::size_t>(bytes->size())));
    if (!presets)
        return notReadable(presets.error());
    return presets;
}

Result<void> keepPreset(const OwnPreset& preset)
{
    Result<std::vector<OwnPreset>> presets = ownPresets();
    if (!presets)
        return tl::unexpected<Error>(presets.error());
    forget(*presets, preset.kind(), preset.name);
    presets->push_back(preset);
    return writePresets(*presets);
}

Result<void> forgetPreset(PresetKind kind, const std::string& name)
{
    Result<std::vector<OwnPreset>> presets = ownPresets();
    if (!presets)
        return tl::unexpected<Error>(presets.error());
    forget(*presets, kind, name);
    return writePresets(*presets);
}

}  // namespace stillbay::ui
