// SPDX-License-Identifier: MIT
#include "tests/fuzz/demand.h"
#include "tests/fuzz/settings_folder.h"
#include "ui/document/recent_files.h"
#include "ui/document/state_folder.h"

#include <QDir>

#include <algorithm>
#include <cstddef>
#include <cstdint>

namespace {

using stillbay::ui::RecentFiles;

void demandPaths(const QStringList& paths)
{
    demand(paths.size() <= RecentFiles::kMost, "no more files than are kept");
    demand(std::all_of(paths.begin(), paths.end(),
                       [](const QString& path) { return QDir::isAbsolutePath(path); }),
           "absolute paths");
}

}  // namespace

/// Any list gives absolute paths, no more than are kept; one more file comes first and leaves the
/// others as they were.
// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    static const SettingsFolder folder;
    static const QString base = stillbay::ui::stateFolder();
    folder.write(QStringLiteral("stillbay/recent.json"),
                 QByteArray(reinterpret_cast<const char*>(data),  // bytes as text
                            static_cast<qsizetype>(size)));
    RecentFiles recent;
    QStringList expected = recent.paths();
    demandPaths(expected);
    const QString added = QStringLiteral("/crafts/one.stillbay");
    recent.add(added);
    expected.removeAll(added);
    expected.prepend(added);
    demand(recent.paths() == expected.mid(0, RecentFiles::kMost), "the newest comes first");
    recent.clear();
    demand(recent.paths().isEmpty(), "a list can be cleared");
    return 0;
}
