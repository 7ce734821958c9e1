// SPDX-License-Identifier: MIT
#include "tests/fuzz/demand.h"
#include "tests/fuzz/settings_folder.h"
#include "ui/find/tube_stock.h"

#include <QCoreApplication>
#include <QSettings>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace {

using namespace stillbay::ui;

const QString kStockKey = QStringLiteral("find/drawer");
const stillbay::StockTube kFirstTube{10, 6, 40};

// Bytes that begin as a file of settings are one; others are what stands under the stock's key.
void putIntoSettings(const SettingsFolder& folder, const QByteArray& bytes)
{
    static unsigned number = 0;  // Qt keeps what it has read of a file: a new one each time
    QCoreApplication::setApplicationName(QString::number(++number));
    if (bytes.startsWith("[find]") || bytes.startsWith("[General]"))
        folder.write(QString::number(number) + QStringLiteral(".conf"), bytes);
    else
        QSettings().setValue(kStockKey, QString::fromUtf8(bytes));
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
