// SPDX-License-Identifier: MIT
#include "core/setup/text.h"
#include "tests/fuzz/demand.h"
#include "tests/fuzz/settings_folder.h"
#include "ui/document/snapshot.h"
#include "ui/document/state_folder.h"
#include "ui/document/unsaved_work.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace {

using namespace stillbay::ui;

bool areAlike(const Snapshot& a, const Snapshot& b)
{
    return a.path == b.path && a.title == b.title && a.written == b.written &&
           a.original.size == b.original.size && a.original.modified == b.original.modified &&
           a.original.sha256 == b.original.sha256 && a.craft == b.craft;
}

// The start of the program finds what the text says; nothing is lost and nothing stays.
void tryRecovery(const SettingsFolder& folder, const QByteArray& text, const Snapshot* expected)
{
    const QString file = folder.write(QStringLiteral("stillbay/unsaved/one.json"), text);
    std::vector<UnsavedWork> found = findUnsavedWork();
    demand(found.size() == 1 && found[0].place.file == file, "unsaved work is found");
    demand(found[0].content.has_value() == (expected != nullptr), "it is read as its text");
    if (expected) {
        demand(areAlike(*found[0].content, *expected), "it is the work that was kept");
        found[0].remove();
    } else {
        demandReason(english(found[0].content.error().what));
        const QString aside = found[0].keepAside();
        QFile kept(aside);
        demand(aside != file && kept.open(QIODevice::ReadOnly) && kept.readAll() == text,
               "what cannot be read is kept aside");
        kept.remove();
    }
    demand(!QFile::exists(file), "it is found once");
}

}  // namespace

/// Any bytes are refused with a sentence and kept aside, or are work with a craft that can be read,
/// which written reads back alike.
// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    static const SettingsFolder folder;
    static const QString place = stateFolder(QStringLiteral("unsaved"));
    const QByteArray text(reinterpret_cast<const char*>(data),  // bytes as text
                          static_cast<qsizetype>(size));
    const auto snapshot = readSnapshot(text);
    if (snapshot) {
        demand(stillbay::readSetup(snapshot->craft.toStdString()).has_value(),
               "a craft that can be read");
        const auto again = readSnapshot(snapshotText(*snapshot));
        demand(again && areAlike(*again, *snapshot), "what was written reads back alike");
    }
    tryRecovery(folder, text, snapshot ? &*snapshot : nullptr);
    return 0;
}
