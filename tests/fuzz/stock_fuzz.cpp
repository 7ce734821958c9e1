// SPDX-License-Identifier: MIT
#include "tests/fuzz/demand.h"
#include "tests/fuzz/settings_folder.h"
#include "ui/document/settings_file.h"
#include "ui/find/tube_stock.h"

#include <QCoreApplication>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSettings>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace {

using namespace stillbay::ui;

const QString kOrganization = QStringLiteral("stillbay");
const QString kStockKey = QStringLiteral("find/drawer");
const stillbay::StockTube kFirstTube{10, 6, 40};

// Bytes that begin as a file of settings are one; others are what stands under the stock's key.
void putIntoSettings(const SettingsFolder& folder, const QByteArray& bytes)
{
    static unsigned number = 0;  // Qt keeps what it has read of a file: a new one each time
    const QString name = QString::number(++number);
    QCoreApplication::setApplicationName(name);
    const QJsonObject ofStock{{kStockKey, QString::fromUtf8(bytes)}};
    const QByteArray content =
        bytes.startsWith('{') ? bytes : QJsonDocument(ofStock).toJson(QJsonDocument::Compact);
    const QString file =
        folder.write(kOrganization + u'/' + name + QStringLiteral(".json"), content);
    useSettingsFile();
    demand(QSettings().fileName() == file, "the settings are those that were written");
    QFile aside(file + QStringLiteral(".damaged"));
    const bool isAside = aside.open(QIODevice::ReadOnly) && aside.readAll() == content;
    demand(isAside != QJsonDocument::fromJson(content).isObject(),
           "a file that cannot be read is put aside");
    aside.remove();
}

void demandTubes(const std::vector<KeptTube>& tubes)
{
    for (std::size_t k = 0; k < tubes.size(); ++k) {
        demand(faultOf(tubes[k].tube).isEmpty(), "tubes that can be");
        demand(std::none_of(tubes.begin(), tubes.begin() + static_cast<std::ptrdiff_t>(k),
                            [&](const KeptTube& other) { return other.tube == tubes[k].tube; }),
               "each tube once");
    }
}

}  // namespace

/// Any settings give tubes that can be, and put aside unchanged what cannot be read; a second
/// reading gives the same tubes and finds nothing damaged.
// The name that libFuzzer calls.
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    static const SettingsFolder folder;
    static const bool isMade = folder.make(kOrganization);
    demand(isMade, "a folder can be made");
    QCoreApplication::setOrganizationName(kOrganization);
    putIntoSettings(folder,
                    QByteArray(reinterpret_cast<const char*>(data),  // bytes as text
                               static_cast<qsizetype>(size)));
    const QVariant before = QSettings().value(kStockKey);
    const TubeStock stock = readTubeStock(kFirstTube);
    demandTubes(stock.tubes);
    if (!stock.damagedKey.isEmpty())
        demand(QSettings().value(stock.damagedKey) == before, "what is damaged is put aside");
    const TubeStock again = readTubeStock(kFirstTube);
    demand(again.damagedKey.isEmpty(), "damage is found once");
    demand(again.tubes == stock.tubes, "tubes read back alike");
    QFile::remove(QSettings().fileName());
    return 0;
}
