// SPDX-License-Identifier: MIT
#include "ui/recordings/name_files.h"

#include "ui/recordings/recording_words.h"

#include <QDir>
#include <QFileInfo>
#include <QObject>

#include <algorithm>
#include <string>
#include <vector>

namespace stillbay::ui {

std::string namedPlace(const QString& path)
{
    return QDir::cleanPath(QFileInfo(path).absoluteFilePath()).toStdString();
}

Result<std::optional<std::size_t>> nameFiles(Document& document, const QStringList& paths,
                                             const std::function<void(NamedRecording&)>& describe)
{
    std::vector<NamedRecording> added;
    std::string last;
    for (const QString& path : paths) {
        last = namedPlace(path);
        const auto isNamed = [&](const NamedRecording& named) {
            return named.file == last;
        };
        const auto& present = document.setup().recordings;
        if (std::none_of(present.begin(), present.end(), isNamed) &&
            std::none_of(added.begin(), added.end(), isNamed))
            added.push_back({.file = last, .kind = likelyKind(QString::fromStdString(last))});
    }
    if (describe)
        std::for_each(added.begin(), added.end(), describe);
    const Result<void> taken = document.edit(QObject::tr("add a recording"), {}, [&](Setup& setup) {
        setup.recordings.insert(setup.recordings.end(), added.begin(), added.end());
    });
    if (!taken)
        return tl::unexpected<Error>(taken.error());
    const auto& recordings = document.setup().recordings;
    for (std::size_t k = 0; k < recordings.size(); ++k)
        if (recordings[k].file == last)
            return k;
    return std::optional<std::size_t>{};
}

}  // namespace stillbay::ui
