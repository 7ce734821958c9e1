// SPDX-License-Identifier: MIT
#include "ui/recordings/name_files.h"

#include "ui/recordings/recording_words.h"

#include <QDir>
#include <QFileInfo>
#include <QObject>

#include <algorithm>
#include <iterator>
#include <string>
#include <vector>

namespace stillbay::ui {
namespace {

// Of a film: where all of it stands, at no throttle yet; another part may stand beside it.
std::optional<std::size_t> placeOf(const std::string& file, RecordingKind kind,
                                   const std::vector<NamedRecording>& recordings)
{
    const auto found =
        std::find_if(recordings.begin(), recordings.end(), [&](const NamedRecording& named) {
            const bool isAsAdded = !named.from_s && !named.to_s && !named.throttle;
            return named.file == file && (kind != RecordingKind::Film || isAsAdded);
        });
    return found == recordings.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(std::distance(recordings.begin(), found)));
}

}  // namespace

std::string namedPlace(const QString& path)
{
    return QDir::cleanPath(QFileInfo(path).absoluteFilePath()).toStdString();
}

Result<std::optional<std::size_t>> nameFiles(Document& document, const QStringList& paths,
                                             const std::function<void(NamedRecording&)>& describe)
{
    const std::vector<NamedRecording> present = document.setup().recordings;
    std::vector<NamedRecording> added;
    std::optional<std::size_t> last;
    for (const QString& path : paths) {
        const std::string file = namedPlace(path);
        const RecordingKind kind = likelyKind(QString::fromStdString(file));
        const auto named = placeOf(file, kind, present);
        const auto isAdded = placeOf(file, kind, added);
        if (!named && !isAdded)
            added.push_back({.file = file, .kind = kind});
        last = named ? *named : present.size() + isAdded.value_or(added.size() - 1);
    }
    if (describe)
        std::for_each(added.begin(), added.end(), describe);
    const Result<void> taken = document.edit(QObject::tr("add a recording"), {}, [&](Setup& setup) {
        setup.recordings.insert(setup.recordings.end(), added.begin(), added.end());
    });
    if (!taken)
        return tl::unexpected<Error>(taken.error());
    return last;
}

}  // namespace stillbay::ui
